import { designInsertion } from '../frame/fit.ts';
import type { FitReport } from '../frame/fit-report.ts';
import { formatLength } from '../measure/format.ts';
import type { Cut, Job } from './job.ts';
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

function withCut(job: Job, k: number, change: Partial<Cut>): Job {
  return { ...job, cuts: job.cuts.map((cut, i) => (i === k ? { ...cut, ...change } : cut)) };
}

function slides(job: Job): boolean {
  return fitJob(job).verdict === 'sliding';
}
