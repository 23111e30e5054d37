import type { Problem, Report } from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint } from '../terminal/paint.ts';
import { setTable } from '../terminal/table.ts';
import { sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';
import { markRun, markVerdict, WIDTH } from './plain-report.ts';

/** A job by its path, with its report or null where it could not be read. */
export interface Checked {
  readonly path: string;
  readonly report: Report | null;
}

/** Several jobs at a glance, then the problems of each that has some. */
export function summary(checked: readonly Checked[], paint: Paint): string {
  const rows = checked.map(({ path, report }) => {
    if (report === null) return [safe(path), '⊘ not read', '', '', '', ''];
    const { fit, problems } = report;
    const verdict = markVerdict(report, (text) => text);
    return [
      safe(path),
      verdict,
      markRun(report, (text) => text),
      sayLength(fit.clearance, report),
      sayLength(fit.deepestInsertion, report),
      countProblems(problems),
    ];
  });
  const lines = setTable(
    [
      { heading: 'job', align: 'left' },
      { heading: 'verdict', align: 'left' },
      { heading: 'running', align: 'left' },
      { heading: 'clearance', align: 'right' },
      { heading: 'goes in at most', align: 'right' },
      { heading: 'problems', align: 'left' },
    ],
    rows,
    0,
  );
  const details = checked.flatMap(({ path, report }) =>
    report === null || report.problems.length === 0
      ? []
      : ['', paint(safe(path), 'heading'), ...listProblems(report.problems, WIDTH, paint)],
  );
  const read = checked.filter(({ report }) => report !== null).length;
  const total = `${checked.length} jobs${read === checked.length ? '' : `, ${checked.length - read} not read`}`;
  return `${[...lines, ...details, '', total].join('\n')}\n`;
}

/** '1 error, 2 warnings', or 'none'. */
function countProblems(problems: readonly Problem[]): string {
  const counts = (['error', 'warning', 'caution'] as const).flatMap((severity) => {
    const count = problems.filter((problem) => problem.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
  });
  return counts.length === 0 ? 'none' : counts.join(', ');
}
