import { toDegrees } from '../measure/angle.ts';
import { sayLater, told, type Unsaid } from '../problem/say.ts';
import type { Rules } from '../shop/shop.ts';
import { againstHeight } from './against-height.ts';
import { feedsFor } from './feed.ts';
import { handOf } from './hand.ts';
import { aboutTrial, namesOf, SAME, type Trial } from './trial.ts';

/** The narrowest opening of the doors that are made, mm. */
export interface LeastOpening {
  readonly door: string;
  readonly size: number;
}

/** A bore and a spindle that differ by more, mm, do not fit each other. */
const SAME_BORE = 0.02;

/** Everything that stands against a way, with the figure wanted and the figure there is. What is not known stands against nothing. */
export function findAgainst(trial: Trial, rules: Rules, opening?: LeastOpening): Unsaid[] {
  return [
    ...againstHand(trial),
    ...againstHold(trial),
    ...againstHeight(trial),
    ...againstSpindle(trial),
    ...againstFence(trial),
    ...againstOpening(trial, rules, opening),
    ...againstSpeed(trial, rules),
  ];
}

/** The knife cuts one way round only, and not every machine turns both ways. */
function againstHand(trial: Trial): Unsaid[] {
  const { work, run, rotation, machine } = trial;
  const problems: Unsaid[] = [];
  const figures = { ...namesOf(trial), rotation: told(`rotation.${rotation}`, {}) };
  if (handOf(run, rotation) !== work.hand) problems.push(sayLater('wrong-hand', work.at, figures, aboutTrial(trial)));
  if (rotation === 'clockwise' && !machine.reversing)
    problems.push(sayLater('not-reversing', work.at, figures, aboutTrial(trial)));
  return problems;
}

/** How the panel is held: what the knife was ground for, and what the machine can do. */
function againstHold(trial: Trial): Unsaid[] {
  const { work, machine, run } = trial;
  const { cut, knife } = work;
  const problems: Unsaid[] = [];
  const names = namesOf(trial);
  const more = aboutTrial(trial);
  if (knife?.presented !== undefined && Math.abs(knife.presented - cut.tilt) > 1e-9) {
    const figures = { ...names, knife: cut.knife ?? '', ground: toDegrees(knife.presented), held: toDegrees(cut.tilt) };
    problems.push(sayLater('ground-for-other-hold', work.at, figures, more));
  }
  if (cut.tilt === Math.PI / 2) {
    if (machine.tallFence === false) problems.push(sayLater('no-tall-fence', work.at, names, more));
  } else if (cut.tilt > 0) {
    // Under the stock the spindle's top leans away from it, over the stock towards it.
    const wanted = run === 'under' ? cut.tilt : -cut.tilt;
    const [least, most] = machine.tilt;
    if (wanted < least - 1e-9 || wanted > most + 1e-9) {
      const figures = { ...names, wanted: toDegrees(wanted), least: toDegrees(least), most: toDegrees(most) };
      problems.push(sayLater(least === most && most === 0 ? 'no-tilt.fixed' : 'no-tilt', work.at, figures, more));
    }
  }
  return problems;
}

function againstSpindle(trial: Trial): Unsaid[] {
  const { work, machine } = trial;
  const { head } = work;
  const problems: Unsaid[] = [];
  const names = namesOf(trial);
  const more = aboutTrial(trial);
  if (head.bore !== undefined && machine.spindle !== undefined && Math.abs(head.bore - machine.spindle) > SAME_BORE) {
    const figures = { ...names, bore: head.bore, spindle: machine.spindle };
    problems.push(sayLater('spindle-bore', work.at, figures, more));
  }
  if (machine.spindleLength !== undefined && head.height > machine.spindleLength + SAME) {
    const figures = { ...names, height: head.height, length: machine.spindleLength };
    problems.push(sayLater('spindle-too-short', work.at, figures, more));
  }
  return problems;
}

/** What the panel runs into beside the knives, and how far the fence opens. */
function againstFence(trial: Trial): Unsaid[] {
  const { work, machine, machineName, pose } = trial;
  const problems: Unsaid[] = [];
  const more = aboutTrial(trial);
  const { cut, head, headName, at } = work;
  const body = head.bodyDiameter / 2;
  const nut = machine.nutDiameter / 2;
  const least = pose.toAxis;
  if (body >= least - SAME)
    problems.push(sayLater('edge-meets-body', at, { head: headName, cut: cut.name, least, body }, more));
  if (nut >= least - SAME)
    problems.push(sayLater('edge-meets-nut', at, { machine: machineName, cut: cut.name, least, nut }, more));
  // Inside a frame no fence stands: it runs on a bearing.
  if (work.frame?.kind !== 'back edge' && machine.fenceGap !== undefined && pose.gap > machine.fenceGap + SAME) {
    const figures = { ...namesOf(trial), gap: pose.gap, most: machine.fenceGap };
    problems.push(sayLater('fence-gap', at, figures, more));
  }
  return problems;
}

/** A frame is laid over the turning head: its opening has to clear the whole circle before the bearing touches. */
function againstOpening(trial: Trial, rules: Rules, opening: LeastOpening | undefined): Unsaid[] {
  const { work } = trial;
  if (work.frame?.kind !== 'back edge' || opening === undefined) return [];
  const needed = work.head.cuttingDiameter + 2 * rules.fenceClearance;
  if (needed <= opening.size + SAME) return [];
  const figures = { ...namesOf(trial), needed, door: opening.door, opening: opening.size };
  return [sayLater('opening-too-small', work.at, figures, aboutTrial(trial))];
}

/** The marks on the tool: its speeds, and the feed it is meant for. */
function againstSpeed(trial: Trial, rules: Rules): Unsaid[] {
  const { work, machine, speed } = trial;
  const { head, at } = work;
  const problems: Unsaid[] = [];
  const names = namesOf(trial);
  const more = aboutTrial(trial);
  if (speed === undefined) {
    const figures = { ...names, most: head.maxSpeed, rim: rules.rimSpeed[1], slowest: Math.min(...machine.speeds) };
    problems.push(
      head.minSpeed === undefined
        ? sayLater('no-allowed-speed', at, figures, more)
        : sayLater('no-allowed-speed.window', at, { ...figures, least: head.minSpeed }, more),
    );
  }
  if (head.feed === 'mechanical' && feedsFor(work, machine).length === 0) {
    const sentence = machine.feeds.length > 0 ? 'needs-feeder.by-hand' : 'needs-feeder';
    problems.push(sayLater(sentence, at, names, more));
  }
  return problems;
}
