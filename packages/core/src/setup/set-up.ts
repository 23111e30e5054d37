import { depthPath, pathData } from '@fielded/geometry';
import type { Job } from '../job/job.ts';
import { type ClearedRegion, cutSection } from '../joint/section.ts';
import { sweepCut } from '../machining/sweep.ts';
import { toDegrees } from '../measure/angle.ts';
import type { Voice } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem } from '../problem/say.ts';
import type { Rules } from '../shop/shop.ts';
import { barHeights } from './bar.ts';
import { findCurveProblems, isGuideKnown } from './curve.ts';
import { chooseFeed, feedsFor } from './feed.ts';
import { feedAgainst } from './hand.ts';
import { splitPasses } from './passes.ts';
import type { CurveSetting, FenceSetting, Pass, SetUp, Tool } from './plan.ts';
import { bandOf, END_GRAIN, powerAt } from './power.ts';
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
  const { work, machineName, machine, run, rotation, pose, hole } = way;
  const { cut, head } = work;
  const { speed, rim } = way.speed!;
  const { feedRate, feedBy, pitch, height } = chooseFeed(
    head,
    { feeds: feedsFor(work, machine) },
    speed,
    leastRadiusOf(work),
    rules,
  );
  const passes = passesFor(work, before.ends, machine.power, feedRate, rules);
  const greatest = Math.max(...passes.map(({ area }) => area));
  const likely = powerAt(rules.cuttingEnergy, greatest, feedRate);
  const curveProblems = curve === undefined ? [] : findCurveProblems(way, curve, job);
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
    fence: setFence(way, before, curve),
    speed,
    rim,
    feedRate,
    feedBy,
    mark: { pitch, height },
    power: bandOf(likely),
    powerEnd: bandOf(END_GRAIN * likely),
    passes,
    swept: sweptPath(work),
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

/** A motor that even many passes are too much for. */
function warnOfMotor({ work, machineName }: Judged, greatest: number, most: number | null, voice: Voice): Problem[] {
  if (most === null || greatest <= most * (1 + PASS_TOLERANCE)) return [];
  const about = { cut: work.cut.name, machine: machineName };
  return [sayProblem('motor-too-weak', work.at, { ...about, area: greatest, most }, voice, { about })];
}

/** Passes are found to a little less than this share of what the motor takes. */
const PASS_TOLERANCE = 0.02;

function sweptPath({ cut, sweep, thickness }: Work): string {
  return cut.side === 'front' ? depthPath(sweep.swept) : pathData(sweep.swept, thickness, false);
}

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

/** Share of the motor's power that a pass may take on end grain: the rest stays for knots and dull knives. */
const USABLE_POWER = 0.8;

/** What one pass may take on end grain, mm²; null where the machine's power is not known. */
export function greatestArea(power: number | undefined, feedRate: number, { cuttingEnergy }: Rules): number | null {
  return power === undefined ? null : (USABLE_POWER * power * 1000 * 60) / (END_GRAIN * cuttingEnergy * feedRate);
}

function passesFor(
  work: Work,
  before: readonly Work[],
  power: number | undefined,
  feedRate: number,
  rules: Rules,
): Pass[] {
  const { depth, reach } = work.cut;
  const limits = { greatestArea: greatestArea(power, feedRate, rules), lastPass: rules.lastPass };
  return splitPasses(depth, reach, areaTaker(work, before), limits);
}

/** What a cut set to some depth takes of stock of nominal thickness that other cuts have been made on, mm². */
export function areaTaken(work: Work, before: readonly Work[], depth: number): number {
  return areaTaker(work, before)(depth);
}

function areaTaker(work: Work, before: readonly Work[]): (depth: number) => number {
  const { cut, thickness, sweep } = work;
  const regions = before.map((each): ClearedRegion => ({ side: each.cut.side, edge: each.sweep.swept }));
  const width = Math.max(cut.reach, ...before.map((each) => each.cut.reach)) + 1;
  const without = regions.length === 0 ? 0 : cutSection(thickness, width, regions).removed.area;
  return (depth) => {
    if (depth <= 0) return 0;
    const own = { side: cut.side, edge: (depth === cut.depth ? sweep : sweepCut(cut, depth)).swept };
    return cutSection(thickness, width, [...regions, own]).removed.area - without;
  };
}

/** Where the knife would have to be named: at the cut, or on the frame among the shop's, kept in the head with that profile. */
function missingKnife({ of, at }: Work): string {
  return of === 'frame' ? 'shop.knives' : `${at}.knife`;
}

/** What the set-up depends on and nobody said, by its place in the job or the shop file. */
function listNotChecked(
  { work, machine, machineName, run, hole, pose }: Judged,
  curve: CurveSetting | undefined,
): string[] {
  const { cut, head, headName, knife } = work;
  const inMachine = (key: string) => `machines.${machineName}.${key}`;
  const missing: string[] = [];
  if (pose.seat === null) missing.push(knife === undefined ? missingKnife(work) : `knives.${cut.knife}.fromFace`);
  if (pose.seat === null && run === 'over' && hole === null) missing.push(inMachine('rings'));
  if (knife !== undefined && knife.presented === undefined && cut.tilt !== 0)
    missing.push(`knives.${cut.knife}.presented`);
  if (head.bore === undefined) missing.push(`heads.${headName}.bore`);
  if (machine.spindle === undefined) missing.push(inMachine('spindle'));
  if (machine.spindleLength === undefined) missing.push(inMachine('spindleLength'));
  if (machine.fenceGap === undefined && work.frame?.kind !== 'back edge') missing.push(inMachine('fenceGap'));
  if (machine.power === undefined) missing.push(inMachine('power'));
  if (cut.tilt === Math.PI / 2 && machine.tallFence === undefined) missing.push(inMachine('tallFence'));
  if (curve !== undefined && !isGuideKnown(machine)) missing.push(inMachine('bearings'));
  return missing;
}
