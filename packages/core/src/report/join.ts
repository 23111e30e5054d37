import type { Job } from '../job/job.ts';
import { type Edge, makeEdge } from '../joint/edge.ts';
import { designInsertion, fitTongue, measureTongue } from '../joint/fit.ts';
import type { FitReport, TongueReport } from '../joint/fit-report.ts';
import { readTongue } from '../joint/tongue.ts';
import { faceEnd } from '../machining/face-end.ts';

/** Tongue and fit of an edge in the job's frame; every figure null where the cuts leave no tongue. */
export function joinFrame(job: Job, { section, cuts }: Edge): { tongue: TongueReport; fit: FitReport } {
  const insertion = designInsertion(job.frame);
  if (section.gaps.length > 0) return { tongue: { ...NO_TONGUE, insertion }, fit: NO_FIT };
  const tongue = readTongue(section, job.frame.groove.depth);
  let margin: number | null = null;
  for (const { cut, sweep } of cuts) {
    const end = cut.side === 'front' ? faceEnd(sweep.swept) : null;
    if (end !== null && (margin === null || end > margin)) margin = end;
  }
  const { measures, need } = measureTongue(tongue, insertion);
  const fit = fitTongue(tongue, need, job.frame, job.fit, section.thickness, margin, job.panel.film ?? 0);
  return { tongue: measures, fit };
}

/** The fit a job would give, without the rest of its report. */
export function fitJob(job: Job): FitReport {
  return joinFrame(job, makeEdge(job.panel, job.cuts)).fit;
}

const NO_TONGUE = {
  thicknessAtTip: null,
  thicknessAtMouth: null,
  thinnest: null,
  thickest: null,
  grooveNeeded: null,
} as const;

const NO_FIT: FitReport = {
  clearance: null,
  deepestInsertion: null,
  bottomGap: null,
  visibleMargin: null,
  frontFace: null,
  backFace: null,
  verdict: null,
};
