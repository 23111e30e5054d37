import { type Code, FIT_CODES } from '../problem/codes.ts';
import type { Problem } from '../problem/problem.ts';
import type { Planned } from '../setup/make-plan.ts';
import type { Report } from './report.ts';

/** What a maker has to know before a plan is run: its own problems, all that stands against running, and what is said of the knives. */
export function listPlanProblems({ problems }: Planned, report: Pick<Report, 'problems'>): Problem[] {
  const known = new Set(problems.map(({ code, at }) => `${code} ${at}`));
  const others = report.problems.filter(
    (each) => (isAgainstRunning(each) || isOfKnife(each)) && !known.has(`${each.code} ${each.at}`),
  );
  return [...others.filter(({ severity }) => severity === 'error'), ...problems, ...others.filter(isMild)];
}

/** What is said of the knife of one cut, by its place among the cuts of a job. */
export function listKnifeProblems({ problems }: Pick<Report, 'problems'>, cut: number): Problem[] {
  return problems.filter(({ at }) => at === `cuts[${cut}].head`);
}

function isAgainstRunning({ severity, code }: Problem): boolean {
  return severity === 'error' && !(FIT_CODES as readonly Code[]).includes(code);
}

function isOfKnife({ at }: Problem): boolean {
  return /^cuts\[\d+\]\.head$/.test(at);
}

function isMild({ severity }: Problem): boolean {
  return severity !== 'error';
}
