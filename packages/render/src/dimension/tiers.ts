import type { Box } from '@fielded/geometry';
import type { Board, Marks } from './board.ts';
import { addMarks, CROSSED, weighMarks } from './board.ts';
import type { Lettering } from './figure.ts';
import { letter } from './figure.ts';
import type { DrawnDimension, LinearDimension, Side, TextAt } from './linear.ts';
import { drawLinear, isUpright, spanOf, textFits } from './linear.ts';
import { type Placed, trimExtensions } from './trim-extensions.ts';

const FIRST_TIER = 10;
const NEXT_TIER = 7.5;
/** Where texts hang under dimension lines too. */
const NEXT_TIER_WITH_UNDER = 10.5;
/** What it costs to stand one tier further out, so that a chain forms before a new tier does. */
const OUTWARD = 8;
/** A text beyond an end keeps a neighbour out of the tier. */
const IN_A_CHAIN = 6;
const OVERLAID = 1000;
/** Places that cost as much as this are weighed only where there is none that costs less. */
const BOUNDS: readonly number[] = [CROSSED, OVERLAID, Infinity];

/**
 * Lays out level and plumb dimensions round a drawing in tiers.
 *
 * Short lengths stand inside, long ones outside them, so that extension lines do not cross dimension lines; lengths that
 * meet end to end share a tier and make a chain. Each dimension takes the tier and the place for its text that do least
 * harm to what stands already; then each is taken up once more and put where it now stands best. There is always a
 * further tier, so no text ends up over another. Order of the input matters only between equal lengths.
 */
export function layTiers(dimensions: readonly LinearDimension[], around: Box, board: Board): DrawnDimension[] {
  const length = (d: LinearDimension) => spanOf(d).high - spanOf(d).low;
  const order = [...dimensions]
    .sort((a, b) => length(a) - length(b))
    .map((dimension): ToPlace => {
      const { side } = dimension;
      const pitch = dimensions.some((other) => other.side === side && other.under) ? NEXT_TIER_WITH_UNDER : NEXT_TIER;
      return { dimension, places: textPlaces(dimension, dimensions), pitch };
    });
  const placed: Placed[] = [];
  for (const each of order) placed.push(placeBest(each, around, withMarks(board, placed), placed));
  order.forEach((each, i) => {
    const rest = placed.filter((_, j) => j !== i);
    placed[i] = placeBest(each, around, withMarks(board, rest), rest);
  });
  for (const { drawn } of placed) addMarks(drawn.marks, board);
  return trimExtensions(placed);
}

/** The board as it would be with these on it. */
function withMarks(board: Board, placed: readonly Placed[]): Board {
  const all: Board = { ...board, texts: [...board.texts], arrows: [...board.arrows], lines: [...board.lines] };
  for (const { drawn } of placed) addMarks(drawn.marks as Marks, all);
  return all;
}

/** A dimension with the places its text may stand, and how far apart the tiers of its side are. */
interface ToPlace {
  readonly dimension: LinearDimension;
  readonly places: readonly Place[];
  readonly pitch: number;
}

function placeBest(each: ToPlace, around: Box, board: Board, placed: readonly Placed[]): Placed {
  for (const bound of BOUNDS) {
    const best = bestBelow(bound, each, around, board, placed);
    if (best) return best;
  }
  throw new RangeError(`dimension ${each.dimension.key} has no length to measure`);
}

/** The tier and the place for the text that do least harm, where one does less than `bound`. */
function bestBelow(
  bound: number,
  { dimension, places, pitch }: ToPlace,
  around: Box,
  board: Board,
  placed: readonly Placed[],
): Placed | undefined {
  const { side } = dimension;
  const tiersUsed = new Set(placed.filter((other) => other.side === side).map((other) => other.level)).size;
  let best: Placed | undefined;
  let least = bound;
  for (let tier = 0; tier <= tiersUsed + 1 && tier * OUTWARD < least; tier += 1) {
    const level = tierLevel(side, tier, around, pitch);
    for (const { at, lettering, cost } of places) {
      const before = tier * OUTWARD + cost;
      if (before >= least) continue;
      const candidate = claim(dimension, drawLinear(dimension, level, at, lettering), level);
      const bare = before + (overlaid(candidate, placed) ? OVERLAID : 0);
      if (bare >= least) continue;
      const total = bare + weighMarks(candidate.drawn.marks, board, least - bare);
      if (total < least) [best, least] = [candidate, total];
    }
  }
  return best;
}

/** Where the dimension line of a tier stands. */
function tierLevel(side: Side, tier: number, around: Box, pitch: number): number {
  const out = FIRST_TIER + tier * pitch;
  if (side === 'above') return around.y0 - out;
  if (side === 'below') return around.y1 + out;
  return side === 'left' ? around.x0 - out : around.x1 + out;
}

/** A place that a text may stand, with what it costs. */
interface Place {
  readonly at: TextAt;
  readonly lettering: Lettering;
  readonly cost: number;
}

function textPlaces(dimension: LinearDimension, all: readonly LinearDimension[]): Place[] {
  const places: Place[] = [];
  const { low, high } = spanOf(dimension);
  const neighbour = (end: 'low' | 'high') =>
    all.some((other) => {
      if (other === dimension || other.side !== dimension.side) return false;
      const span = spanOf(other);
      return Math.abs(end === 'low' ? span.high - low : span.low - high) < 1e-6;
    });
  const upright = isUpright(dimension.side);
  const before = (upright ? 0 : 1) + (neighbour('low') ? IN_A_CHAIN : 0);
  const after = (upright ? 1 : 0) + (neighbour('high') ? IN_A_CHAIN : 0);
  for (const withWord of dimension.word ? [true, false] : [false]) {
    const lettering = letter(dimension, withWord);
    const wordless = withWord || !dimension.word ? 0 : 3;
    if (textFits(dimension, lettering)) {
      places.push({ at: 'middle', lettering, cost: wordless });
      places.push({ at: 'low', lettering, cost: wordless + 2 });
      places.push({ at: 'high', lettering, cost: wordless + 2 });
    }
    places.push({ at: 'before', lettering, cost: 6 + wordless + before });
    places.push({ at: 'after', lettering, cost: 6 + wordless + after });
  }
  return places;
}

/** What a dimension needs of its tier: what it measures and its text. The tail of an arrow turned outside may lie on a neighbour's line. */
function claim(dimension: LinearDimension, drawn: DrawnDimension, level: number): Placed {
  const upright = isUpright(dimension.side);
  let { low, high } = spanOf(dimension);
  for (const box of drawn.marks.texts) {
    low = Math.min(low, upright ? box.y0 : box.x0);
    high = Math.max(high, upright ? box.y1 : box.x1);
  }
  return { drawn, side: dimension.side, level, low, high };
}

/** Whether dimension lines would lie over each other in one tier. */
function overlaid(candidate: Placed, placed: readonly Placed[]): boolean {
  return placed.some(
    (other) =>
      other.side === candidate.side &&
      other.level === candidate.level &&
      Math.min(candidate.high, other.high) - Math.max(candidate.low, other.low) > 1e-6,
  );
}
