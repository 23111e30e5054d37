import type { Report } from '@fielded/core';
import { wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayNote } from './english/note.ts';

/** The state a job is in, in few words: how many errors and warnings there are. */
export function statusWords(report: Report): string {
  const count = (severity: string) => report.problems.filter((problem) => problem.severity === severity).length;
  const errors = count('error');
  const warnings = count('warning');
  if (errors > 0) return sayNote(errors === 1 ? 'status.errors.one' : 'status.errors.more', { errors }, report);
  if (warnings === 0) return sayNote('status.none', {}, report);
  return sayNote(warnings === 1 ? 'status.warnings.one' : 'status.warnings.more', { warnings }, report);
}

/**
 * A job's errors as lines no wider than `room` mm, each error beginning with the word Error; no more than `most` lines, the
 * last of which then says how many errors are not shown.
 */
export function errorLines(report: Report, height: number, room: number, most: number): string[] {
  const errors = report.problems.filter(({ severity }) => severity === 'error');
  const lines: string[] = [];
  for (const [i, { message }] of errors.entries()) {
    const wrapped = wrapText(sayNote('error.line', { message: safeText(message) }, report), height, room);
    // One line is kept for what is left over.
    if (lines.length + wrapped.length > most - (i < errors.length - 1 ? 1 : 0)) {
      const left = errors.length - i;
      const one = i === 0 ? 'error.left.one' : 'error.left.one-more';
      const several = i === 0 ? 'error.left.more' : 'error.left.many-more';
      return [...lines, sayNote(left === 1 ? one : several, { left }, report)];
    }
    lines.push(...wrapped);
  }
  return lines;
}
