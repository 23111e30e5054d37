/** An upright rectangle on the paper, mm, y down. */
export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** The smallest box round all of `boxes`; null round none. */
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

/** Whether two boxes share more than an edge. */
export function boxesOverlap(a: Box, b: Box): boolean {
  return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}

/** Whether the straight line from (x0, y0) to (x1, y1) passes through the box. Clipped side by side, after Liang and Barsky (1984). */
export function lineMeetsBox(x0: number, y0: number, x1: number, y1: number, box: Box): boolean {
  let from = 0;
  let to = 1;
  const dx = x1 - x0;
  const dy = y1 - y0;
  const sides: [number, number][] = [
    [-dx, x0 - box.x0],
    [dx, box.x1 - x0],
    [-dy, y0 - box.y0],
    [dy, box.y1 - y0],
  ];
  for (const [slope, room] of sides) {
    if (slope === 0) {
      if (room <= 0) return false;
    } else if (slope < 0) from = Math.max(from, room / slope);
    else to = Math.min(to, room / slope);
    if (from >= to) return false;
  }
  return true;
}
