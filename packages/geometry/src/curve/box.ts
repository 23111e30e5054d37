/** An axis-parallel rectangle, mm: x0 ≤ x1 and y0 ≤ y1. */
export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** The smallest box that contains all of `boxes`; null where there are none. */
export function joinBoxes(boxes: readonly Box[]): Box | null {
  if (!boxes.length) return null;
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const box of boxes) {
    x0 = Math.min(x0, box.x0);
    y0 = Math.min(y0, box.y0);
    x1 = Math.max(x1, box.x1);
    y1 = Math.max(y1, box.y1);
  }
  return { x0, y0, x1, y1 };
}

/** The box grown by `by` on every side. */
export function growBox(box: Box, by: number): Box {
  return { x0: box.x0 - by, y0: box.y0 - by, x1: box.x1 + by, y1: box.y1 + by };
}

/** Whether the insides of two boxes overlap once the first is grown by `by` mm on every side. Boxes that share only an edge do not. */
export function boxesOverlap(a: Box, b: Box, by: number = 0): boolean {
  return a.x0 - by < b.x1 && b.x0 < a.x1 + by && a.y0 - by < b.y1 && b.y0 < a.y1 + by;
}

/**
 * Whether the straight line from (x0, y0) to (x1, y1) passes through the inside of a box grown by `by` mm. Exact to rounding.
 *
 * Method: separating axes. The two are apart if they are apart along x, along y, or across the line.
 */
export function lineMeetsBox(x0: number, y0: number, x1: number, y1: number, box: Box, by: number = 0): boolean {
  const left = box.x0 - by;
  const right = box.x1 + by;
  const top = box.y0 - by;
  const bottom = box.y1 + by;
  if ((x0 <= left && x1 <= left) || (x0 >= right && x1 >= right)) return false;
  if ((y0 <= top && y1 <= top) || (y0 >= bottom && y1 >= bottom)) return false;
  // Apart along neither axis. Across the line, do all four corners lie on one side of it?
  const dx = x1 - x0;
  const dy = y1 - y0;
  if (dx === 0 || dy === 0) return true;
  const a = dx * (top - y0) - dy * (left - x0);
  const b = dx * (top - y0) - dy * (right - x0);
  const c = dx * (bottom - y0) - dy * (left - x0);
  const d = dx * (bottom - y0) - dy * (right - x0);
  return !((a >= 0 && b >= 0 && c >= 0 && d >= 0) || (a <= 0 && b <= 0 && c <= 0 && d <= 0));
}
