import { arcAngle, type Chain, type Curve, curvesBetween, line, shiftCurve, withEnds } from '@fielded/geometry';

/** How far, mm, an outline may miss the sides of its opening: what a drawing rounds. */
const ROUNDED = 0.01;

/** Whether an outline runs from one side of an opening to the other and stays between them. */
export function spansOpening(chain: Chain, width: number): boolean {
  const [first, last] = [chain[0], chain[chain.length - 1]];
  if (first === undefined || last === undefined) return false;
  const inside = curvesBetween([{ curves: chain, closed: false }], -ROUNDED, width + ROUNDED);
  return Math.abs(first.x0) <= ROUNDED && Math.abs(last.x1 - width) <= ROUNDED && inside.length === chain.length;
}

/** A heading past the upright by less, radians, is what a drawing rounds. */
const UPRIGHT = 1e-3;

/** Whether an outline goes back towards the left anywhere: its rail would hook under the panel and could not be put on. */
export function turnsBack(chain: Chain): boolean {
  return chain.some((c) => {
    const from = heading(c, 'start');
    // An arc turns steadily: it goes back nowhere if neither of its ends does, less than a whole turn apart.
    const to = c.turn === 0 ? from : from + c.turn * arcAngle(c);
    const start = Math.atan2(Math.sin(from), Math.cos(from));
    return Math.max(Math.abs(start), Math.abs(start + to - from)) > Math.PI / 2 + UPRIGHT;
  });
}

/** Any outline as it is, run on along its first and last piece or cut off there. */
export function outlineCurve(chain: Chain, width: number, half: number): Chain {
  const own = chain.map((c) => shiftCurve(c, -width / 2, 0));
  const [first, last] = [own[0]!, own[own.length - 1]!];
  if (last.x1 < half) own.splice(-1, 1, ...runOn(last, half, 'end'));
  if (first.x0 > -half) own.splice(0, 1, ...runOn(own[0]!, -half, 'start'));
  return curvesBetween([{ curves: own, closed: false }], -half - 1e-9, half + 1e-9);
}

/** A piece run on along its own line or circle to the upright at `x`; on the level where that does not reach so far. */
function runOn(c: Curve, x: number, which: 'start' | 'end'): Curve[] {
  const y = c.turn === 0 ? lineAt(c, x) : circleAt(c, x, which === 'start' ? c.y0 : c.y1);
  const reaches = Number.isFinite(y);
  if (which === 'start') return reaches ? [withEnds(c, x, y, c.x1, c.y1)] : [line(x, c.y0, c.x0, c.y0), c];
  return reaches ? [withEnds(c, c.x0, c.y0, x, y)] : [c, line(c.x1, c.y1, x, c.y1)];
}

function lineAt({ x0, y0, x1, y1 }: Curve, x: number): number {
  return y0 + ((x - x0) * (y1 - y0)) / (x1 - x0);
}

/** On the half of the circle, upper or lower, that the piece ends on. */
function circleAt({ cx, cy, r }: Curve, x: number, near: number): number {
  return cy + Math.sign(near - cy || 1) * Math.sqrt(r * r - (x - cx) ** 2);
}

/** The heading of a curve at its start or its end, radians. */
function heading(c: Curve, which: 'start' | 'end'): number {
  if (c.turn === 0) return Math.atan2(c.y1 - c.y0, c.x1 - c.x0);
  const [x, y] = which === 'start' ? [c.x0, c.y0] : [c.x1, c.y1];
  return Math.atan2(y - c.cy, x - c.cx) + (c.turn * Math.PI) / 2;
}

/** Corners sharper than this, radians, are corners. */
export const LEAST_CORNER = 1e-4;

/** The least radii of an outline's parallel: to the left of it lies the rail, so what turns left is hollow in the panel. */
export function leastRadii(
  chain: Chain,
  out: number,
): { readonly round: number | null; readonly hollow: number | null } {
  const least = (turn: -1 | 1): number | null => {
    const radii = chain.filter((c) => c.turn === turn).map((c) => c.r - turn * out);
    return radii.length === 0 ? null : Math.min(...radii);
  };
  return { round: least(-1), hollow: turnsSharply(chain, 1) ? 0 : least(1) };
}

/** Whether an outline has a corner that turns left (1) or right (−1). */
export function turnsSharply(chain: Chain, way: -1 | 1): boolean {
  return chain.some((c, i) => {
    const before = chain[i - 1];
    return before !== undefined && way * Math.sin(heading(c, 'start') - heading(before, 'end')) > LEAST_CORNER;
  });
}

/** The steepest slope of an outline, radians from the level. */
export function steepest(chain: Chain): number {
  const slopes = chain.flatMap((c) => {
    const ends = [heading(c, 'start'), heading(c, 'end')];
    return ends.map((angle) => Math.asin(Math.min(1, Math.abs(Math.sin(angle)))));
  });
  return Math.max(0, ...slopes);
}
