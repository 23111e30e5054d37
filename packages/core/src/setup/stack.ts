import type { Voice } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem } from '../problem/say.ts';
import type { Machine, Shop } from '../shop/shop.ts';
import { findAgainst, type Trial } from './against.ts';
import { areaTaken, greatestArea } from './area-taken.ts';
import { chooseFeed } from './feed.ts';
import { findHole } from './hole.ts';
import type { Rotation, Run, StackReport } from './plan.ts';
import { poseHead } from './pose.ts';
import { type ChosenSpeed, rimSpeed, speedsAllowed } from './speed.ts';
import { type Judged, leastRadiusOf, warnOf } from './ways.ts';
import type { Work } from './work.ts';

/** Two heads on one spindle, with the way of each where it works. */
export interface JudgedStack {
  readonly report: StackReport;
  /** Lower and upper head; left out where it does not work. */
  readonly ways?: readonly [Judged, Judged];
}

/** Fences that differ by less than this, mm, are one fence. */
const SAME_FENCE = 0.01;

/**
 * Judges both heads at once (formula U11): two cuts of opposite sides, one under and one over the stock, with a spacer
 * L = t − u₁ − u₂ between the heads. undefined where the cuts are not two of opposite sides. Of the machines, and of the two
 * faces that may lie down, the one with least against it is reported.
 */
export function judgeStack(works: readonly Work[], shop: Shop, voice: Voice): JudgedStack | undefined {
  const [one, other] = works;
  if (works.length !== 2 || one === undefined || other === undefined || one.cut.side === other.cut.side)
    return undefined;
  const front = one.cut.side === 'front' ? one : other;
  const back = front === one ? other : one;
  // Face down unless the job lays the back down: the face on the table keeps its depth whatever the stock.
  const faceUp = front.cut.run === 'over' && back.cut.run === 'under';
  const orders = faceUp
    ? [[back, front] as const, [front, back] as const]
    : [[front, back] as const, [back, front] as const];
  let best: JudgedStack | undefined;
  for (const [lower, upper] of orders) {
    for (const [name, machine] of Object.entries(shop.machines)) {
      const judged = judgeOn({ name, machine }, lower, upper, shop, voice);
      if (judged.report.works) return judged;
      if (best === undefined || judged.report.against.length < best.report.against.length) best = judged;
    }
  }
  return best;
}

interface NamedMachine {
  readonly name: string;
  readonly machine: Machine;
}

function judgeOn(on: NamedMachine, lower: Work, upper: Work, shop: Shop, voice: Voice): JudgedStack {
  const { name, machine } = on;
  const { rules } = shop;
  // The lower head's knives decide which way the spindle turns.
  const rotation: Rotation = lower.hand === 1 ? 'counterclockwise' : 'clockwise';
  const speed = commonSpeed(lower, upper, machine, rules);
  const trials = [trialOf(lower, 'under', rotation, on, rules), trialOf(upper, 'over', rotation, on, rules)] as const;
  const spacer = spacerBetween(lower, upper);
  const own = againstStack(lower, upper, on, spacer, speed, rules, voice);
  const each = trials.flatMap((trial) =>
    findAgainst({ ...trial, speed: speed ?? NO_SPEED }, rules).map((say) => say(voice)),
  );
  // The upper head stands on the spacer, wherever the machine's own seat can be; hands are judged together.
  const counted = each.filter(
    ({ code, about }) => code !== 'wrong-hand' && (about?.cut === lower.cut.name || !SEAT_CODES.includes(code)),
  );
  const seat = trials[0].pose.seat;
  const problems = dropRepeats([...own, ...againstPasses(trials, speed, rules, voice), ...counted]);
  const notChecked = [lower, upper].flatMap(({ knife, cut, at }) =>
    knife?.fromFace === undefined ? [knife === undefined ? `${at}.knife` : `knives.${cut.knife}.fromFace`] : [],
  );
  const works = problems.length === 0 && spacer !== null && seat !== null;
  const report: StackReport = {
    works,
    against: problems.map(({ code }) => code),
    machine: name,
    rotation,
    spacer,
    lower: lower.cut.name,
    upper: upper.cut.name,
    speed: speed?.speed ?? null,
    problems,
    notChecked,
  };
  if (!works) return { report };
  const feed = Math.min(...trials.map(({ work }) => feedOf(work, machine, speed!.speed, rules)));
  const together = machine.feeds.length === 0 ? machine : { ...machine, feeds: [feed] };
  const judged = trials.map((trial): Judged => {
    const run = { ...trial, machine: together, speed };
    return { ...run, against: [], warnings: warnOf(run, rules, voice) };
  });
  return { report, ways: [judged[0]!, judged[1]!] };
}

const SEAT_CODES: readonly string[] = ['seat-too-low', 'seat-too-high'];

function feedOf(work: Work, machine: Machine, speed: number, rules: Shop['rules']): number {
  return chooseFeed(work.head, machine, speed, leastRadiusOf(work), rules).feedRate;
}

