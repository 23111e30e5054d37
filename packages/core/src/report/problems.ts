import { SAME_LENGTH } from '@fielded/geometry';
import type { Job } from '../job/job.ts';
import type { Edge, EdgeCut } from '../joint/edge.ts';
import { designInsertion } from '../joint/fit.ts';
import type { FitReport } from '../joint/fit-report.ts';
import { jointOf } from '../joint/frame.ts';
import type { Cut } from '../machining/cut.ts';
import { toDegrees } from '../measure/angle.ts';
import type { Problem, Said } from '../problem/problem.ts';
import { sayProblem, told } from '../problem/say-joint.ts';
import { LEAST_SPARE } from './verdict-sentence.ts';

/** Everything that is wrong with a joint, without advice (see `adviseInSteps`). */
export function findProblems(job: Job, edge: Edge, fit: FitReport): Problem[] {
  return [...edgeProblems(job, edge), ...fitProblems(job, fit), ...frameProblems(job, fit)];
}

/** Worst first, otherwise in the order given. */
export function sortProblems(problems: Problem[]): Problem[] {
  return problems.sort((p, q) => RANK[p.severity] - RANK[q.severity]);
}

const RANK = { error: 0, warning: 1, caution: 2 };

/** What the cuts spoil: no wood left, wood in layers, wood that the drawing keeps. */
function edgeProblems(job: Job, { section, cuts }: Edge): Problem[] {
  const problems: Problem[] = [];
  const spans = (list: typeof section.gaps) => list.map(({ from, to }) => [from, to] as const);
  if (section.gaps.length > 0) problems.push(sayNoTongue(spans(section.gaps), job));
  if (section.layered.length > 0)
    problems.push(sayProblem('split-edge', 'cuts', { where: spans(section.layered) }, job));
  cuts.forEach((made, k) => {
    const { cut, lost } = made;
    if (lost === null) return;
    const [x0, x1] = lost.fromEdge;
    const [y0, y1] = lost.below;
    const figures = { cut: cut.name, held: tellHeld(cut.tilt), area: lost.area, x0, x1, y0, y1 };
    const about = { cut: cut.name };
    problems.push(sayProblem('taken-from-drawing', `cuts[${k}].presented`, figures, job, { about }));
  });
  return problems;
}

/** A gap this close to the edge begins at it, mm: less than any figure is said to. */
const AT_EDGE = 1e-6;

/** Where the cuts leave no wood: within so much of the edge, or between two places. */
function sayNoTongue(where: readonly (readonly [number, number])[], job: Job): Problem {
  const [[from, depth]] = where as readonly [readonly [number, number]];
  const figures = { where, depth };
  return where.length === 1 && from < AT_EDGE
    ? sayProblem('no-tongue.within', 'cuts', figures, job)
    : sayProblem('no-tongue', 'cuts', { where }, job);
}

function tellHeld(tilt: EdgeCut['cut']['tilt']): Said {
  if (tilt === 0) return told('held.flat', {});
  if (tilt === Math.PI / 2) return told('held.on-edge', {});
  return told('held.tilted', { tilt: toDegrees(tilt) });
}

/** What keeps the tongue from going in as wanted. */
function fitProblems(job: Job, fit: FitReport): Problem[] {
  const spare = fit.clearance ?? 0;
  switch (fit.verdict) {
    case null:
    case 'sliding':
      return [];
    case 'will-not-enter':
      return [sayProblem('will-not-enter', 'cuts', { excess: -spare }, job)];
    case 'stops-short':
      return [sayStopsShort(job, fit.deepestInsertion ?? 0)];
    case 'tight':
      return spare < LEAST_SPARE
        ? [sayProblem('tight.nothing', 'cuts', {}, job)]
        : [sayProblem('tight.little', 'cuts', { spare, snug: job.fit.snug }, job)];
    case 'loose':
      return [sayProblem('loose', 'cuts', { spare, loose: job.fit.loose }, job)];
  }
}

function sayStopsShort(job: Job, deepest: number): Problem {
  const short = designInsertion(job.frame) - deepest;
  const binding = endsBeforeFrame(job, deepest);
  if (binding === undefined) return sayProblem('stops-short.wedges', 'cuts', { deepest, short }, job);
  const about = { cut: binding.name };
  return sayProblem('stops-short.reach', 'cuts', { deepest, short, cut: binding.name }, job, { about });
}

/** The cut whose own end stops the tongue: it does not reach as far in as the tongue should go. */
export function endsBeforeFrame(job: Job, deepest: number): Cut | undefined {
  return job.cuts.find(({ reach }) => reach < designInsertion(job.frame) && Math.abs(reach - deepest) < AT_ITS_END);
}

/** The tongue stops at a cut's end where it stops within this of it, mm. */
const AT_ITS_END = 0.05;

/** What the frame and its groove make awkward. */
function frameProblems(job: Job, fit: FitReport): Problem[] {
  const { groove, swellGap, sticking } = job.frame;
  const problems: Problem[] = [];
  if (sticking !== undefined && sticking.depth > groove.setback) {
    const figures = { depth: sticking.depth, setback: groove.setback };
    problems.push(sayProblem('sticking-in-groove', 'frame.sticking.depth', figures, job));
  }
  const joint = jointOf(job.frame);
  if (sticking !== undefined && joint.kind === 'cope' && sticking.reach > joint.length + SAME_LENGTH) {
    const figures = { reach: sticking.reach, length: joint.length, short: sticking.reach - joint.length };
    problems.push(sayProblem('cope-short', 'frame.joint.length', figures, job));
  }
  if (joint.kind === 'cope' && joint.length > groove.depth + SAME_LENGTH) {
    const figures = { length: joint.length, depth: groove.depth, over: joint.length - groove.depth };
    problems.push(sayProblem('cope-long', 'frame.joint.length', figures, job));
  }
  if (swellGap === 0) problems.push(sayProblem('no-swell-gap', 'frame.swellGap', {}, job));
  if (fit.visibleMargin !== null && fit.visibleMargin <= SAME_LENGTH)
    problems.push(sayProblem('raise-hidden', 'cuts', {}, job));
  return problems;
}
