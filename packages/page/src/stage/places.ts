import { type Signal, signal } from '@preact/signals';
import type { ViewName } from './view-scene.ts';

/** What the page is busy with: the sizes of the joint, another part of the job, or the jobs themselves. */
export type PagePart = 'joint' | 'doors' | 'shop' | 'set-up' | 'quote' | 'jobs' | 'new';

/** Where on the page one is: the part of the job, and the drawing shown. */
export interface Places {
  readonly place: Signal<PagePart>;
  readonly view: Signal<ViewName>;
}

export function createPlaces(): Places {
  return { place: signal<PagePart>('joint'), view: signal<ViewName>('joint') };
}
