import type { Voice } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import type { Machine, Shop } from '../shop/shop.ts';
import { findAgainst } from './against.ts';
import { findHole } from './hole.ts';
import type { StackReport } from './plan.ts';
import { poseHead } from './pose.ts';
import type { Rotation, Run } from './set-up-report.ts';
import { type ChosenSpeed, rimSpeed, speedsAllowed } from './speed.ts';
import { againstPasses, againstStack, feedOf, type NamedMachine, tongueBetween } from './stack-against.ts';
import type { Trial } from './trial.ts';
import { type Judged, warnOf } from './ways.ts';
import type { Work } from './work.ts';

/** Two heads on one spindle, with the way of each where it works. */
export interface JudgedStack {
  readonly report: StackReport;
  /** Lower and upper head; left out where it does not work. */
  readonly ways?: readonly [Judged, Judged];
}

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
    // Each head has its own rim: the machine's speed is one, their diameters are two.
    const own = speed && { ...speed, rim: rimSpeed(trial.work.head.cuttingDiameter, speed.speed) };
    const run = { ...trial, machine: together, speed: own };
    return { ...run, against: [], warnings: warnOf(run, rules, voice) };
  });
  return { report, ways: [judged[0]!, judged[1]!] };
}

const SEAT_CODES: readonly string[] = ['seat-too-low', 'seat-too-high'];

/** A speed for judging the heads where the stack has none: their own speeds have been judged already. */
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

/** Removes problems that are said twice: both heads share them, or a cut of the frame and its counter-profile. */
export function dropRepeats(problems: readonly Problem[]): Problem[] {
  const said = new Set<string>();
  return problems.filter(({ message }) => !said.has(message) && said.add(message));
}
