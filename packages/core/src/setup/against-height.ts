import { sayLater, type Unsaid } from '../problem/say.ts';
import { aboutTrial, namesOf, SAME, type Trial } from './trial.ts';

/** Whether the head can stand where it should, and the table be open around it. */
export function againstHeight(trial: Trial): Unsaid[] {
  const { work, machine, pose, hole } = trial;
  const problems: Unsaid[] = [];
  const names = namesOf(trial);
  const more = aboutTrial(trial);
  const [lowest, highest] = machine.seat;
  if (pose.seat !== null && pose.seat < lowest - SAME) {
    problems.push(sayTooLow(trial, pose.seat));
  }
  if (pose.seat !== null && pose.seat > highest + SAME) {
    problems.push(sayTooHigh(trial, pose.seat));
  }
  if (hole !== null && hole.ring === null) {
    const figures = { ...names, needed: hole.needed, opening: machine.opening };
    problems.push(sayLater('hole-too-small', work.at, figures, more));
  }
  return problems;
}

/** A head that would have to sit lower than the machine lets it: heights below the table are told as such. */
function sayTooLow(trial: Trial, seat: number): Unsaid {
  const [lowest] = trial.machine.seat;
  const figures = { ...namesOf(trial), seat: Math.abs(seat), least: Math.abs(lowest) };
  const { at } = trial.work;
  const more = aboutTrial(trial);
  if (seat >= 0) return sayLater('seat-too-low', at, figures, more);
  if (lowest < 0) return sayLater('seat-too-low.below', at, figures, more);
  return sayLater(lowest === 0 ? 'seat-too-low.table' : 'seat-too-low.under', at, figures, more);
}

/** A head that would have to sit higher. */
function sayTooHigh(trial: Trial, seat: number): Unsaid {
  const [, highest] = trial.machine.seat;
  const figures = { ...namesOf(trial), seat: Math.abs(seat), most: Math.abs(highest) };
  const { at } = trial.work;
  const more = aboutTrial(trial);
  if (highest >= 0) return sayLater('seat-too-high', at, figures, more);
  return sayLater(seat < 0 ? 'seat-too-high.both-below' : 'seat-too-high.below', at, figures, more);
}
