import { facePhrase, formatLength, type Job, type Report } from '@fielded/core';
import { keepTogether } from '../../words/keep-together.ts';

/** A size before and after a move, mm. @example 'the back relief from 4.8 mm to 5.2 mm deep' */
interface Step {
  readonly name: string;
  readonly before: number;
  readonly after: number;
}

/** The depths that differ between two states of a job, by their cuts. */
export function depthSteps(before: Job, after: Job): Step[] {
  return after.cuts.flatMap(({ name, depth }, index) => {
    const was = before.cuts[index]!.depth;
    return Math.abs(was - depth) < 1e-6 ? [] : [{ name, before: was, after: depth }];
  });
}

/** One sentence: which cuts go from what to what, and what comes of it. */
export function sayDepths(steps: readonly Step[], report: Report): string {
  const { units } = report;
  const say = (mm: number) => formatLength(mm, units);
  const moves = steps.map(({ name, before, after }) => `the ${name} from ${say(before)} to ${say(after)} deep`);
  return keepTogether(`Take ${moves.join(' and ')}: ${sayOutcome(report)}.`);
}

/** A face nearer to flush than this, mm, is called flush: settings in round figures leave so much, and no machine holds less. */
const ROUNDED = 0.02;

/** What comes of a move, in words. @example 'it then slides with 0.2 mm to spare, its face flush' */
function sayOutcome({ fit, units }: Report): string {
  const { clearance, frontFace } = fit;
  const stands = frontFace === null ? null : (frontFace.least + frontFace.most) / 2;
  const middle = stands !== null && Math.abs(stands) < ROUNDED ? 0 : stands;
  const face = middle === null ? '' : `, its face ${facePhrase({ least: middle, most: middle }, units)}`;
  return `it then slides with ${formatLength(clearance ?? 0, units)} to spare${face}`;
}

/** A face in words. @example sayFace(-0.5, 'mm') // '0.5 mm recessed' */
export function sayFace(mm: number, units: Report['units']): string {
  return facePhrase({ least: mm, most: mm }, units);
}
