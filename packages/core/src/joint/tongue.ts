import { heightAt, type Piece, SAME_LENGTH, type Share, sharesOf } from '@fielded/geometry';
import type { Section } from './section.ts';

/** A stretch of the tongue over [x0, x1] in which its front and its back surface are one piece each. */
export interface TongueStretch {
  readonly x0: number;
  readonly x1: number;
  readonly front: Piece;
  readonly back: Piece;
}

/** The tongue's two surfaces from the tip inwards, stretch by stretch; stretches follow each other without gaps where there is wood. */
export type Tongue = readonly TongueStretch[];

/**
 * Reads the section's front and back surface as matching stretches, from the edge to `depth` mm in (the whole section where
 * none is given). Stretches where no wood is are missing.
 */
export function readTongue(section: Section, depth: number = section.width): Tongue {
  const fronts = surface(section, 1, depth);
  const backs = surface(section, -1, depth);
  const tongue: TongueStretch[] = [];
  let f = 0;
  let k = 0;
  while (f < fronts.length && k < backs.length) {
    const front = fronts[f]!;
    const back = backs[k]!;
    const x0 = Math.max(front.x0, back.x0);
    const x1 = Math.min(front.x1, back.x1);
    if (x0 < x1) tongue.push({ x0, x1, front: front.piece, back: back.piece });
    if (front.x1 <= back.x1) f++;
    if (back.x1 <= front.x1) k++;
  }
  return tongue;
}

/** The section's front surface (1) or back surface (-1), piece by piece. */
function surface({ boundaries }: Section, side: 1 | -1, depth: number): Share[] {
  const shares: Share[] = [];
  for (const b of boundaries)
    if (b.outer && b.wood === side && b.x0 < depth) sharesOf(b.thread, b.x0, Math.min(b.x1, depth), shares);
  return shares;
}

/** How many of a tongue's stretches are inserted to depth `e` mm, the last of them perhaps in part; a step at `e` itself stays outside. */
export function countInserted(tongue: Tongue, e: number): number {
  let count = 0;
  while (count < tongue.length && tongue[count]!.x0 < e - SAME_LENGTH) count++;
  return count;
}

/** Greatest height of a piece over [x0, x1], mm. */
export function highestOver(p: Piece, x0: number, x1: number): number {
  return crestWithin(p, x0, x1) ?? Math.max(heightAt(p, x0), heightAt(p, x1));
}

/** Height of an arc's top where it lies between x0 and x1, mm. */
export function crestWithin(p: Piece, x0: number, x1: number): number | undefined {
  return p.turn < 0 && p.cx > x0 && p.cx < x1 ? p.cy + p.r : undefined;
}

/** Least height of a piece over [x0, x1], mm. */
export function lowestOver(p: Piece, x0: number, x1: number): number {
  return troughWithin(p, x0, x1) ?? Math.min(heightAt(p, x0), heightAt(p, x1));
}

/** Height of an arc's bottom where it lies between x0 and x1, mm. */
export function troughWithin(p: Piece, x0: number, x1: number): number | undefined {
  return p.turn > 0 && p.cx > x0 && p.cx < x1 ? p.cy - p.r : undefined;
}

/** Thickness of the tongue at x within a stretch, mm. */
export function thicknessAt(s: TongueStretch, x: number): number {
  return heightAt(s.front, x) - heightAt(s.back, x);
}

/**
 * Least and greatest thickness of the tongue inserted to depth e, mm.
 *
 * Over a stretch the thickness is greatest or least at an end or where both surfaces run parallel, which for any pair of
 * lines and arcs is one x in closed form (formula 6).
 */
export function thicknessRange(tongue: Tongue, e: number): { thinnest: number; thickest: number } {
  let thinnest = Number.POSITIVE_INFINITY;
  let thickest = Number.NEGATIVE_INFINITY;
  const count = countInserted(tongue, e);
  for (let k = 0; k < count; k++) {
    const s = tongue[k]!;
    const end = Math.min(s.x1, e);
    const tip = thicknessAt(s, s.x0);
    const mouth = thicknessAt(s, end);
    const x = parallelAt(s);
    const between = x > s.x0 && x < end ? thicknessAt(s, x) : tip;
    thinnest = Math.min(thinnest, tip, mouth, between);
    thickest = Math.max(thickest, tip, mouth, between);
  }
  return { thinnest, thickest };
}

/** Where front and back surface have the same slope, their only one, be it beyond the stretch; NaN where they never or always do. */
function parallelAt(s: TongueStretch): number {
  const { front, back } = s;
  if (front.turn === 0 && back.turn === 0) return Number.NaN;
  if (front.turn === 0) return slopeReachedAt(back, front);
  if (back.turn === 0) return slopeReachedAt(front, back);
  // The slope of an arc rises with turn·(x − cx)/r; equal slopes mean equal values of that.
  const a = front.turn / front.r;
  const b = back.turn / back.r;
  return (a * front.cx - b * back.cx) / (a - b);
}

/** Where an arc has the slope of a line. */
function slopeReachedAt(bow: Piece, straight: Piece): number {
  const dx = straight.x1 - straight.x0;
  const dy = straight.y1 - straight.y0;
  return bow.cx + (bow.turn * bow.r * dy) / Math.sqrt(dx * dx + dy * dy);
}

/** What an inserted part asks of the groove: the greatest height of its front and the least of its back, mm. */
export interface GrooveNeed {
  readonly front: number;
  readonly back: number;
}

/**
 * The groove that lets the tongue in to depth e, as wide as max of the front − min of the back over all of what is inserted
 * (formula 7); from −∞ to ∞ where nothing is.
 */
export function grooveNeed(tongue: Tongue, e: number): GrooveNeed {
  let front = Number.NEGATIVE_INFINITY;
  let back = Number.POSITIVE_INFINITY;
  const count = countInserted(tongue, e);
  for (let k = 0; k < count; k++) {
    const s = tongue[k]!;
    const end = Math.min(s.x1, e);
    front = Math.max(front, highestOver(s.front, s.x0, end));
    back = Math.min(back, lowestOver(s.back, s.x0, end));
  }
  return { front, back };
}
