import type { Problem, Report, Voice } from '@fielded/core';
import { safe } from '../io.ts';
import { SHEET_WIDTH } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { left, right, setTable } from '../terminal/table.ts';
import { say, sayAll } from '../words/say.ts';
import { sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';
import { markRun, markVerdict } from './marks.ts';

/** A job by its path, with its report or null where it could not be read. */
export interface Checked {
  readonly path: string;
  readonly report: Report | null;
}

/** Several jobs at a glance, then the problems of each that has some; `voice` speaks of them all. */
export function summary(checked: readonly Checked[], voice: Voice, paint: Paint): string {
  const rows = checked.map(({ path, report }) => {
    if (report === null) return [safe(path), `⊘ ${say('print.jobs.not-read', {}, voice)}`, '', '', '', ''];
    const { fit, problems } = report;
    return [
      safe(path),
      markVerdict(report, (text) => text),
      markRun(report, (text) => text),
      sayLength(fit.clearance, report),
      sayLength(fit.deepestInsertion, report),
      countProblems(problems, voice),
    ];
  });
  const columns = [
    left(say('print.jobs.job', {}, voice)),
    left(say('print.jobs.verdict', {}, voice)),
    left(say('print.jobs.running', {}, voice)),
    right(say('print.jobs.clearance', {}, voice)),
    right(say('print.jobs.deepest', {}, voice)),
    left(say('print.jobs.problems', {}, voice)),
  ];
  const details = checked.flatMap(({ path, report }) =>
    report === null || report.problems.length === 0
      ? []
      : ['', paint(safe(path), 'heading'), ...listProblems(report.problems, SHEET_WIDTH, voice, paint)],
  );
  return `${[...setTable(columns, rows, 0), ...details, '', sayTotal(checked, voice)].join('\n')}\n`;
}

function sayTotal(checked: readonly Checked[], voice: Voice): string {
  const [jobs, unread] = [checked.length, checked.filter(({ report }) => report === null).length];
  if (jobs === 1) return say(unread === 1 ? 'print.jobs.total.one.not-read' : 'print.jobs.total.one', {}, voice);
  return unread === 0
    ? say('print.jobs.total', { jobs }, voice)
    : say('print.jobs.total.not-read', { jobs, unread }, voice);
}

/** '1 error, 2 warnings', or 'none'. */
function countProblems(problems: readonly Problem[], voice: Voice): string {
  const counts = (['error', 'warning', 'caution'] as const).flatMap((severity) => {
    const count = problems.filter((problem) => problem.severity === severity).length;
    if (count === 0) return [];
    return count === 1
      ? say(`print.jobs.${severity}.one`, {}, voice)
      : say(`print.jobs.${severity}.more`, { count }, voice);
  });
  return counts.length === 0
    ? say('print.jobs.no-problems', {}, voice)
    : sayAll(counts, 'print.jobs.counts.and', voice);
}
