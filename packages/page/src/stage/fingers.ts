import { LIFTED, type Looking, MOST } from './look.ts';
import { findPressed } from './under-finger.ts';

/** How much closer two taps look; how long after each other they are, ms, and how near, px. */
const BY_TAPS = 2.5;
const TAPS = 320;
const NEAR = 24;

/** Two fingers pinch and move; one finger moves what is looked at closer; two taps on the ground look closer there, or at the whole again. */
export function listenToFingers(
  node: SVGSVGElement,
  { look, set, isHeld }: Looking,
  early: readonly PointerEvent[],
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
  for (const event of early) down(event);
  node.addEventListener('pointerdown', down);
  node.addEventListener('pointermove', move);
  for (const name of LIFTED) addEventListener(name, up);
  return () => {
    node.removeEventListener('pointerdown', down);
    node.removeEventListener('pointermove', move);
    for (const name of LIFTED) removeEventListener(name, up);
  };
}
