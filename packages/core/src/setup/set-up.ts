import type { Job } from '../job/job.ts';
import { edgePath } from '../joint/outline-path.ts';
import { toDegrees } from '../measure/angle.ts';
import type { Voice } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem } from '../problem/say.ts';
import type { Rules } from '../shop/shop.ts';
import { greatestArea, passesFor } from './area-taken.ts';
import { barHeights } from './bar.ts';
import { findCurveProblems } from './curve.ts';
import { chooseFeed, feedsFor } from './feed.ts';
import { feedAgainst } from './hand.ts';
import { listNotChecked } from './not-checked.ts';
import { bandOf, END_GRAIN, powerAt } from './power.ts';
import type { CurveSetting, FenceSetting, SetUp, Tool } from './set-up-report.ts';
import { isTurnedOver, type Judged, leastRadiusOf } from './ways.ts';
import type { Work } from './work.ts';

/** Cuts already made when a cut's turn comes: on the ends, and on the long edges. */
export interface MadeBefore {
  readonly ends: readonly Work[];
  readonly edges: readonly Work[];
}

/** The set-up of a cut in the way chosen for it. */
export function makeSetUp(
  way: Judged,
  before: MadeBefore,
  testPiece: SetUp['testPiece'],
  curve: CurveSetting | undefined,
  rules: Rules,
  job: Job,
): SetUp {
  const { work, machine } = way;
  const { speed, rim } = way.speed!;
  const { feedRate, feedBy, pitch, height } = chooseFeed(
    work.head,
    { feeds: feedsFor(work, machine) },
    speed,
    leastRadiusOf(work),
    rules,
  );
  // Split the cut into passes that the motor takes; the greatest one decides the power.
  const passes = passesFor(work, before.ends, machine.power, feedRate, rules);
  const greatest = Math.max(...passes.map(({ area }) => area));
  const likely = powerAt(rules.cuttingEnergy, greatest, feedRate);
  const curveProblems = curve === undefined ? [] : findCurveProblems(way, curve, job);
  return {
    ...describeWay(way),
    fence: setFence(way, before, curve),
    speed,
    rim,
    feedRate,
    feedBy,
    mark: { pitch, height },
    power: bandOf(likely),
    powerEnd: bandOf(END_GRAIN * likely),
    passes,
    swept: edgePath(work.sweep.swept, work.cut.side, work.thickness),
    ...(curve && { curve }),
    testPiece,
    notChecked: listNotChecked(way, curve),
    problems: [
      ...way.warnings,
      ...curveProblems,
      ...warnOfMotor(way, greatest, greatestArea(machine.power, feedRate, rules), job),
    ],
  };
}

/** What is run, on which machine, with what and which way round. */
function describeWay(way: Judged) {
  const { work, machineName, run, rotation, pose, hole } = way;
  const { cut, head } = work;
  const slot = work.knife?.groundFor !== undefined && head.slots?.includes(work.groundRun) ? work.groundRun : null;
  return {
    cut: cut.name,
    of: work.of,
    ...(work.frame && { frame: work.frame }),
    machine: machineName,
    head: work.headName,
    knife: cut.knife ?? null,
    side: cut.side,
    run,
    rotation,
    feedDirection: feedAgainst(rotation),
    turnedOver: isTurnedOver(way),
    assumed: work.assumed,
    tool: describeTool(way),
    slot,
    presented: toDegrees(cut.tilt),
    cuttingPoint: pose.cuttingPoint,
    seat: pose.seat,
    hole,
  };
}

/** A motor that even many passes are too much for. */
function warnOfMotor({ work, machineName }: Judged, greatest: number, most: number | null, voice: Voice): Problem[] {
  if (most === null || greatest <= most * (1 + PASS_TOLERANCE)) return [];
  const about = { cut: work.cut.name, machine: machineName };
  return [sayProblem('motor-too-weak', work.at, { ...about, area: greatest, most }, voice, { about })];
}

/** Passes are found to a little less than this share of what the motor takes. */
const PASS_TOLERANCE = 0.02;

function describeTool({ work: { head }, machine }: Judged): Tool {
  const { cuttingDiameter, bodyDiameter, height, knives, rake, wedge } = head;
  return {
    cuttingDiameter,
    bodyDiameter,
    height,
    knives,
    rake: toDegrees(rake),
    wedge: toDegrees(wedge),
    nutDiameter: machine.nutDiameter,
    spindle: machine.spindle ?? null,
  };
}

function setFence({ work, run, pose }: Judged, before: MadeBefore, curve: CurveSetting | undefined): FenceSetting {
  const { toAxis, standsOut, gap } = pose;
  // The second half of a curve is run without the straight fence.
  if (curve?.alone) return { toAxis, standsOut, gap, bar: null };
  const bar = barHeights(work, run, before.ends);
  const edges = barHeights(work, run, before.edges);
  const same = bar?.from === edges?.from && bar?.to === edges?.to;
  return { toAxis, standsOut, gap, bar, ...(!same && { barEdges: edges }) };
}
