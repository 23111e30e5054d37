import { type Chain, type Curve, line, runsForward, shiftCurve, turnCurve, upperEnvelope } from '@fielded/geometry';
import { profileChain } from '../profile/chain.ts';
import type { Profile } from '../profile/profile.ts';
import type { Cut } from './cut.ts';

/** A cut at its setting, in cut coordinates: x in from the edge, y the depth below the worked face, mm. */
export interface Sweep {
  /** The profile as drawn, run straight on to the edge and the face. */
  readonly drawn: Chain;
  /** The edge that the turning knife leaves: the same chain, unless the knife takes wood that the drawing keeps. */
  readonly swept: Chain;
}

/**
 * What a turning knife clears when the profile is set `depthTaken` deep and `cut.reach` in.
 *
 * The head turns about its axis, so at each station along the axis it clears everything out to its greatest radius there. The edge of
 * the cut is therefore the upper envelope of the profile over the axis. `tilt` 0 puts the axis along the depth (panel flat), π/2 along
 * the reach (panel on edge). Every angle is treated in one way: rotate, take the envelope, rotate back (formula 4). Exact to rounding.
 * Spindle and fence move the whole profile; where it then ends inside the stock it runs straight on to the edge and to the face.
 */
export function sweepCut(cut: Cut, depthTaken: number): Sweep {
  const { profile } = cut;
  const right = cut.reach - profile.reach;
  const down = depthTaken - profile.depth;
  const chain = profileChain(profile);
  const set = right === 0 && down === 0 ? chain : chain.map((c) => shiftCurve(c, right, down));
  const drawn = runOut(set);
  const { cos, sin } = cosineAndSine(cut.tilt);
  // Does the profile double back along the spindle's axis, from the edge towards the face?
  if (runsForward(drawn, sin, -cos)) return { drawn, swept: drawn };
  return { drawn, swept: sweptEdge(drawn, cos, sin) };
}

/** What a turning knife clears of a profile as it is drawn, with the panel flat: its swept edge. */
export function sweepProfile(profile: Profile): Chain {
  const { depth, reach } = profile;
  return sweepCut({ name: '', side: 'front', profile, depth, reach, run: 'under', tilt: 0 }, depth).swept;
}

/** The swept edge of a chain that doubles back along the axis: its envelope once rotated so that x lies along the axis and y along the radius. */
function sweptEdge(drawn: Chain, cos: number, sin: number): Chain {
  const first = drawn[0]!;
  const last = drawn[drawn.length - 1]!;
  const out = outside(drawn);
  const turn = (c: Curve) => turnCurve(c, sin, cos);
  // With a level start in one line: turned, a start of a picometre would be too narrow to be kept, and leave a lip at the edge.
  const level = first.turn === 0 && first.y1 === first.y0;
  const beyondEdge = [turn(line(out.x, first.y0, level ? first.x1 : first.x0, first.y0))];
  const beyondFace = [turn(line(last.x1, last.y1, last.x1, out.y))];
  const envelope = upperEnvelope([drawn.map(turn), beyondEdge, beyondFace]);
  const swept = envelope.map((c) => turnCurve(c, sin, -cos));
  // Does the deepest stretch lie away from the edge? Then the knife has cleared everything from the edge to there.
  const start = swept[0]!;
  if (start.x0 > 0) {
    const way = (start.x0 + 1) / cos;
    swept.unshift(line(start.x0 - way * cos, start.y0 - way * sin, start.x0, start.y0));
  }
  return swept;
}

/** The chain run straight on: level from its first point to the edge, upright from its last point to the face. */
function runOut(chain: Chain): Chain {
  const first = chain[0]!;
  const last = chain[chain.length - 1]!;
  const startsInside = first.x0 > 0;
  const endsInWood = last.y1 > 0;
  if (!startsInside && !endsInWood) return chain;
  const out = startsInside ? [line(0, first.y0, first.x0, first.y0), ...chain] : [...chain];
  if (endsInWood) out.push(line(last.x1, last.y1, last.x1, 0));
  return out;
}

/** A point outside the stock and the chain: the envelope is taken over the lines up to there beyond the edge and the face. */
function outside(chain: Chain): { x: number; y: number } {
  let x = 0;
  let y = 0;
  for (const c of chain) {
    x = Math.min(x, c.x0, c.x1);
    y = Math.min(y, c.y0, c.y1);
  }
  return { x: x - 1, y: y - 1 };
}

/** Cosine and sine of the tilt, exact at 0 and π/2, so that level lines stay level. */
function cosineAndSine(tilt: number): { cos: number; sin: number } {
  if (tilt === 0) return { cos: 1, sin: 0 };
  if (tilt === Math.PI / 2) return { cos: 0, sin: 1 };
  return { cos: Math.cos(tilt), sin: Math.sin(tilt) };
}
