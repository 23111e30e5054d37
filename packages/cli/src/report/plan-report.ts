import {
  formatNumber,
  type Plan,
  type Planned,
  type Report,
  type SetUp,
  sayNotChecked,
  sayPlanCaution,
  sayStartChecks,
  sayStep,
} from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint } from '../terminal/paint.ts';
import { type Column, setPairs, setTable, wrap } from '../terminal/table.ts';
import { sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';
import { markRun, markVerdict, WIDTH } from './plain-report.ts';

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
    `${markVerdict(report.fit.verdict, paint)}   ${markRun(report, paint)}`,
    ...plan.setups.flatMap((setUp, k) => ['', ...setUpLines(setUp, plan, k, report, paint)]),
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

function setUpLines(setUp: SetUp, plan: Plan, place: number, report: Report, paint: Paint): string[] {
  const length = (mm: number | null) => sayLength(mm, report.units);
  const { fence, hole, mark } = setUp;
  const held =
    setUp.presented === 0 ? 'flat' : setUp.presented === 90 ? 'on edge' : `tilted ${formatNumber(setUp.presented, 1)}°`;
  const bar = (heights: SetUp['fence']['bar']) =>
    heights === null
      ? 'nowhere: no wood is left at the edge'
      : heights.to === null
        ? `from ${length(heights.from)} up`
        : `${length(heights.from)} to ${length(heights.to)}`;
  const watts = (w: number) => formatNumber(w < 100 ? w : Math.round(w / 10) * 10, 0);
  const knife = setUp.knife === null ? 'to be ground' : setUp.knife;
  const pairs: [string, string][] = [
    ['Machine', `${setUp.machine}, head ${setUp.head}, knife ${knife}`],
    [
      'Runs',
      `${setUp.run === 'under' ? 'under the stock' : 'above the stock'}, held ${held}${setUp.turnedOver ? '; head turned over' : ''}`,
    ],
    [
      'Turns',
      `${setUp.rotation} seen from above, feed ${setUp.feedDirection}${setUp.assumed ? ' (hand ASSUMED: ask)' : ''}`,
    ],
    ...(setUp.slot === null ? [] : [['Slot', `the one marked for ${setUp.slot}`] as [string, string]]),
    ['Cutting point', `${length(setUp.cuttingPoint)} above the table`],
    ['Seat of the head', setUp.seat === null ? 'not known' : length(setUp.seat)],
    [
      'Table ring',
      hole === null
        ? 'none needed'
        : `${hole.ring === null ? 'none' : length(hole.ring)}, needs ${length(hole.needed)}`,
    ],
    ['Fence to axis', `${length(fence.toAxis)}; knives stand out ${length(fence.standsOut)}`],
    ['Gap in the fence', length(fence.gap)],
    ['Bar across it', bar(fence.bar)],
    ...(fence.barEdges === undefined ? [] : [['  after ripping', bar(fence.barEdges)] as [string, string]]),
    ['Speed', `${setUp.speed} a minute, ${formatNumber(setUp.rim, 1)} m/s at the rim`],
    [
      'Feed',
      `${sayFeed(setUp.feedRate, report.units)} ${setUp.feedBy === 'hand' ? 'by hand at most' : 'by the feeder'}; marks ${length(mark.pitch)} apart`,
    ],
    [
      'Power',
      `${watts(setUp.power.least)} to ${watts(setUp.power.most)} W along the grain, ${watts(setUp.powerEnd.least)} to ${watts(setUp.powerEnd.most)} W on ends`,
    ],
    [
      'Passes',
      setUp.passes.map(({ depth }) => length(depth)).join(', then ') +
        (setUp.passes.length === 1 ? ' deep in one' : ' deep'),
    ],
  ];
  return [
    paint(`Set-up ${place + 1}: ${safe(setUp.cut)}`, 'heading'),
    ...pairs.flatMap(([label, value]) => setPair(label, value)),
    ...correctionLines(plan, place, report),
  ];
}

/** What no set-up could check, each once, with what to measure. */
function notCheckedLines({ setups }: Plan, report: Report, paint: Paint): string[] {
  const said = setups.flatMap((setUp) => setUp.notChecked.map((path) => sayNotChecked(path, setUp, report)));
  if (said.length === 0) return [];
  return ['', paint('Not checked', 'heading'), ...[...new Set(said)].flatMap((words) => setItem('    –', words))];
}

/** The correction for one reading each way: the others are in proportion, and all stand on the sheet and in the JSON. */
function correctionLines({ correction }: Plan, place: number, { units }: Report): string[] {
  const row = correction[place]?.find(({ reads }) => reads > 0);
  if (row === undefined || (row.spindle === null && row.fence === null)) return [];
  const moves = [
    row.spindle === null
      ? null
      : `spindle ${sayLength(Math.abs(row.spindle), units)} ${row.spindle > 0 ? 'up' : 'down'}`,
    row.fence === null ? null : `knives ${sayLength(Math.abs(row.fence), units)} ${row.fence > 0 ? 'out' : 'in'}`,
  ].filter((move) => move !== null);
  return setPairs([[`${sayLength(row.reads, units)} too thick`, moves.join(', or ')]]);
}

/** m/min, and what shops that measure in inches say beside it. */
function sayFeed(feed: number, units: Report['units']): string {
  const metric = `${formatNumber(feed, 2)} m/min`;
  return units === 'mm' ? metric : `${metric} (${formatNumber(feed / 0.3048, 0)} ft/min)`;
}

function stackLines({ stack }: Plan, { units }: Report, paint: Paint): string[] {
  if (stack === null) return [];
  const heading = ['', paint('Both heads at once', 'heading')];
  if (stack.works)
    return [
      ...heading,
      ...setItem(
        '   ',
        `Works on ${stack.machine}: ${stack.lower} below, ${stack.upper} above, a spacer of ${sayLength(stack.spacer, units)} between them.`,
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

const LABEL_WIDTH = 19;

/** A label and what it stands for, in lines of its own where it is long. */
function setPair(label: string, value: string): string[] {
  const [first = '', ...rest] = wrap(safe(value), WIDTH - LABEL_WIDTH - 2, 0);
  const [line = ''] = setPairs([[label, first]], LABEL_WIDTH);
  return [line, ...rest.map((more) => `${' '.repeat(LABEL_WIDTH + 2)}${more}`)];
}

/** A mark and a text beside it, the text in lines of its own. */
function setItem(mark: string, text: string): string[] {
  const [first = '', ...rest] = wrap(safe(text), WIDTH - mark.length - 1, 0);
  return [`${mark} ${first}`, ...rest.map((line) => `${' '.repeat(mark.length + 1)}${line}`)];
}
