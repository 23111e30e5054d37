import type { Job } from '../job/job.ts';
import type { Verdict } from '../joint/fit-report.ts';
import { type Code, FIT_CODES } from '../problem/codes.ts';
import type { Voice } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { say } from '../problem/say-joint.ts';
import type { Report, Statements } from './report.ts';

/** Both statements on a job, from everything that is wrong with it. `notChecked` lists what a plan could not check. */
export function stateBoth(
  job: Job,
  verdict: Verdict | null,
  problems: readonly Problem[],
  notChecked: readonly string[] = [],
): Statements {
  const fitCodes: readonly Code[] = FIT_CODES;
  const errors = problems.filter(({ severity, code }) => severity === 'error' && !fitCodes.includes(code));
  const unknown = [...listUnknown(job), ...notChecked];
  return {
    fits: verdict === 'sliding',
    canBeRun: errors.length > 0 ? false : unknown.length > 0 ? null : true,
    against: [...new Set(errors.map(({ code }) => code))],
    errors: errors.length,
    notChecked: unknown,
  };
}

/** The same from a joint alone, as in a drag: no head, knife or machine has been looked at. */
export function stateJoint(job: Job, verdict: Verdict | null, problems: readonly Problem[]): Statements {
  const headed = job.cuts.flatMap(({ head }, k) => (head === undefined ? [] : [headPath(k)]));
  return stateBoth(job, verdict, problems, headed);
}

/** What a job would have to say before anyone can tell whether it can be run. */
function listUnknown({ cuts, shop }: Job): string[] {
  const headless = cuts.flatMap(({ head }, k) => (head === undefined ? [headPath(k)] : []));
  const described = cuts.length > headless.length;
  if (shop === undefined || !described) return headless;
  return Object.keys(shop.machines).length === 0 ? [...headless, 'shop.machines'] : headless;
}

/** A statement in words, with a mark: `yes`, `no`, or `open` where it was not checked. */
export interface Stated {
  readonly mark: 'yes' | 'no' | 'open';
  readonly words: string;
}

/**
 * Whether it fits, in words.
 *
 * @example stateFit(report) // { mark: 'yes', words: 'fits' }
 */
export function stateFit({ statements, fit, ...voice }: SpeakingReport): Stated {
  if (statements.fits) return { mark: 'yes', words: say('fits.yes', {}, voice) };
  const which = fit.verdict === 'tight' || fit.verdict === 'loose' ? (`fits.${fit.verdict}` as const) : 'fits.no';
  return { mark: 'no', words: say(which, {}, voice) };
}

/**
 * Whether it can be run, in words.
 *
 * @example stateRun(report) // { mark: 'open', words: 'running not checked' }
 */
export function stateRun({ statements, section, ...voice }: SpeakingReport): Stated {
  const { canBeRun, errors, notChecked } = statements;
  const nothing = section.cuts.every((_, k) => notChecked.includes(headPath(k)));
  if (canBeRun === null) return { mark: 'open', words: say(nothing ? 'run.open' : 'run.part', {}, voice) };
  if (canBeRun) return { mark: 'yes', words: say('run.yes', {}, voice) };
  return { mark: 'no', words: errors === 1 ? say('run.no.one', {}, voice) : say('run.no.more', { errors }, voice) };
}

type SpeakingReport = Pick<Report, 'statements' | 'fit' | 'section'> & Voice;

/** Place of a cut's head in the job file. */
function headPath(cut: number): string {
  return `cuts[${cut}].head`;
}
