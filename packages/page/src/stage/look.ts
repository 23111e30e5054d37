import type { ReadonlySignal } from '@preact/signals';

/** How much the drawing is magnified, and about which point: 0 to 1 of its width and height. */
export interface Look {
  readonly times: number;
  readonly x: number;
  readonly y: number;
}

/** How many times closer a drawing is looked at, at most. */
export const MOST = 8;

/** What ends a touch: the finger leaves, or the browser takes it to scroll or to go back. */
export const LIFTED = ['pointerup', 'pointercancel'] as const;

/** What fingers on a drawing look at it by. */
export interface Looking {
  readonly look: ReadonlySignal<Look>;
  readonly set: (times: number, x: number, y: number) => void;
  /** Whether a hand holds a size: then fingers look nowhere else. */
  readonly isHeld: () => boolean;
}
