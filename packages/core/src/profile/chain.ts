import { type Chain, type Curve, line } from '@fielded/geometry';
import type { NamedProfile, Profile } from './profile.ts';

/**
 * Radius of the single arc that spans a raise, mm: tangent to the land at one end or parallel to the face at the other.
 *
 * S = (run² + rise²) / (2·rise), the sagitta relation for a chord seen from its tangent (formula 1).
 *
 * @example raiseRadius(6, 6) // 6, a quarter circle
 */
export function raiseRadius(run: number, rise: number): number {
  return (run * run + rise * rise) / (2 * rise);
}

/**
 * The line a profile draws, from the panel's edge at full depth to the worked face.
 *
 * Cut coordinates: x = in from the finished edge, y = depth below the worked face (so y grows downwards, and `turn` is
 * meant with y up as everywhere). Pieces of no length are left out: no land, no first line; no shoulder, no last one.
 *
 * @example profileChain({ shape: 'rebate', reach: 8, depth: 6, land: 0, shoulder: 0, balance: 0.5 })
 * // (0,6) → (8,6) → (8,0)
 */
export function profileChain(profile: Profile): Chain {
  if (profile.shape === 'outline') return profile.chain;
  const { shape, reach, depth, land, shoulder } = profile;
  if (shape === 'rebate') return [line(0, depth, reach, depth), line(reach, depth, reach, 0)];
  const chain: Curve[] = [];
  if (land > 0) chain.push(line(0, depth, land, depth));
  if (shape === 'bevel') chain.push(line(land, depth, reach, shoulder));
  else if (shape === 'cove') chain.push(hollowFromLand(profile, 1));
  else if (shape === 'ovolo') chain.push(roundToField(profile, 1));
  else chain.push(hollowFromLand(profile, profile.balance), roundToField(profile, 1 - profile.balance));
  if (shoulder > 0) chain.push(line(reach, shoulder, reach, 0));
  return chain;
}

/** The hollow arc that leaves the land tangentially and covers `share` of the raise. */
function hollowFromLand({ reach, depth, land, shoulder }: NamedProfile, share: number): Curve {
  const run = reach - land;
  const rise = depth - shoulder;
  const radius = share * raiseRadius(run, rise);
  const [endX, endY] = share === 1 ? [reach, shoulder] : [land + share * run, depth - share * rise];
  return { x0: land, y0: depth, x1: endX, y1: endY, cx: land, cy: depth - radius, r: radius, turn: -1 };
}

/** The round arc that covers the last `share` of the raise and arrives parallel to the face. */
function roundToField({ reach, depth, land, shoulder }: NamedProfile, share: number): Curve {
  const run = reach - land;
  const rise = depth - shoulder;
  const radius = share * raiseRadius(run, rise);
  const [startX, startY] = share === 1 ? [land, depth] : [land + (1 - share) * run, depth - (1 - share) * rise];
  return { x0: startX, y0: startY, x1: reach, y1: shoulder, cx: reach, cy: shoulder + radius, r: radius, turn: 1 };
}