/** Stands in for a speed that the stack has not, so that the two heads' own speeds are not asked for again. */
const NO_SPEED: ChosenSpeed = { speed: 0, rim: 0, tooSlow: false };

function trialOf(
  work: Work,
  run: Run,
  rotation: Rotation,
  { name, machine }: NamedMachine,
  rules: Shop['rules'],
): Trial {
  const pose = poseHead(work, run);
  const placed = { ...pose, gap: pose.gap + 2 * rules.fenceClearance };
  const hole = findHole(work, run, pose.seat, machine, rules);
  return { work, machineName: name, machine, run, rotation, pose: placed, hole, speed: undefined };
}

/** Spacer between the heads, mm: the tongue less what lies between each head's face and its deepest station. */
function spacerBetween(lower: Work, upper: Work): number | null {
  const [u1, u2] = [lower.knife?.fromFace, upper.knife?.fromFace];
  return u1 === undefined || u2 === undefined ? null : tongueBetween(lower, upper) - u1 - u2;
}

function tongueBetween(lower: Work, upper: Work): number {
  return lower.thickness - lower.cut.depth - upper.cut.depth;
}

/** The highest speed inside both heads' windows, the least rim speed included. */
function commonSpeed(lower: Work, upper: Work, machine: Machine, rules: Shop['rules']): ChosenSpeed | undefined {
  const both = speedsAllowed(lower.head, machine, rules).filter(
    (n) =>
      speedsAllowed(upper.head, { speeds: [n] }, rules).length > 0 &&
      [lower, upper].every(({ head }) => rimSpeed(head.cuttingDiameter, n) >= rules.rimSpeed[0]),
  );
  const fastest = both.at(-1);
  if (fastest === undefined) return undefined;
  const widest = Math.max(lower.head.cuttingDiameter, upper.head.cuttingDiameter);
  return { speed: fastest, rim: rimSpeed(widest, fastest), tooSlow: false };
}

/** What stands against two heads on one spindle, beside what stands against each. */
function againstStack(
  lower: Work,
  upper: Work,
  { name, machine }: NamedMachine,
  spacer: number | null,
  speed: ChosenSpeed | undefined,
  rules: Shop['rules'],
  voice: Voice,
): Problem[] {
  const problems: Problem[] = [];
  const names = { lower: lower.cut.name, upper: upper.cut.name, machine: name };
  const at = 'cuts';
  if (lower.cut.tilt !== 0 || upper.cut.tilt !== 0) problems.push(sayProblem('stack-not-flat', at, names, voice));
  if (spacer !== null && spacer < -1e-9) {
    const figures = { ...names, short: -spacer, tongue: tongueBetween(lower, upper) };
    problems.push(sayProblem('stack-spacer', at, figures, voice));
  }
  const [x1, x2] = [lower, upper].map(({ head, cut }) => head.cuttingDiameter / 2 - cut.reach) as [number, number];
  if (Math.abs(x1 - x2) > SAME_FENCE) {
    const wanted = 2 * (x1 + upper.cut.reach);
    const reach = upper.head.cuttingDiameter / 2 - x1;
    const figures = { ...names, x1, x2, wanted, reach };
    problems.push(
      reach > 0
        ? sayProblem('stack-fence', at, figures, voice)
        : sayProblem('stack-fence.head', at, { ...names, x1, x2, wanted }, voice),
    );
  }
  if (lower.hand === upper.hand) problems.push(sayProblem('stack-hands', at, names, voice));
  const height = lower.head.height + upper.head.height + Math.max(0, spacer ?? 0);
  if (machine.spindleLength !== undefined && height > machine.spindleLength + 1e-6) {
    const figures = { ...names, height, length: machine.spindleLength };
    problems.push(sayProblem('stack-spindle', at, figures, voice));
  }
  if (speed === undefined) {
    const [least, most] = rules.rimSpeed;
    problems.push(sayProblem('stack-speed', at, { ...names, least, most }, voice));
  }
  return problems;
}

/** Stacked work is one pass: the powers of both add. */
function againstPasses(
  [lower, upper]: readonly [Trial, Trial],
  speed: ChosenSpeed | undefined,
  rules: Shop['rules'],
  voice: Voice,
): Problem[] {
  const { machine, machineName, work } = lower;
  if (speed === undefined || machine.power === undefined) return [];
  const feedRate = Math.min(...[lower, upper].map((each) => feedOf(each.work, machine, speed.speed, rules)));
  const area = areaTaken(work, [], work.cut.depth) + areaTaken(upper.work, [], upper.work.cut.depth);
  const most = greatestArea(machine.power, feedRate, rules)!;
  if (area <= most) return [];
  const figures = { lower: work.cut.name, upper: upper.work.cut.name, machine: machineName, area, most };
  return [sayProblem('stack-passes', 'cuts', figures, voice)];
}

/** The same thing said of both heads, or of their one machine, is said once. */
function dropRepeats(problems: readonly Problem[]): Problem[] {
  const said = new Set<string>();
  return problems.filter(({ message }) => !said.has(message) && said.add(message));
}
