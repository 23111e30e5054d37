import {
  type Plan,
  type Planned,
  type Report,
  sayNotChecked,
  sayPlanCaution,
  sayStartChecks,
  sayStep,
} from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint } from '../terminal/paint.ts';
import { type Column, setTable, wrap } from '../terminal/table.ts';
import { sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';
import { markRun, markVerdict, WIDTH } from './plain-report.ts';
import { setUpLines } from './set-up-lines.ts';

/** A plan to read at the machine: the set-ups, the order of work, what was not checked, problems. `all` lists every way. */
export function planReport(
  { plan, problems }: Planned,
  report: Report,
  file: string,
  all: boolean,
  paint: Paint,
): string {
  const title = safe(report.title);
  const lines = [
    ...wrap(title, WIDTH, 0).map((line) => paint(line, 'heading')),
    paint('═'.repeat(Math.min(WIDTH, title.length)), 'faint'),
    paint(`${safe(file)}, heights from the table`, 'faint'),
    `${markVerdict(report, paint)}   ${markRun(report, paint)}`,
    ...plan.setups.flatMap((_, k) => ['', ...setUpLines(plan, k, report, paint)]),
    ...notCheckedLines(plan, report, paint),
    ...stackLines(plan, report, paint),
    ...(all ? wayLines(plan, paint) : []),
    ...orderLines(plan, report, paint),
    ...problemLines(problems, paint),
    ...startLines(plan, report, paint),
  ];
  return `${lines.join('\n')}\n`;
}

/** The order of work; nothing where no cut can be run. */
function orderLines(plan: Plan, report: Report, paint: Paint): string[] {
  if (plan.steps.length === 0) return [];
  return [
    '',
    paint(`Order of work: ${plan.setUpCount} ${plan.setUpCount === 1 ? 'set-up' : 'set-ups'}`, 'heading'),
    ...plan.steps.flatMap((step, k) => setItem(`${k + 1}.`.padStart(5), sayStep(step, plan, report))),
  ];
}

/** What is checked before the start, and what goes before the figures. */
function startLines({ setups }: Plan, report: Report, paint: Paint): string[] {
  if (setups.length === 0) return [];
  return [
    '',
    paint('Before the spindle starts', 'heading'),
    ...sayStartChecks(null, report).flatMap((check) => setItem('    □', `${check}.`)),
    '',
    ...wrap(sayPlanCaution(report), WIDTH, 0),
  ];
}

/** What no set-up could check, each once, with what to measure. */
function notCheckedLines({ setups }: Plan, report: Report, paint: Paint): string[] {
  const said = setups.flatMap((setUp) => setUp.notChecked.map((path) => sayNotChecked(path, setUp, report)));
  if (said.length === 0) return [];
  return ['', paint('Not checked', 'heading'), ...[...new Set(said)].flatMap((words) => setItem('    –', words))];
}

function stackLines({ stack }: Plan, voice: Report, paint: Paint): string[] {
  if (stack === null) return [];
  const heading = ['', paint('Both heads at once', 'heading')];
  if (stack.works)
    return [
      ...heading,
      ...setItem(
        '   ',
        `Works on ${stack.machine}: ${stack.lower} below, ${stack.upper} above, a spacer of ${sayLength(stack.spacer, voice)} between them.`,
      ),
    ];
  if (stack.problems.length === 0)
    return [...heading, ...setItem('   ', `Not known: ${stack.notChecked.join(', ')} would have to be given.`)];
  return [...heading, ...stack.problems.flatMap(({ message }) => setItem('    ✗', message))];
}

/** Every way of making each cut. */
function wayLines({ ways }: Plan, paint: Paint): string[] {
  const columns: Column[] = ['cut', 'machine', 'run', 'rotation', 'tongue follows stock', ''].map((heading) => ({
    heading,
    align: 'left',
  }));
  const rows = ways.map(({ cut, machine, run, rotation, works, against, tonguePerStock }) => [
    safe(cut),
    safe(machine),
    run,
    rotation,
    tonguePerStock === null ? '–' : tonguePerStock === 0 ? 'no' : `${tonguePerStock > 0 ? '+' : '−'}1 : 1`,
    works ? '✓ works' : `✗ ${against.join(', ')}`,
  ]);
  return ['', paint('Ways', 'heading'), ...setTable(columns, rows)];
}

function problemLines(problems: Planned['problems'], paint: Paint): string[] {
  if (problems.length === 0) return [];
  return ['', paint('Problems', 'heading'), ...listProblems(problems, WIDTH, paint)];
}

/** A mark and a text beside it, the text in lines of its own. */
function setItem(mark: string, text: string): string[] {
  const [first = '', ...rest] = wrap(safe(text), WIDTH - mark.length - 1, 0);
  return [`${mark} ${first}`, ...rest.map((line) => `${' '.repeat(mark.length + 1)}${line}`)];
}
