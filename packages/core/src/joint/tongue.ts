import { heightAt, type Piece, SAME_LENGTH, type Share, sharesOf } from '@fielded/geometry';
import type { Section } from './section.ts';

/** A stretch over [x0, x1] in which front and back surface are one piece each. */
export interface TongueStretch {
  readonly x0: number;
  readonly x1: number;
  readonly front: Piece;
  readonly back: Piece;
}

/** The tongue's two surfaces from the tip inwards: stretch by stretch, without gaps where wood is. */
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

/** The section's outermost wood as seen from the front (1) or the back (-1), piece by piece. */
function surface({ boundaries }: Section, side: 1 | -1, depth: number): Share[] {
  const shares: Share[] = [];
  for (const b of boundaries)
    if (b.outer && b.wood === side && b.x0 < depth) sharesOf(b.thread, b.x0, Math.min(b.x1, depth), shares);
  return shares;
}

/** The part of the tongue inserted to depth e, its last stretch cut there; a step that stands at e itself stays outside. */
export function insertedPart(tongue: Tongue, e: number): Tongue {
  const part: TongueStretch[] = [];
  for (const s of tongue) {
    if (s.x0 >= e - SAME_LENGTH) break;
    part.push(s.x1 <= e ? s : { ...s, x1: e });
  }
  return part;
}

/** Greatest height of a piece over [x0, x1], mm. */
export function highestOver(p: Piece, x0: number, x1: number): number {
  if (p.turn < 0 && p.cx > x0 && p.cx < x1) return p.cy + p.r;
  return Math.max(heightAt(p, x0), heightAt(p, x1));
}

/** Least height of a piece over [x0, x1], mm. */
export function lowestOver(p: Piece, x0: number, x1: number): number {
  if (p.turn > 0 && p.cx > x0 && p.cx < x1) return p.cy - p.r;
  return Math.min(heightAt(p, x0), heightAt(p, x1));
}

/** Thickness of the tongue at x within a stretch, mm. */
export function thicknessAt(s: TongueStretch, x: number): number {
  return heightAt(s.front, x) - heightAt(s.back, x);
}

/**
 * Least and greatest thickness over an inserted part, mm.
 *
 * Over a stretch the thickness is greatest or least at an end or where both surfaces run parallel, which for any pair of
 * lines and arcs is one x in closed form (formula 6).
 */
export function thicknessRange(part: Tongue): { thinnest: number; thickest: number } {
  let thinnest = Number.POSITIVE_INFINITY;
  let thickest = Number.NEGATIVE_INFINITY;
  for (const s of part) {
    const tip = thicknessAt(s, s.x0);
    const mouth = thicknessAt(s, s.x1);
    const x = parallelAt(s);
    const between = x > s.x0 && x < s.x1 ? thicknessAt(s, x) : tip;
    thinnest = Math.min(thinnest, tip, mouth, between);
    thickest = Math.max(thickest, tip, mouth, between);
  }
  return { thinnest, thickest };
}

/** Where front and back surface have the same slope, their only one; NaN where they never do or always do. */
function parallelAt({ front, back }: TongueStretch): number {
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
  return bow.cx + (bow.turn * bow.r * dy) / Math.hypot(dx, dy);
}

/** What an inserted part asks of the groove: the greatest height of its front and the least of its back, mm. */
export interface GrooveNeed {
  readonly front: number;
  readonly back: number;
}

/** The groove that lets an inserted part in, as wide as max of the front − min of the back over all of it (formula 7). */
export function grooveNeed(part: Tongue): GrooveNeed {
  let front = Number.NEGATIVE_INFINITY;
  let back = Number.POSITIVE_INFINITY;
  for (const s of part) {
    front = Math.max(front, highestOver(s.front, s.x0, s.x1));
    back = Math.min(back, lowestOver(s.back, s.x0, s.x1));
  }
  return { front, back };
}
