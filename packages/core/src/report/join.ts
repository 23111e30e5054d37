import type { Job } from '../job/job.ts';
import { cutEdge, type Edge, fieldStart, makeEdge } from '../joint/edge.ts';
import { clearanceOf, designInsertion, fitTongue, judgeTongue, measureTongue } from '../joint/fit.ts';
import type { FitReport, TongueReport, Verdict } from '../joint/fit-report.ts';
import type { Section } from '../joint/section.ts';
import { type GrooveNeed, grooveNeed, readTongue, type Tongue } from '../joint/tongue.ts';

/** Tongue and fit of an edge in the job's frame; every figure null where the cuts leave no tongue. */
export function joinFrame(job: Job, edge: Edge): { tongue: TongueReport; fit: FitReport } {
  const { measures, read } = measureEdge(job, edge.section);
  if (read === null) return { tongue: measures, fit: NO_FIT };
  const { thickness } = edge.section;
  const fit = fitTongue(read.tongue, read.need, job.frame, job.fit, thickness, fieldStart(edge), job.panel.film ?? 0);
  return { tongue: measures, fit };
}

/** The tongue alone of a job's edge, without how it fits: a search that asks for nothing else takes half the time. */
export function joinTongue(job: Job): TongueReport {
  return measureEdge(job, cutEdge(job.panel, job.cuts)).measures;
}

/** The clearance of a job's tongue, mm, and nothing else: null where its cuts leave none. */
export function clearanceIn(job: Job): number | null {
  const read = readEdge(job);
  return read === null ? null : clearanceOf(read.need, job.frame, job.panel.film);
}

/** How the tongue of a job fits, in one word, and nothing else: null where its cuts leave none. */
export function judgeJob(job: Job): Verdict | null {
  const read = readEdge(job);
  return read === null ? null : judgeTongue(read.tongue, read.need, job.frame, job.fit, job.panel.film);
}

/** The tongue of a job and the groove that it needs at its design insertion; null where the cuts leave none. */
function readEdge({ panel, cuts, frame }: Job): { tongue: Tongue; need: GrooveNeed } | null {
  const section = cutEdge(panel, cuts);
  if (section.gaps.length > 0) return null;
  const tongue = readTongue(section, frame.groove.depth);
  return { tongue, need: grooveNeed(tongue, designInsertion(frame)) };
}

/** The tongue of an edge, what is read off it, and the groove that it needs; null where the cuts leave none. */
function measureEdge(job: Job, section: Section) {
  const insertion = designInsertion(job.frame);
  if (section.gaps.length > 0) return { measures: { ...NO_TONGUE, insertion }, read: null };
  const tongue = readTongue(section, job.frame.groove.depth);
  const { measures, need } = measureTongue(tongue, insertion);
  return { measures, read: { tongue, need } };
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
