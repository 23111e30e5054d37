import { arcAngle, type Chain, type Curve, meetCarriers } from '@fielded/geometry';

/** Ends closer than this, mm, are one point. */
const TOGETHER = 1e-7;

/**
 * The parallel of an open chain `out` mm to its left as it runs, y up (right where negative): lines and arcs, exact; corners run
 * on along both sides to where these meet.
 *
 * For chains whose pieces all outlive it, as a head's do in the widths of a raise.
 *
 * @throws RangeError where a piece has no radius or no length left, or two neighbours no longer meet.
 */
export function parallelChain(chain: Chain, out: number): Chain {
  const moved = chain.map((c) => moveCurve(c, out));
  for (let i = 1; i < moved.length; i++) {
    const [before, after] = [moved[i - 1]!, moved[i]!];
    const apart = Math.hypot(before.x1 - after.x0, before.y1 - after.y0);
    const { x, y } = apart < TOGETHER ? { x: before.x1, y: before.y1 } : meeting(before, after, chain[i]!, out);
    moved[i - 1] = { ...before, x1: x, y1: y };
    moved[i] = { ...after, x0: x, y0: y };
  }
  moved.forEach((c, i) => checkLeft(c, chain[i]!, out));
  return moved;
}

function moveCurve(c: Curve, out: number): Curve {
  if (c.turn === 0) {
    const length = Math.hypot(c.x1 - c.x0, c.y1 - c.y0);
    const [x, y] = [(-out * (c.y1 - c.y0)) / length, (out * (c.x1 - c.x0)) / length];
    return { ...c, x0: c.x0 + x, y0: c.y0 + y, x1: c.x1 + x, y1: c.y1 + y };
  }
  // Left of an arc that runs anticlockwise lies its centre.
  const r = c.r - c.turn * out;
  if (!(r > TOGETHER)) throw new RangeError(`an arc of radius ${c.r} has no parallel ${out} mm to its left`);
  const k = r / c.r;
  const place = (x: number, y: number) => [c.cx + k * (x - c.cx), c.cy + k * (y - c.cy)] as const;
  const [[x0, y0], [x1, y1]] = [place(c.x0, c.y0), place(c.x1, c.y1)];
  return { ...c, x0, y0, x1, y1, r };
}

/** Where two neighbours meet, nearest to the corner they had. */
function meeting(before: Curve, after: Curve, corner: Curve, out: number): { x: number; y: number } {
  const found: number[] = [];
  meetCarriers(before, after, found);
  let best: { x: number; y: number; away: number } | null = null;
  for (let i = 0; i < found.length; i += 2) {
    const [x, y] = [found[i]!, found[i + 1]!];
    const away = Math.hypot(x - corner.x0, y - corner.y0);
    if (best === null || away < best.away) best = { x, y, away };
  }
  if (best === null) throw new RangeError(`two pieces do not meet ${out} mm out`);
  return best;
}

/** Trimmed at both ends, a piece must still run the way it did. */
function checkLeft(c: Curve, was: Curve, out: number): void {
  const runs =
    c.turn === 0
      ? (c.x1 - c.x0) * (was.x1 - was.x0) + (c.y1 - c.y0) * (was.y1 - was.y0) > 0
      : arcAngle(c) < arcAngle(was) + Math.PI / 2;
  if (!runs) throw new RangeError(`a piece has nothing left ${out} mm out`);
}
