import type { Cut, Job } from '../job/job.ts';
import type { EdgeCut } from '../joint/edge.ts';
import { designInsertion } from '../joint/fit.ts';
import type { FitReport } from '../joint/fit-report.ts';
import { findLostWood } from '../joint/lost-wood.ts';
import type { Section } from '../joint/section.ts';
import { sweepCut } from '../machining/sweep.ts';
import { formatLength } from '../measure/format.ts';
import { fitJob } from './join.ts';

/**
 * Words for the one spindle setting that would bring the wanted clearance: "take the back relief 0.8 mm deeper"; null where
 * none does. A back cut is moved before a front one, since it does not show. The joint is worked out anew at the setting:
 * nothing is advised that does not then slide.
 */
export function adviseDepth(job: Job, fit: FitReport): string | null {
  const deeper = job.fit.target - fit.clearance!;
  const backFirst = job.cuts
    .map((_, k) => k)
    .sort((a, b) => Number(job.cuts[a]!.side === 'front') - Number(job.cuts[b]!.side === 'front'));
  for (const k of backFirst) {
    const { name, depth } = job.cuts[k]!;
    const moved = withCut(job, k, { depth: depth + deeper });
    if (moved.cuts[k]!.depth <= 0 || moved.cuts[k]!.depth >= job.panel.thickness) continue;
    if (!slides(moved)) continue;
    return `take the ${name} ${formatLength(Math.abs(deeper), job.units)} ${deeper > 0 ? 'deeper' : 'less deep'}`;
  }
  return null;
}

/** Words for a land that would let a wedge tongue in: "give the raise a 10 mm land"; null where none does. */
export function adviseLand(job: Job): string | null {
  const land = designInsertion(job.frame) + 1;
  for (const [k, { name, profile, reach }] of job.cuts.entries()) {
    if (profile.shape === 'outline' || profile.shape === 'rebate' || profile.land >= land) continue;
    if (land >= reach) continue;
    const moved = withCut(job, k, { profile: { ...profile, land } });
    if (slides(moved)) return `give the ${name} a ${formatLength(land, job.units)} land`;
  }
  return null;
}

/**
 * Words for another way to present a panel that would leave the profile as drawn: "Run it on edge: that way nothing is
 * lost". The other ways, flat and on edge, are swept and compared before one is named.
 */
export function advisePresentation({ cut, depthCut }: EdgeCut, { thickness, width }: Section): string {
  for (const [tilt, words] of [
    [Math.PI / 2, 'on edge'],
    [0, 'flat'],
  ] as const) {
    if (cut.tilt === tilt) continue;
    const lost = findLostWood(sweepCut({ ...cut, tilt }, depthCut), thickness, width);
    if (lost === null) return `Run it ${words}: that way nothing is lost`;
  }
  return 'Change the profile: neither flat nor on edge does a knife leave it so';
}

function withCut(job: Job, k: number, change: Partial<Cut>): Job {
  return { ...job, cuts: job.cuts.map((cut, i) => (i === k ? { ...cut, ...change } : cut)) };
}

function slides(job: Job): boolean {
  return fitJob(job).verdict === 'sliding';
}
