import { arcAngle, type Curve, cornerAngle, pointAlong, SMOOTH_JOINT, splitAtExtremes } from '@fielded/geometry';
import { edgeAlong } from './edge-clearance.ts';
import type { KnifeFace } from './knife-face.ts';
import { type SeenProfile, toCut } from './seen-profile.ts';

/** A stretch of the profile with less side clearance than the shop's least; its ends in cut coordinates, mm, angles in radians. */
export interface TightWall {
  readonly from: { readonly a: number; readonly b: number };
  readonly to: { readonly a: number; readonly b: number };
  /** The same ends as the head sees them: x along the spindle from the tip, y on the radius from the tip. */
  readonly seenFrom: { readonly x: number; readonly y: number };
  readonly seenTo: { readonly x: number; readonly y: number };
  /** Whether it is a line; else it is a stretch of arcs. */
  readonly straight: boolean;
  readonly sideClearance: number;
  /** Whether the wall leans over the wood, so that the sweep takes it away. */
  readonly undercut: boolean;
  /** The draft, its lean off square to the axis, with which it would have the shop's least side clearance; null where none would do. */
  readonly draft: number | null;
}

/** Each curve is examined in so many parts. */
const TRIED = 64;

/**
 * The walls that rub: the stretches with less side clearance than `least`, radians, each with the draft that would cure it.
 *
 * By tan β = tan α · cos φ (formula K5) a wall needs a draft of asin(tan β / tan α) off square to the axis, α the least clearance of the
 * stretch. Each straight wall is a stretch of its own; arcs that join smoothly are one stretch.
 */
export function tightWalls(seen: SeenProfile, face: KnifeFace, wedge: number, least: number): TightWall[] {
  const walls: Stretch[] = [];
  let open: Stretch | undefined;
  let before: Curve | undefined;
  for (const c of splitAtExtremes(seen.chain)) {
    const runsOn = before && c.turn !== 0 && before.turn !== 0 && cornerAngle(before, c) < SMOOTH_JOINT;
    if (!runsOn) open = undefined;
    before = c;
    const at = edgeAlong(c, seen, face, wedge);
    const angle = arcAngle(c);
    for (let i = 0; i < TRIED; i++) {
      const [start, middle, end] = [at(i / TRIED), at((i + 0.5) / TRIED), at((i + 1) / TRIED)];
      if (middle.side >= least) {
        open = undefined;
        continue;
      }
      // Does this part go on with the stretch before it, or start a new one?
      if (!open) {
        const p = pointAlong(c, i / TRIED, angle);
        open = { from: p, to: p, straight: c.turn === 0, side: Number.POSITIVE_INFINITY, clearance: start.clearance };
        walls.push(open);
      }
      open.to = pointAlong(c, (i + 1) / TRIED, angle);
      open.side = Math.min(open.side, start.side, middle.side, end.side);
      open.clearance = Math.min(open.clearance, start.clearance, end.clearance);
    }
  }
  return walls.map((w) => ({
    from: toCut(seen, w.from.x, w.from.y),
    to: toCut(seen, w.to.x, w.to.y),
    seenFrom: { x: w.from.x, y: w.from.y },
    seenTo: { x: w.to.x, y: w.to.y },
    straight: w.straight,
    sideClearance: w.side,
    undercut: w.side < -1e-9,
    draft: draftFor(least, w.clearance),
  }));
}

interface Stretch {
  readonly from: { x: number; y: number };
  to: { x: number; y: number };
  readonly straight: boolean;
  side: number;
  clearance: number;
}

/** The draft that gives the side clearance `side` at a clearance, radians; null where none does. */
function draftFor(side: number, clearance: number): number | null {
  if (clearance <= 0) return null;
  const share = Math.tan(side) / Math.tan(clearance);
  return share < 1 ? Math.asin(share) : null;
}
