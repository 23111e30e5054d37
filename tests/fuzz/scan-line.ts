import type { Cut, Job, NamedProfile } from '@fielded/core';

/** What the depth of a cut follows from: its stock, and its shape and how it is set. */
export interface Stock {
  readonly panel: Pick<Job['panel'], 'thickness' | 'measured'>;
}
export type PlacedCut = Pick<Cut, 'profile' | 'run' | 'depth' | 'reach'>;

/** How deep a named profile's cut goes at a mm in from the edge; 0 where it does not reach. */
function depthAt(stock: Stock, cut: PlacedCut, a: number): number {
  return Math.max(0, depthBelowFace(stock, cut, a));
}

/** The same straight from the shape's definition: negative where the profile runs above the face, -Infinity past its reach. */
export function depthBelowFace({ panel: { thickness, measured } }: Stock, cut: PlacedCut, a: number): number {
  const set = cut.run === 'over' ? cut.depth + measured - thickness : cut.depth;
  const p = cut.profile as NamedProfile;
  const at = a - (cut.reach - p.reach);
  if (at > p.reach) return Number.NEGATIVE_INFINITY;
  return set - p.depth + drawnDepth(p, at);
}

function drawnDepth(p: NamedProfile, a: number): number {
  if (p.shape === 'rebate' || a <= p.land) return p.depth;
  const run = p.reach - p.land;
  const rise = p.depth - p.shoulder;
  if (p.shape === 'bevel') return p.shoulder + (rise * (p.reach - a)) / run;
  const s = (run * run + rise * rise) / (2 * rise);
  if (p.shape === 'cove') return p.depth - left(s, a - p.land);
  if (p.shape === 'ovolo') return p.shoulder + left(s, p.reach - a);
  return a <= p.land + p.balance * run
    ? p.depth - left(p.balance * s, a - p.land)
    : p.shoulder + left((1 - p.balance) * s, p.reach - a);
}

/** How far an arc of radius r has left its tangent, d mm on: r − √(r² − d²), written so that little of it is not lost. */
function left(r: number, d: number): number {
  return (d * d) / (r + Math.sqrt(Math.max(0, r * r - d * d)));
}

/** Front and back surface of the section at a: what the deepest cut on either side leaves; null where they meet. */
export function surfacesAt(job: Job, a: number): { top: number; bottom: number } | null {
  const deepest = (side: Cut['side']) =>
    job.cuts.filter((cut) => cut.side === side).reduce((most, cut) => Math.max(most, depthAt(job, cut, a)), 0);
  const top = job.panel.measured - deepest('front');
  const bottom = deepest('back');
  return top > bottom ? { top, bottom } : null;
}
