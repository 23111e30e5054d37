import { type Signal, signal } from '@preact/signals';
import type { ViewName } from './view-scene.ts';

/** What stands beside the drawing: the sizes of the joint, another part of the job, the jobs themselves, or the keys. */
export type PagePart = 'joint' | 'doors' | 'shop' | 'set-up' | 'quote' | 'jobs' | 'new' | 'keys';

/** Which part of the page is open, and which drawing is shown. */
export interface Places {
  readonly place: Signal<PagePart>;
  readonly view: Signal<ViewName>;
}

export function createPlaces(): Places {
  return { place: signal<PagePart>('joint'), view: signal<ViewName>('joint') };
}
