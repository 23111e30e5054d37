import { formatLength, type Job, type SolvedByTwo } from '@fielded/core';
import { keepTogether } from '../../words/keep-together.ts';
import { sayFace } from './move-words.ts';
import type { AskSolver } from './solve-beside.ts';

/** A depth less than this, mm, is no cut. */
const NOTHING = 0.02;
/** Sizes to try are whole numbers of this, mm. */
const STEP = 0.1;

/** Why front and back together cannot give what is wanted: the limit in the way, and changes that would help, each tried. */
export async function sayWhyNot(ask: AskSolver, job: Job, { nearest, by, value }: SolvedByTwo): Promise<string> {
  const [front, back] = by.map((name) => name.replace(/\.depth$/, '')) as [string, string];
  const { units, fit } = job;
  if (nearest === null)
    return keepTogether(
      `No depths of the ${front} and the ${back} leave a tongue that slides with ${formatLength(fit.target, units)} to spare. Look at their shapes first, or at the groove.`,
    );
  const [x, y] = nearest.settings;
  const limit =
    x < NOTHING
      ? `the ${front} is then down to nothing`
      : y < NOTHING
        ? `the ${back} is then down to nothing`
        : `further on the cuts leave no such tongue`;
  const tries = await listTries(ask, job, by, value, value - nearest.value);
  const help = tries.length === 0 ? 'Ask for less.' : `What would do it: ${tries.join(', or ')}.`;
  return keepTogether(`The face comes no nearer than ${sayFace(nearest.value, units)}: ${limit}. ${help}`);
}

/** Changes of another size after which front and back can give it, each tried. `lacks` is how much further proud the face has to stand, mm. */
async function listTries(
  ask: AskSolver,
  job: Job,
  by: SolvedByTwo['by'],
  value: number,
  lacks: number,
): Promise<string[]> {
  const say = (mm: number) => formatLength(mm, job.units);
  const works = async (changed: Job) =>
    (await ask({ ask: 'two', job: changed, wanted: { for: 'face', value, by } })).reason === null;
  const { groove } = job.frame;
  // A whole number of steps, and a twentieth of a step beyond what is lacking.
  const step = Math.ceil(Math.abs(lacks) / STEP + 0.05) * STEP;
  const setback = groove.setback - Math.sign(lacks) * step;
  const moved = { ...job, frame: { ...job.frame, groove: { ...groove, setback } } };
  const { thickness, measured } = job.panel;
  const thicker = { ...job, panel: { ...job.panel, thickness: thickness + step, measured: measured + step } };
  const room = job.frame.thickness - groove.width;
  return [
    ...(setback > 0 && setback < room && (await works(moved))
      ? [`the groove ${say(setback)} from the front of the frame instead of ${say(groove.setback)}`]
      : []),
    ...((await works(thicker)) ? [`stock of ${say(thickness + step)} instead of ${say(thickness)}`] : []),
  ];
}
