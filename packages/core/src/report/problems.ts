import type { Job } from '../job/job.ts';
import type { Edge } from '../joint/edge.ts';
import type { FitReport } from '../joint/fit-report.ts';
import type { Span } from '../joint/section.ts';
import { formatLength, formatNumber } from '../measure/format.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem } from '../problem/say.ts';
import { adviseDepth, adviseLand, advisePresentation } from './advice.ts';

/** Everything that is wrong with a job that could be read, worst first; `advised` with what would put it right, worked out anew. */
export function findProblems(job: Job, edge: Edge, fit: FitReport, advised: boolean): Problem[] {
  return sortProblems([...edgeProblems(job, edge), ...fitProblems(job, fit, advised), ...frameProblems(job, fit)]);
}

/** Worst first, otherwise in the order given. */
export function sortProblems(problems: Problem[]): Problem[] {
  return problems.sort((p, q) => RANK[p.severity] - RANK[q.severity]);
}

const RANK = { error: 0, warning: 1, caution: 2 };

/** What the cuts spoil: no wood left, wood in layers, wood that the drawing keeps. */
function edgeProblems(job: Job, { section, cuts }: Edge): Problem[] {
  const say = (mm: number) => formatLength(mm, job.units);
  const spans = (list: readonly Span[]) => list.map(({ from, to }) => `${say(from)} to ${say(to)}`).join(' and ');
  const problems: Problem[] = [];
  if (section.gaps.length > 0) {
    problems.push(sayProblem('no-tongue', 'cuts', { where: spans(section.gaps) }, job));
  }
  if (section.layered.length > 0) {
    problems.push(sayProblem('split-edge', 'cuts', { where: spans(section.layered) }, job));
  }
  cuts.forEach((made, k) => {
    const { cut, lost } = made;
    if (lost === null) return;
    const [x0, x1] = lost.fromEdge;
    const [y0, y1] = lost.below;
    const area = formatNumber(lost.area, 2);
    problems.push({
      severity: 'error',
      code: 'taken-from-drawing',
      at: `cuts[${k}].presented`,
      message: `The ${cut.name} cannot be cut as drawn ${presentation(cut.tilt)}: the turning knife also takes ${area} mm² that the drawing keeps, ${say(x0)} to ${say(x1)} in from the edge and ${say(y0)} to ${say(y1)} below the face. ${advisePresentation(made, section)}.`,
    });
  });
  return problems;
}

function presentation(tilt: number): string {
  if (tilt === 0) return 'with the panel flat';
  if (tilt === Math.PI / 2) return 'with the panel on edge';
  return `with the spindle at ${formatNumber((tilt * 180) / Math.PI, 2)}°`;
}

/** What keeps the tongue from going in as wanted. */
function fitProblems(job: Job, fit: FitReport, advised: boolean): Problem[] {
  const say = (mm: number) => formatLength(mm, job.units);
  const { verdict, clearance, deepestInsertion } = fit;
  if (verdict === null || verdict === 'sliding') return [];
  const insertion = job.frame.groove.depth - job.frame.swellGap;
  const excess = say(Math.abs(clearance!));
  const words = {
    'will-not-enter': `The tongue will not enter: it needs a groove ${excess} wider.`,
    'stops-short': `The tongue stops ${say(deepestInsertion!)} in, ${say(insertion - deepestInsertion!)} short: it wedges in the groove's mouth.`,
    tight: `The tongue is tight: ${excess} to spare, less than the ${say(job.fit.snug)} it needs to slide.`,
    loose: `The tongue is loose: ${excess} to spare, more than ${say(job.fit.loose)}, and the panel will rattle.`,
  };
  const severity = verdict === 'tight' || verdict === 'loose' ? 'warning' : 'error';
  if (!advised) return [{ severity, code: verdict, at: 'cuts', message: words[verdict] }];
  const advice = [adviseDepth(job, fit), verdict === 'stops-short' ? adviseLand(job) : null].filter((a) => a !== null);
  const todo =
    advice.length === 0
      ? 'Change the depth of a cut.'
      : `${advice.join(', or ').replace(/^./, (c) => c.toUpperCase())}.`;
  return [{ severity, code: verdict, at: 'cuts', message: `${words[verdict]} ${todo}` }];
}

/** What the frame and its groove make awkward. */
function frameProblems({ frame, units }: Job, fit: FitReport): Problem[] {
  const problems: Problem[] = [];
  const { groove, swellGap, sticking } = frame;
  if (sticking !== undefined && sticking.depth > groove.setback) {
    problems.push({
      severity: 'error',
      code: 'sticking-in-groove',
      at: 'frame.sticking.depth',
      message: `The sticking is ${formatLength(sticking.depth, units)} deep and breaks into the groove, which starts ${formatLength(groove.setback, units)} below the frame's face. Make it shallower or set the groove further back.`,
    });
  }
  if (swellGap === 0) {
    problems.push({
      severity: 'warning',
      code: 'no-swell-gap',
      at: 'frame.swellGap',
      message:
        'No gap is left at the bottom of the groove: a panel that swells in damp air has nowhere to go and can burst the frame. Leave a gap.',
    });
  }
  if (fit.visibleMargin !== null && fit.visibleMargin <= 0) {
    problems.push({
      severity: 'warning',
      code: 'raise-hidden',
      at: 'cuts',
      message: 'The raise ends inside the groove: none of it will show. Give it more reach, or the groove less depth.',
    });
  }
  return problems;
}
