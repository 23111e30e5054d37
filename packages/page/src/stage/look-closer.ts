import { type ReadonlySignal, signal } from '@preact/signals';
import type { SheetPart } from './framing.ts';
import { findPressed } from './under-finger.ts';

/** How much the drawing is magnified, and about which point: 0 to 1 of its width and height. */
interface Look {
  readonly times: number;
  readonly x: number;
  readonly y: number;
}

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
const MOST = 8;
/** What stands nearer to the edge than this, of the width or height that is seen, is not in sight. */
const MARGIN = 0.06;
/** How much closer two taps look; how long after each other they are, ms, and how near, px. */
const BY_TAPS = 2.5;
const TAPS = 320;
const NEAR = 24;

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
    listen: (node, isHeld) => listenToFingers(node, look, set, isHeld),
  };
}

/** Two fingers pinch and move; one finger moves what is looked at closer; two taps on the ground look closer there, or at the whole again. */
function listenToFingers(
  node: SVGSVGElement,
  look: ReadonlySignal<Look>,
  set: (times: number, x: number, y: number) => void,
  isHeld: () => boolean,
): () => void {
  const fingers = new Map<number, { x: number; y: number }>();
  const middle = () => {
    const all = [...fingers.values()];
    const x = all.reduce((sum, finger) => sum + finger.x, 0) / all.length;
    const y = all.reduce((sum, finger) => sum + finger.y, 0) / all.length;
    const [a, b] = all;
    return { x, y, apart: a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0 };
  };
  /** Where a point of the screen lies in what is shown, from its middle, in parts of its width and height. */
  const placeOf = (at: { readonly x: number; readonly y: number }) => {
    const box = node.getBoundingClientRect();
    return { x: (at.x - box.left) / box.width - 0.5, y: (at.y - box.top) / box.height - 0.5 };
  };
  /** Looks at it by so many times; what lay at one place of the view lies at another then. */
  const lookAt = (times: number, from: { x: number; y: number }, to: { x: number; y: number }) => {
    const { times: before, x, y } = look.value;
    const [a, b] = [placeOf(from), placeOf(to)];
    const now = Math.min(MOST, Math.max(1, times));
    set(now, x + a.x / before - b.x / now, y + a.y / before - b.y / now);
  };
  let tapped = { at: Number.NEGATIVE_INFINITY, x: 0, y: 0 };
  const tapTwice = ({ timeStamp: at, clientX: x, clientY: y, pointerType }: PointerEvent) => {
    if (pointerType === 'mouse' || fingers.size > 0 || findPressed(node, x, y) !== null) return;
    const isSecond = at - tapped.at < TAPS && Math.hypot(x - tapped.x, y - tapped.y) < NEAR;
    tapped = isSecond ? { ...tapped, at: Number.NEGATIVE_INFINITY } : { at, x, y };
    if (isSecond) lookAt(look.value.times > 1 ? 1 : BY_TAPS, { x, y }, { x, y });
  };
  const down = (event: PointerEvent) => {
    tapTwice(event);
    if (event.pointerType !== 'mouse' || look.value.times > 1)
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
  };
  const move = (event: PointerEvent) => {
    if (!fingers.has(event.pointerId)) return;
    const before = middle();
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (isHeld() || (fingers.size === 1 && look.value.times === 1)) return;
    const after = middle();
    const { times } = look.value;
    lookAt(before.apart > 0 ? times * (after.apart / before.apart) : times, before, after);
  };
  const up = (event: PointerEvent) => fingers.delete(event.pointerId);
  node.addEventListener('pointerdown', down);
  node.addEventListener('pointermove', move);
  for (const name of ['pointerup', 'pointercancel'] as const) addEventListener(name, up);
  return () => {
    node.removeEventListener('pointerdown', down);
    node.removeEventListener('pointermove', move);
    for (const name of ['pointerup', 'pointercancel'] as const) removeEventListener(name, up);
  };
}
