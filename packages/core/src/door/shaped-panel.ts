import { type Chain, line, offsetLoops, reverseCurves, shiftCurve, withEnds } from '@fielded/geometry';
import { areaWithin } from './outline-measures.ts';
import { edgeRadii, hollowOf, type ShapedHead, shapedCurve } from './shaped-head.ts';

/** A panel under a shaped head, mm: its full width and height to the apex, the opening's width, and what goes into the groove at the head. */
export interface ShapedPanel {
  readonly shaped: ShapedHead;
  readonly opening: number;
  readonly width: number;
  readonly height: number;
  readonly insertion: number;
}

/**
 * The panel's outline `inside` mm within its edge, anticlockwise from its bottom left corner: exact lines and arcs, y up from the
 * panel's bottom, x from its middle.
 *
 * @throws RangeError where so little is left that the outline has no shaped head or no sides.
 */
export function shapedOutline(panel: ShapedPanel, inside: number): Chain {
  const { shaped, opening, width, height, insertion } = panel;
  if (shaped.shape === 'outline') return offsetOutline(panel, inside);
  // Ears that the panel's edge has no radius left of: what remains is trimmed as any outline is.
  if (shaped.shape === 'cathedral' && shaped.ears + Math.min(0, inside) <= insertion)
    return offsetOutline(asOutline(panel), inside);
  const half = width / 2 - inside;
  const springing = height - insertion - shaped.rise;
  const top = shapedCurve(shaped, opening, insertion - inside, half).map((c) => shiftCurve(c, 0, springing));
  const [left, right] = [top[0]!, top[top.length - 1]!];
  if (!(half > 0 && Math.min(left.y0, right.y1) > inside))
    throw new RangeError(`nothing is left of the panel ${inside} mm within its edge`);
  return [
    line(-half, inside, half, inside),
    line(half, inside, half, right.y1),
    ...reverseCurves(top),
    line(-half, left.y0, -half, inside),
  ];
}

/** The same panel with its shaped head as an outline. */
function asOutline(panel: ShapedPanel): ShapedPanel {
  const { shaped, opening } = panel;
  const chain = shapedCurve(shaped, opening, 0, opening / 2).map((c) => shiftCurve(c, opening / 2, 0));
  return { ...panel, shaped: { shape: 'outline', rise: shaped.rise, chain } };
}

/**
 * The same for a shaped head of any outline: the parallel (formula G1) of a ring that lies `insertion` within the panel's edge, the frame's
 * sight edge with its sides and foot; of a panel's edge that a hollow has vanished from, the parallel of that edge. Of several rings
 * that it comes apart into, the largest.
 */
function offsetOutline({ shaped, opening, width, height, insertion }: ShapedPanel, inside: number): Chain {
  const half = width / 2 - insertion;
  const springing = height - insertion - shaped.rise;
  const top = shapedCurve(shaped, opening, 0, half).map((c) => shiftCurve(c, 0, springing));
  const ring: Chain = [
    line(-half, insertion, half, insertion),
    line(half, insertion, half, top[top.length - 1]!.y1),
    ...reverseCurves(top),
    line(-half, top[0]!.y0, -half, insertion),
  ];
  const hollow = hollowOf(edgeRadii(shaped, opening, insertion));
  const vanishes = inside > 0 && hollow !== null && hollow <= 0;
  const outline = vanishes
    ? largestParallel(largestParallel(ring, -insertion), inside)
    : largestParallel(ring, inside - insertion);
  const joined = joinPieces(startAtFoot(outline, inside));
  if (!hasSides(joined, width / 2 - inside))
    throw new RangeError(`nothing is left of the sides of the panel ${inside} mm within its edge`);
  return joined;
}

/** Whether a ring has an upright at either side, `half` mm from its middle. */
function hasSides(ring: Chain, half: number): boolean {
  return [-half, half].every((x) =>
    ring.some((c) => c.turn === 0 && Math.abs(c.x0 - x) < 1e-6 && Math.abs(c.x1 - x) < 1e-6),
  );
}

/** The largest ring of a ring's parallel, `inside` mm within it. */
function largestParallel(ring: Chain, inside: number): Chain {
  const rings = offsetLoops([{ curves: ring, closed: true }], inside, 'sharp');
  if (rings.length === 0) throw new RangeError(`nothing is left of the panel ${inside} mm within its edge`);
  return rings.map(({ curves }) => curves).reduce((one, next) => (areaWithin(next) > areaWithin(one) ? next : one));
}

/** Neighbours on one line or one circle as one piece: a corner run on is made of several. */
function joinPieces(chain: Chain): Chain {
  const joined: Chain[number][] = [];
  for (const c of chain) {
    const last = joined.at(-1);
    if (last !== undefined && sameCarrier(last, c))
      joined[joined.length - 1] = withEnds(last, last.x0, last.y0, c.x1, c.y1);
    else joined.push(c);
  }
  return joined;
}

function sameCarrier(one: Chain[number], next: Chain[number]): boolean {
  if (one.turn !== next.turn) return false;
  if (one.turn !== 0) return Math.hypot(one.cx - next.cx, one.cy - next.cy) + Math.abs(one.r - next.r) < 1e-7;
  const [dx, dy] = [one.x1 - one.x0, one.y1 - one.y0];
  const [ex, ey] = [next.x1 - next.x0, next.y1 - next.y0];
  return Math.abs(dx * ey - dy * ex) < 1e-9 * Math.hypot(dx, dy) * Math.hypot(ex, ey) && dx * ex + dy * ey > 0;
}

/** A ring from its foot on: the level line lowest down. */
function startAtFoot(ring: Chain, foot: number): Chain {
  const at = ring.findIndex((c) => c.turn === 0 && Math.abs(c.y0 - foot) < 1e-6 && Math.abs(c.y1 - foot) < 1e-6);
  if (at < 0) throw new RangeError(`the panel has no foot ${foot} mm within its edge`);
  return [...ring.slice(at), ...ring.slice(0, at)];
}

/** Whether the outline `inside` mm within the panel's edge still has its shaped head and its sides. */
export function hasOutline(panel: ShapedPanel, inside: number): boolean {
  try {
    shapedOutline(panel, inside);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}
