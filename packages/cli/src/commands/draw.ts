import { findNearest, type Report } from '@fielded/core';
import { readArguments, UsageError } from '../arguments.ts';
import { readText } from '../files/read-text.ts';
import { writeWhole } from '../files/write-whole.ts';
import type { Io } from '../io.ts';
import { refusalLine } from '../report/list-faults.ts';
import { listProblems } from '../report/list-problems.ts';
import { WIDTH } from '../report/plain-report.ts';
import { checkJob, exitStatus, openShop } from './read-jobs.ts';

export const OPTIONS = {
  view: { type: 'string' },
  output: { type: 'string', short: 'o' },
  shop: { type: 'string' },
} as const;

const VIEWS = ['section', 'joint'] as const;
type View = (typeof VIEWS)[number];

/** `fielded draw`: a drawing of one job as SVG, to a file or to standard output; its problems on standard error. */
export async function draw(argv: readonly string[], io: Io): Promise<number> {
  const { values, positionals } = readArguments(argv, OPTIONS, 'draw');
  const [path, ...more] = positionals;
  if (path === undefined) throw new UsageError('draw needs a job file. See fielded help draw.');
  if (more.length > 0) throw new UsageError('draw takes one job at a time. See fielded help draw.');
  const view = readView(values.view);
  const shop = await openShop(values.shop as string | undefined, io);
  if (shop === null) return 2;
  const report = await checkJob({ path, text: readText(path) }, shop, io);
  if (report === null) return 2;

  const svg = await drawReport(report, view);
  if (typeof values.output !== 'string') await io.out(svg);
  else {
    const refusal = writeWhole(values.output, svg);
    if (refusal !== null) {
      await io.err(refusalLine(values.output, refusal));
      return 2;
    }
  }
  if (report.problems.length > 0) await io.err(`${listProblems(report.problems, WIDTH, (text) => text).join('\n')}\n`);
  return exitStatus(report);
}

function readView(given: string | boolean | undefined): View {
  if (given === undefined) return 'joint';
  const view = VIEWS.find((name) => name === given);
  if (view !== undefined) return view;
  const near = findNearest(String(given), VIEWS);
  throw new UsageError(
    `--view ${given} is not known. ${near ? `Did you mean ${near}? ` : ''}There are ${VIEWS.join(' and ')}.`,
  );
}

/** The drawing part is loaded only when something is drawn: checking starts faster without it. */
async function drawReport(report: Report, view: View): Promise<string> {
  const render = await import('@fielded/render');
  return render.draw(report, { view });
}
