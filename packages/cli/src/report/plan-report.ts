import {
  type Plan,
  type Planned,
  type Report,
  sayCut,
  sayNotChecked,
  sayPlanCaution,
  sayStartChecks,
  sayStep,
} from '@fielded/core';
import { safe } from '../io.ts';
import { columnsOf, SHEET_WIDTH } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { left, setTable, wrap } from '../terminal/table.ts';
import { say } from '../words/say.ts';
import { sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';
import { markRun, markVerdict } from './marks.ts';
import { titleLines } from './plain-report.ts';
import { setUpLines } from './set-up-lines.ts';

/** A plan to read at the machine: the set-ups, the order of work, what was not checked, problems. `all` lists every way. */
export function planReport(
  { plan, problems }: Planned,
  report: Report,
  file: string,
  all: boolean,
  paint: Paint,
): string {
  const lines = [
    ...titleLines(report.title, paint),
    paint(say('print.plan.head', { file }, report), 'faint'),
    `${markVerdict(report, paint)}   ${markRun(report, paint)}`,
    ...plan.setups.flatMap((_, k) => ['', ...setUpLines(plan, k, report, paint)]),
    ...notCheckedLines(plan, report, paint),
    ...stackLines(plan, report, paint),
    ...(all ? wayLines(plan, report, paint) : []),
    ...orderLines(plan, report, paint),
    ...problemLines(problems, report, paint),
    ...startLines(plan, report, paint),
  ];
  return `${lines.join('\n')}\n`;
}

/** The order of work; nothing where no cut can be run. */
function orderLines(plan: Plan, report: Report, paint: Paint): string[] {
  const { steps, setUpCount: count } = plan;
  if (steps.length === 0) return [];
  const heading = count === 1 ? say('print.plan.order.one', {}, report) : say('print.plan.order', { count }, report);
  return [
    '',
    paint(heading, 'heading'),
    ...steps.flatMap((step, k) => setItem(`${k + 1}.`.padStart(5), sayStep(step, plan, report))),
  ];
}

/** What is checked before the start, and what goes before the figures. */
function startLines({ setups }: Plan, report: Report, paint: Paint): string[] {
  if (setups.length === 0) return [];
  return [
    '',
    paint(say('print.plan.start', {}, report), 'heading'),
    ...sayStartChecks(null, report).flatMap((check) => setItem('    □', say('print.plan.check', { check }, report))),
    '',
    ...wrap(safe(sayPlanCaution(report)), SHEET_WIDTH, 0),
  ];
}

/** What no set-up could check, each once, with what to measure. */
function notCheckedLines({ setups }: Plan, report: Report, paint: Paint): string[] {
  const said = setups.flatMap((setUp) => setUp.notChecked.map((path) => sayNotChecked(path, setUp, report)));
  if (said.length === 0) return [];
  const heading = paint(say('print.plan.not-checked', {}, report), 'heading');
  return ['', heading, ...[...new Set(said)].flatMap((words) => setItem('    –', words))];
}

function stackLines({ stack }: Plan, voice: Report, paint: Paint): string[] {
  if (stack === null) return [];
  const heading = ['', paint(say('print.plan.stack', {}, voice), 'heading')];
  const { machine, lower, upper, notChecked } = stack;
  if (stack.works) {
    const names = { machine: machine ?? '', lower: lower ?? '', upper: upper ?? '' };
    const figures = { ...names, spacer: sayLength(stack.spacer, voice) };
    return [...heading, ...setItem('   ', say('print.plan.stack.works', figures, voice))];
  }
  if (stack.problems.length === 0)
    return [...heading, ...setItem('   ', say('print.plan.stack.unknown', { paths: notChecked.join(', ') }, voice))];
  return [...heading, ...stack.problems.flatMap(({ message }) => setItem('    ✗', message))];
}

/** Every way of making each cut. */
function wayLines({ ways, setups }: Plan, voice: Report, paint: Paint): string[] {
  const columns = (['cut', 'machine', 'run', 'rotation', 'follows'] as const).map((key) =>
    left(say(`print.plan.way.${key}`, {}, voice)),
  );
  const rows = ways.map(({ cut, machine, run, rotation, works, against, tonguePerStock }) => {
    const frame = setups.find((setUp) => setUp.of === 'frame' && setUp.cut === cut)?.frame;
    return [
      safe(sayCut({ cut, ...(frame && { frame }) }, voice)),
      safe(machine),
      say(`print.run.${run}`, {}, voice),
      say(`print.rotation.${rotation}`, {}, voice),
      followsWords(tonguePerStock, voice),
      works ? say('print.plan.way.works', {}, voice) : `✗ ${against.join(', ')}`,
    ];
  });
  return ['', paint(say('print.plan.ways', {}, voice), 'heading'), ...setTable([...columns, left('')], rows)];
}

/** How the tongue follows the stock's thickness. */
function followsWords(tonguePerStock: number | null, voice: Report): string {
  if (tonguePerStock === null) return '–';
  if (tonguePerStock === 0) return say('print.plan.way.follows.not', {}, voice);
  return `${tonguePerStock > 0 ? '+' : '−'}1 : 1`;
}

function problemLines(problems: Planned['problems'], voice: Report, paint: Paint): string[] {
  if (problems.length === 0) return [];
  const heading = paint(say('print.plan.problems', {}, voice), 'heading');
  return ['', heading, ...listProblems(problems, SHEET_WIDTH, voice, paint)];
}

/** A mark and a text beside it, the text in lines of its own. */
function setItem(mark: string, text: string): string[] {
  const hang = columnsOf(mark) + 1;
  const [first = '', ...rest] = wrap(safe(text), SHEET_WIDTH - hang, 0);
  return [`${mark} ${first}`, ...rest.map((line) => `${' '.repeat(hang)}${line}`)];
}
