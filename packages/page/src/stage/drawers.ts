import { type LiveScene, liveScene } from '@fielded/render';
import { fetchPart } from '../desk/fetch-part.ts';
import { keepDrawn } from './drawn-before.ts';
import type { Drawer, ViewName } from './view-scene.ts';

/** Fetches what draws a view that is only looked at. */
export async function loadDrawer(view: ViewName): Promise<Drawer> {
  return (await fetchPart(() => import('./other-views.ts'))).otherDrawer(view);
}

/** What draws a view that is worked on: part of the first load. */
export function liveDrawer(view: 'joint' | 'section'): Drawer {
  const drawn = keepDrawn<LiveScene>();
  return (report, scale, only, at) => {
    const options = { view, scale, only, ...(at && { at }) };
    return drawn(report, options, () => liveScene(report, options));
  };
}
