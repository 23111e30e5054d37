import type { Voice } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem } from '../problem/say.ts';
import type { Machine, Shop } from '../shop/shop.ts';
import { areaTaken, greatestArea } from './area-taken.ts';
import { chooseFeed } from './feed.ts';
import type { ChosenSpeed } from './speed.ts';
import type { Trial } from './trial.ts';
import { leastRadiusOf } from './ways.ts';
import type { Work } from './work.ts';

/** Fences that differ by less than this, mm, are one fence. */
const SAME_FENCE = 0.01;

/** A machine of the shop under its name. */
export interface NamedMachine {
  readonly name: string;
  readonly machine: Machine;
}

/** Feed rate of a cut on a machine at a spindle speed, m/min. */
export function feedOf(work: Work, machine: Machine, speed: number, rules: Shop['rules']): number {
  return chooseFeed(work.head, machine, speed, leastRadiusOf(work), rules).feedRate;
}

/** Thickness of the tongue between two cuts of opposite sides, mm. */
export function tongueBetween(lower: Work, upper: Work): number {
  return lower.thickness - lower.cut.depth - upper.cut.depth;
}

/** What stands against two heads on one spindle, beside what stands against each. */
export function againstStack(
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
  // Do the heads overlap?
  if (spacer !== null && spacer < -1e-9) {
    const figures = { ...names, short: -spacer, tongue: tongueBetween(lower, upper) };
    problems.push(sayProblem('stack-spacer', at, figures, voice));
  }
  // Does one fence serve both? The panel passes each axis at R − reach.
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
  // Is the spindle long enough for both heads and the spacer?
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
export function againstPasses(
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
