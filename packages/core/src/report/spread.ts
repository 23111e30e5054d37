import { DEFAULTS } from '../job/defaults.ts';
import type { Job } from '../job/job.ts';
import { sweptOf } from '../joint/edge.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem, type Voice } from '../problem/say.ts';
import { edgeShare, swellingOf } from '../season/seasons.ts';
import type { StackReport } from '../setup/plan.ts';
import { createJoint, type Joint, NO_SWELLING, type Swelling } from '../spread/joint.ts';
import { DEFAULT_SIMULATION, reportSpread, type SpreadReport } from '../spread/report.ts';
import type { PanelSide } from '../spread/side.ts';
import { simulateInChunks } from '../spread/simulate.ts';
import type { SimulatedSpread, SimulationOptions } from '../spread/simulation.ts';
import { listSources } from '../spread/sources.ts';
import { type StackedCuts, stackedArrangement } from '../spread/stacked.ts';
import type { PreparedJob } from './prepared-job.ts';
import { frameWood, panelWidth, speciesFaults, speciesNamed, widthFaults } from './seasons.ts';

/** The spread of a job's joint, and what keeps part of it from being told. */
export interface Spread {
  readonly report?: SpreadReport;
  readonly problems: readonly Problem[];
}

/** The spread of a job's joint; none where the job gives no ± or its cuts leave no tongue. */
export function answerSpread(
  { job, fit, edge }: Pick<PreparedJob, 'job' | 'fit' | 'edge'>,
  options?: SimulationOptions,
  stack?: StackReport | null,
): Spread {
  const { spread } = job;
  if (spread === undefined || fit.clearance === null) return { problems: [] };
  const joint = createJoint(job, undefined, jobSwelling(job), sweptOf(edge));
  const tooLarge = joint.slides ? joint.pieces * job.cuts.length > MOST_SLID : joint.pieces > MOST_RECUT;
  if (tooLarge) return { problems: [spreadTooLarge(joint, job)] };
  // With seasons, what is missing is said there.
  const asked = (spread.moisture ?? 0) > 0 && job.season === undefined;
  const problems: Problem[] = asked ? [...speciesFaults(job), ...widthFaults(job)] : [];
  const simulation = options ?? affordable(joint);
  const report = reportSpread(job, spread, joint, simulation);
  problems.push(...cautions(joint, simulation.count, options !== undefined, job));
  const together = findStacked(job, stack);
  if (together === undefined) return { report, problems };
  const stacked = stackedArrangement(job, spread, joint.swelling, together);
  return { report: { ...report, arrangements: [...report.arrangements, stacked] }, problems };
}

/** The cuts that the plan makes with both heads at once. */
function findStacked({ cuts }: Job, stack: StackReport | null | undefined): StackedCuts | undefined {
  if (!stack?.works) return undefined;
  const place = (name: string | null) => cuts.findIndex((cut) => cut.name === name);
  return { lower: place(stack.lower), upper: place(stack.upper) };
}

/** Lines and arcs up to which a joint is cut anew for every move: thousands of sections are needed, at some µs a piece. */
const MOST_RECUT = 100;
/** Lines and arcs, times cuts, up to which a joint is slid: the more cuts, the more sources whose worst case is sought. */
const MOST_SLID = 20_000;

/** Pieces that may be looked at, over all joints, where nobody asked for a number of joints: about a second's worth. */
const MOST_LOOKED_AT = 3e7;
/** What cutting a piece anew costs, in pieces slid; and what a piece in the groove does where several wandering cuts cross. */
const RECUT_COST = 50;
const CROSSING_COST = 100;
/** Pieces further in than the tongue by this are out of every joint's reach, mm; and what a crossing costs besides its pieces. */
const WITHIN_REACH = 2;
const CROSSING_START = 10;

/** The usual number of joints, or as many as take about a second of a joint with very many pieces or with cuts that wander across each other. */
function affordable(joint: Joint): SimulationOptions {
  const { slides, pieces, sides, insertion } = joint;
  const crossing =
    sides === undefined ? 0 : piecesCrossing(sides.front, insertion) + piecesCrossing(sides.back, insertion);
  const each = slides ? pieces + CROSSING_COST * crossing : pieces * RECUT_COST;
  return { ...DEFAULT_SIMULATION, count: Math.min(DEFAULT_SIMULATION.count, Math.ceil(MOST_LOOKED_AT / each)) };
}

/** The pieces of a side's cuts that may cross within the groove; none where one cut is alone, or all rise towards the face. */
function piecesCrossing({ surfaces, falls }: PanelSide, insertion: number): number {
  if (falls || surfaces.length < 2) return 0;
  const within = surfaces.flatMap((surface) => surface.pieces.filter(({ x0 }) => x0 < insertion + WITHIN_REACH));
  return CROSSING_START + within.length;
}

/** What of a spread is less than usual: the number of joints that nobody asked for, and a worst case that is not proved. */
function cautions({ slides }: Joint, count: number, asked: boolean, voice: Voice): Problem[] {
  const usual = DEFAULT_SIMULATION.count;
  return [
    ...(count < usual && !asked ? [sayProblem('fewer-joints', 'spread', { count, usual }, voice)] : []),
    ...(slides ? [] : [sayProblem('worst-searched', 'spread', {}, voice)]),
  ];
}

function spreadTooLarge({ slides, pieces, cuts }: Joint, voice: Voice): Problem {
  return slides
    ? sayProblem('spread-too-large.slid', 'spread', { pieces, cuts: cuts.length }, voice)
    : sayProblem('spread-too-large.recut', 'spread', { pieces, most: MOST_RECUT }, voice);
}

/**
 * Makes a job's joints at random, yielding how many are done every 30 000 or so and returning the simulation: for runs
 * too long to wait for in silence. `stopped` is asked before each batch; what was made until then is returned.
 *
 * @throws RangeError for a job without a spread, or a count that is not a whole number above 0.
 */
export function simulateJob(
  job: Job,
  options: SimulationOptions,
  stopped?: () => boolean,
): Generator<number, SimulatedSpread> {
  if (job.spread === undefined) throw new RangeError('this job has no spread to simulate');
  const joint: Joint = createJoint(job, undefined, jobSwelling(job));
  return simulateInChunks(joint, listSources(job.cuts, job.spread), job.fit, options, stopped);
}

/** How the job's wood answers to moisture; not at all where wood or width is not known. */
function jobSwelling(job: Job): Swelling {
  const species = speciesNamed(job.panel);
  const width = panelWidth(job);
  const pinned = job.season?.pinned ?? DEFAULTS.pinned;
  if (species === null || width === null) return { ...NO_SWELLING, edge: edgeShare(pinned) };
  return swellingOf(species, job.panel.sawn, width, pinned, frameWood(job, species));
}
