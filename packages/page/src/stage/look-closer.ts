import { type ReadonlySignal, signal } from '@preact/signals';
import { fetchPart } from '../desk/fetch-part.ts';
import type { SheetPart } from './framing.ts';
import { LIFTED, type Look, type Looking, MOST } from './look.ts';

/** Looking closer at a drawing, by two fingers or by buttons. */
export interface Closer {
  readonly look: ReadonlySignal<Look>;
  /** One step nearer or further. */
  step(way: 1 | -1): void;
  /** Looks at what stands there now, 0 to 1 of the width and height that are seen, where it is not in sight. */
  bring(x: number, y: number): void;
  /** The part of a frame that is looked at. */
  within(frame: SheetPart): SheetPart;
  /** Listens to fingers on the drawing; returns what stops it. */
  listen(node: SVGSVGElement, isHeld: () => boolean): () => void;
}

const WHOLE: Look = { times: 1, x: 0.5, y: 0.5 };
const STEP = 1.6;
/** What stands nearer to the edge than this, of the width or height that is seen, is not in sight. */
const MARGIN = 0.06;

export function createCloser(): Closer {
  const look = signal(WHOLE);
  const set = (times: number, x: number, y: number) => {
    const most = Math.min(MOST, Math.max(1, times));
    // The part looked at never reaches beyond the drawing.
    const half = 0.5 / most;
    const keep = (middle: number) => Math.min(1 - half, Math.max(half, middle));
    look.value = most < 1.02 ? WHOLE : { times: most, x: keep(x), y: keep(y) };
  };
  return {
    look,
    step(way) {
      const { times, x, y } = look.value;
      set(times * STEP ** way, x, y);
    },
    bring(x, y) {
      const { times, ...at } = look.value;
      const inSight = (part: number) => part > MARGIN && part < 1 - MARGIN;
      if (inSight(x) && inSight(y)) return;
      set(times, at.x + (x - 0.5) / times, at.y + (y - 0.5) / times);
    },
    within({ x, y, width, height }) {
      const { times, x: across, y: down } = look.value;
      const [w, h] = [width / times, height / times];
      return { x: x + across * width - w / 2, y: y + down * height - h / 2, width: w, height: h };
    },
    listen: (node, isHeld) => listenAtTouch(node, { look, set, isHeld }),
  };
}

/** What fingers do is fetched at the first touch; it is told of those that touched, and did not lift, meanwhile. */
function listenAtTouch(node: SVGSVGElement, looking: Looking): () => void {
  const early = new Map<number, PointerEvent>();
  let stop = () => {};
  let asked = false;
  const lift = ({ pointerId }: PointerEvent) => early.delete(pointerId);
  const touch = (event: PointerEvent) => {
    early.set(event.pointerId, event);
    if (asked) return;
    asked = true;
    void fetchPart(() => import('./fingers.ts')).then(
      ({ listenToFingers }) => {
        end();
        stop = listenToFingers(node, looking, [...early.values()]);
      },
      // The buttons look closer without it, and the next touch asks again.
      () => {
        asked = false;
      },
    );
  };
  const end = () => {
    node.removeEventListener('pointerdown', touch);
    for (const name of LIFTED) removeEventListener(name, lift);
  };
  node.addEventListener('pointerdown', touch);
  for (const name of LIFTED) addEventListener(name, lift);
  return () => {
    end();
    stop();
  };
}
