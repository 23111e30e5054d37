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
    // Held in a hand, no report is drawn twice.
    if (at) return liveScene(report, { view, scale, only, at });
    return drawn(report, [scale, only], () => liveScene(report, { view, scale, only }));
  };
}
