import { heightAt, SAME_LENGTH } from '@fielded/geometry';
import {
  countInserted,
  crestWithin,
  type GrooveNeed,
  highestOver,
  lowestOver,
  type Tongue,
  type TongueStretch,
  troughWithin,
} from './tongue.ts';

/** The groove that a tongue needs at an insertion, mm, known beforehand. */
export interface KnownNeed {
  readonly insertion: number;
  readonly need: GrooveNeed;
}

/** The stretch in which a tongue first needs a wider groove, examined up to `end`, and the need of the stretches before it. */
export interface Stop extends GrooveNeed {
  readonly stretch: TongueStretch;
  readonly end: number;
}

/**
 * The deepest insertion, mm: the greatest depth, up to `depth`, at which the tongue needs a groove no wider than `width`; 0 where even
 * the tip is thicker. The need never falls with depth, so the first stretch that needs a wider groove decides; in it the depth is
 * found by bisection, to the last bit.
 */
export function goesIn(tongue: Tongue, width: number, depth: number, known: KnownNeed): number {
  const stop = findStop(tongue, width, depth, known);
  return stop === null ? depth : lastThatFits(stop, width);
}

/** Where a tongue stops before `depth`; null where it goes in as far as that. Where the need at the `known` insertion fits, the search starts there. */
export function findStop(tongue: Tongue, width: number, depth: number, known: KnownNeed): Stop | null {
  const fits = known.need.front - known.need.back <= width;
  let front = fits ? known.need.front : Number.NEGATIVE_INFINITY;
  let back = fits ? known.need.back : Number.POSITIVE_INFINITY;
  const count = countInserted(tongue, depth);
  for (let k = 0; k < count; k++) {
    const s = tongue[k]!;
    const end = Math.min(s.x1, depth);
    if (fits && end <= known.insertion) continue;
    const wider = Math.max(front, highestOver(s.front, s.x0, end));
    const lower = Math.min(back, lowestOver(s.back, s.x0, end));
    if (wider - lower > width + SAME_LENGTH) return { stretch: s, end, front, back };
    front = wider;
    back = lower;
  }
  return null;
}

/** The greatest x up to which the tongue fits in the stretch that stops it, mm; the stretch's start where none of it fits. */
export function lastThatFits({ stretch: s, end, front, back }: Stop, width: number): number {
  const highest = heightAt(s.front, s.x0);
  const lowest = heightAt(s.back, s.x0);
  let inside = s.x0;
  let outside = end;
  for (;;) {
    const middle = (inside + outside) / 2;
    if (middle <= inside || middle >= outside) return inside;
    const wider = Math.max(front, crestWithin(s.front, s.x0, middle) ?? Math.max(highest, heightAt(s.front, middle)));
    const lower = Math.min(back, troughWithin(s.back, s.x0, middle) ?? Math.min(lowest, heightAt(s.back, middle)));
    if (wider - lower <= width) inside = middle;
    else outside = middle;
  }
}
