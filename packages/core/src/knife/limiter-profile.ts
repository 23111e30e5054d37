import {
  type Chain,
  type Curve,
  flipCurve,
  heightAt,
  line,
  type Piece,
  SAME_LENGTH,
  shiftCurve,
  splitAtExtremes,
  splitCurve,
  upperEnvelope,
} from '@fielded/geometry';
import type { SeenProfile } from './seen-profile.ts';

/**
 * The profile that a limiter follows so that it clears the wood sideways as well: at each station the least reach that the
 * profile has within `side` mm along the axis (formula K9).
 *
 * A knife clears everything out to its radius at each station, so its limiter, set back on the radius alone, would run along
 * the walls that stand square to the axis. The greatest station is where the deepest wall stands, flat: the limiter ends
 * `side` before it. On edge it is the field's end, where the worked face `face` (seen coordinates) goes on. Beyond the other end
 * there is no wood. Exact: made of the profile's own curves, moved, and of level steps. null where nothing is left.
 */
export function limiterProfile(seen: SeenProfile, side: number, face: number): Chain | null {
  const outline = upperEnvelope([seen.chain]);
  const from = outline[0]!.x0;
  const to = outline[outline.length - 1]!.x1;
  const ends = seen.tilt === Math.PI / 2 ? [line(to - side, face, to, face)] : [];
  const until = seen.tilt === Math.PI / 2 ? to : to - side;
  if (until - from <= SAME_LENGTH) return null;
  // The least within a window: the profile moved both ways, and each of its lows held level over the window.
  const lows = lowPlaces(outline).map(({ x, y }) => line(x - side, y, x + side, y));
  const groups: Chain[] = [
    outline.map((c) => shiftCurve(c, side, 0)),
    outline.map((c) => shiftCurve(c, -side, 0)),
    ...[...lows, ...ends].map((level) => [level]),
  ];
  const lower = upperEnvelope(groups.map((chain) => chain.map((c) => flipCurve(c, 0)))).map((c) => flipCurve(c, 0));
  return between(lower, from, until);
}

/** Every place where the profile may be lowest among its neighbours: ends of its monotone curves, both sides of a step. */
function lowPlaces(outline: Chain): { x: number; y: number }[] {
  const places = new Map<string, { x: number; y: number }>();
  for (const { x0, y0, x1, y1 } of splitAtExtremes(outline)) {
    if (Math.abs(x1 - x0) <= SAME_LENGTH) {
      const low = { x: x0, y: Math.min(y0, y1) };
      places.set(`${low.x} ${low.y}`, low);
      continue;
    }
    places.set(`${x0} ${y0}`, { x: x0, y: y0 });
    places.set(`${x1} ${y1}`, { x: x1, y: y1 });
  }
  return [...places.values()];
}

/** A chain run from left to right, cut off at two stations. */
function between(chain: Chain, from: number, to: number): Chain {
  const kept: Curve[] = [];
  for (const c of chain) {
    if (Math.abs(c.x1 - c.x0) <= SAME_LENGTH) {
      if (c.x0 > from + SAME_LENGTH && c.x0 < to - SAME_LENGTH) kept.push(c);
      continue;
    }
    const pieces: Piece[] = [];
    splitCurve(c, pieces);
    for (const piece of pieces) {
      const x0 = Math.max(from, piece.x0);
      const x1 = Math.min(to, piece.x1);
      if (x1 - x0 <= SAME_LENGTH) continue;
      kept.push({ ...piece, x0, y0: heightAt(piece, x0), x1, y1: heightAt(piece, x1) });
    }
  }
  return kept;
}
