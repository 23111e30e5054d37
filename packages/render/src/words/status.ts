import type { Report } from '@fielded/core';
import { wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';

/** The state a job is in, in few words: how many errors and warnings there are. */
export function statusWords({ problems }: Report): string {
  const count = (severity: string) => problems.filter((problem) => problem.severity === severity).length;
  const say = (number: number, word: string) => `${number} ${word}${number === 1 ? '' : 's'}`;
  const errors = count('error');
  const warnings = count('warning');
  if (errors > 0) return say(errors, 'error');
  return warnings > 0 ? `no errors, ${say(warnings, 'warning')}` : 'no errors';
}

/**
 * A job's errors as lines no wider than `room` mm, each error beginning with the word Error; no more than `most` lines, the
 * last of which then says how many errors are not shown.
 */
export function errorLines(report: Report, height: number, room: number, most: number): string[] {
  const errors = report.problems.filter(({ severity }) => severity === 'error');
  const lines: string[] = [];
  for (const [i, { message }] of errors.entries()) {
    const wrapped = wrapText(`Error: ${safeText(message)}`, height, room);
    // One line is kept for what is left over.
    if (lines.length + wrapped.length > most - (i < errors.length - 1 ? 1 : 0)) {
      const left = errors.length - i;
      return [
        ...lines,
        `Error: ${left} ${i === 0 ? '' : 'more '}of this job; fielded check lists ${left === 1 ? 'it' : 'them'}.`,
      ];
    }
    lines.push(...wrapped);
  }
  return lines;
}
