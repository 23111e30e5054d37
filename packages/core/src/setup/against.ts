import { toDegrees } from '../measure/angle.ts';
import type { Voice } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem, told } from '../problem/say.ts';
import type { Machine, Rules } from '../shop/shop.ts';
import { feedsFor } from './feed.ts';
import { handOf } from './hand.ts';
import type { Hole, Rotation, Run } from './plan.ts';
import type { Pose } from './pose.ts';
import type { ChosenSpeed } from './speed.ts';
import type { Work } from './work.ts';

/** One way of making a cut with its figures, before it is judged. */
export interface Trial {
  readonly work: Work;
  readonly machineName: string;
  readonly machine: Machine;
  readonly run: Run;
  readonly rotation: Rotation;
  readonly pose: Pose;
  readonly hole: Hole | null;
  readonly speed: ChosenSpeed | undefined;
}

/** The narrowest opening of the doors that are made, mm. */
export interface LeastOpening {
  readonly door: string;
  readonly size: number;
}

/** Lengths that differ by less than this, mm, are the same to any rule. */
const SAME = 1e-6;
/** A bore and a spindle that differ by more, mm, do not fit each other. */
const SAME_BORE = 0.02;

/** Everything that stands against a way, with the figure wanted and the figure there is. What is not known stands against nothing. */
export function findAgainst(trial: Trial, rules: Rules, voice: Voice, opening?: LeastOpening): Problem[] {
  return [
    ...againstHand(trial, voice),
    ...againstHold(trial, voice),
    ...againstHeight(trial, voice),
    ...againstSpindle(trial, voice),
    ...againstFence(trial, voice),
    ...againstOpening(trial, rules, voice, opening),
    ...againstSpeed(trial, rules, voice),
  ];
}

function aboutTrial({ work, machineName }: Trial) {
  const { cut, headName } = work;
  return { about: { cut: cut.name, head: headName, machine: machineName } };
}

function namesOf({ work, machineName, run }: Trial) {
  return { cut: work.cut.name, machine: machineName, head: work.headName, run: told(`run.${run}`, {}) };
}

/** The knife cuts one way round only, and not every machine turns both ways. */
function againstHand(trial: Trial, voice: Voice): Problem[] {
  const { work, run, rotation, machine } = trial;
  const problems: Problem[] = [];
  const figures = { ...namesOf(trial), rotation: told(`rotation.${rotation}`, {}) };
  if (handOf(run, rotation) !== work.hand)
    problems.push(sayProblem('wrong-hand', work.at, figures, voice, aboutTrial(trial)));
  if (rotation === 'clockwise' && !machine.reversing)
    problems.push(sayProblem('not-reversing', work.at, figures, voice, aboutTrial(trial)));
  return problems;
}

/** How the panel is held: what the knife was ground for, and what the machine can do. */
function againstHold(trial: Trial, voice: Voice): Problem[] {
  const { work, machine, run } = trial;
  const { cut, knife } = work;
  const problems: Problem[] = [];
  const names = namesOf(trial);
  const more = aboutTrial(trial);
  if (knife?.presented !== undefined && Math.abs(knife.presented - cut.tilt) > 1e-9) {
    const figures = { ...names, knife: cut.knife ?? '', ground: toDegrees(knife.presented), held: toDegrees(cut.tilt) };
    problems.push(sayProblem('ground-for-other-hold', work.at, figures, voice, more));
  }
  if (cut.tilt === Math.PI / 2) {
    if (machine.tallFence === false) problems.push(sayProblem('no-tall-fence', work.at, names, voice, more));
  } else if (cut.tilt > 0) {
    // Under the stock the spindle's top leans away from it, over the stock towards it.
    const wanted = run === 'under' ? cut.tilt : -cut.tilt;
    const [least, most] = machine.tilt;
    if (wanted < least - 1e-9 || wanted > most + 1e-9) {
      const figures = { ...names, wanted: toDegrees(wanted), least: toDegrees(least), most: toDegrees(most) };
      problems.push(sayProblem('no-tilt', work.at, figures, voice, more));
    }
  }
  return problems;
}

/** Whether the head can stand where it should, and the table be open around it. */
function againstHeight(trial: Trial, voice: Voice): Problem[] {
  const { work, machine, pose, hole } = trial;
  const problems: Problem[] = [];
  const names = namesOf(trial);
  const more = aboutTrial(trial);
  const [lowest, highest] = machine.seat;
  if (pose.seat !== null && pose.seat < lowest - SAME) {
    const below = lowest < 0;
    const figures = { ...names, seat: below ? -pose.seat : pose.seat, least: below ? -lowest : lowest };
    problems.push(sayProblem(below ? 'seat-too-low.below' : 'seat-too-low', work.at, figures, voice, more));
  }
  if (pose.seat !== null && pose.seat > highest + SAME) {
    const figures = { ...names, seat: pose.seat, most: highest };
    problems.push(sayProblem('seat-too-high', work.at, figures, voice, more));
  }
  if (hole !== null && hole.ring === null) {
    const figures = { ...names, needed: hole.needed, opening: machine.opening };
    problems.push(sayProblem('hole-too-small', work.at, figures, voice, more));
  }
  return problems;
}

function againstSpindle(trial: Trial, voice: Voice): Problem[] {
  const { work, machine } = trial;
  const { head } = work;
  const problems: Problem[] = [];
  const names = namesOf(trial);
  const more = aboutTrial(trial);
  if (head.bore !== undefined && machine.spindle !== undefined && Math.abs(head.bore - machine.spindle) > SAME_BORE) {
    const figures = { ...names, bore: head.bore, spindle: machine.spindle };
    problems.push(sayProblem('spindle-bore', work.at, figures, voice, more));
  }
  if (machine.spindleLength !== undefined && head.height > machine.spindleLength + SAME) {
    const figures = { ...names, height: head.height, length: machine.spindleLength };
    problems.push(sayProblem('spindle-too-short', work.at, figures, voice, more));
  }
  return problems;
}

/** What the panel runs into beside the knives, and how far the fence opens. */
function againstFence(trial: Trial, voice: Voice): Problem[] {
  const { work, machine, machineName, pose } = trial;
  const problems: Problem[] = [];
  const more = aboutTrial(trial);
  const { cut, head, headName, at } = work;
  const body = head.bodyDiameter / 2;
  const nut = machine.nutDiameter / 2;
  const least = pose.toAxis;
  if (body >= least - SAME)
    problems.push(sayProblem('edge-meets-body', at, { head: headName, cut: cut.name, least, body }, voice, more));
  if (nut >= least - SAME)
    problems.push(sayProblem('edge-meets-nut', at, { machine: machineName, cut: cut.name, least, nut }, voice, more));
  // Inside a frame no fence stands: it runs on a bearing.
  if (work.frame?.kind !== 'back edge' && machine.fenceGap !== undefined && pose.gap > machine.fenceGap + SAME) {
    const figures = { ...namesOf(trial), gap: pose.gap, most: machine.fenceGap };
    problems.push(sayProblem('fence-gap', at, figures, voice, more));
  }
  return problems;
}

/** A frame is laid over the turning head: its opening has to clear the whole circle before the bearing touches. */
function againstOpening(trial: Trial, rules: Rules, voice: Voice, opening: LeastOpening | undefined): Problem[] {
  const { work } = trial;
  if (work.frame?.kind !== 'back edge' || opening === undefined) return [];
  const needed = work.head.cuttingDiameter + 2 * rules.fenceClearance;
  if (needed <= opening.size + SAME) return [];
  const figures = { ...namesOf(trial), needed, door: opening.door, opening: opening.size };
  return [sayProblem('opening-too-small', work.at, figures, voice, aboutTrial(trial))];
}

/** The marks on the tool: its speeds, and the feed it is meant for. */
function againstSpeed(trial: Trial, rules: Rules, voice: Voice): Problem[] {
  const { work, machine, speed } = trial;
  const { head, at } = work;
  const problems: Problem[] = [];
  const names = namesOf(trial);
  const more = aboutTrial(trial);
  if (speed === undefined) {
    const figures = { ...names, most: head.maxSpeed, rim: rules.rimSpeed[1], slowest: Math.min(...machine.speeds) };
    problems.push(
      head.minSpeed === undefined
        ? sayProblem('no-allowed-speed', at, figures, voice, more)
        : sayProblem('no-allowed-speed.window', at, { ...figures, least: head.minSpeed }, voice, more),
    );
  }
  if (head.feed === 'mechanical' && feedsFor(work, machine).length === 0) {
    const sentence = machine.feeds.length > 0 ? 'needs-feeder.by-hand' : 'needs-feeder';
    problems.push(sayProblem(sentence, at, names, voice, more));
  }
  return problems;
}
