// Measures Fielded against the alternatives in one run and writes docs/performance.md: npm run bench
import { writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { fileURLToPath } from 'node:url';
import { compareEngines, growth, type Row, SIZES } from './rivals/compare.ts';
import { jointsPerSecond, timeWarmCalls } from './warm-times.ts';
import { timeCommands } from './whole-commands.ts';

/** Seconds spent on each figure; a smaller number for a quick look, which is then not written down. */
const seconds = Number(process.argv[2] ?? 1.5);

const rows = await compareEngines(seconds);
const warm = timeWarmCalls();
const joints = jointsPerSecond();
const commands = timeCommands();

const engines = [...new Set(rows.map(({ engine }) => engine))];
const figure = (value: number) => (Number.isFinite(value) ? Number(value.toPrecision(3)).toString() : '–');
const rowOf = (engine: string, pieces: number) => rows.find((row) => row.engine === engine && row.pieces === pieces)!;
const table = (head: string[], lines: string[][]) =>
  [head, head.map((_, i) => (i === 0 ? '---' : '---:')), ...lines]
    .map((cells) => `| ${cells.join(' | ')} |`)
    .join('\n');

const times = (row: Row) =>
  row.failed === undefined
    ? `${figure(row.median)} (${figure(row.quartiles[0])}–${figure(row.quartiles[1])})`
    : 'failed';
const ratio = (row: Row) => figure(row.median / rowOf('Fielded', row.pieces).median);
const worst = (engine: string) =>
  Math.max(...rows.filter((row) => row.engine === engine && Number.isFinite(row.error)).map(({ error }) => error));
const failures = rows
  .filter(({ failed }) => failed !== undefined)
  .map(({ engine, pieces, failed }) => `- ${engine}, ${pieces} pieces: ${failed}`);

const [bound, ours] = ['one pass of Green', 'Fielded'];
const rivals = engines.filter((engine) => engine !== bound && engine !== ours);
const ahead = SIZES.every((n) => rivals.every((engine) => !(rowOf(engine, n).median <= rowOf(ours, n).median)));
const timesBound = SIZES.map((n) => rowOf(ours, n).median / rowOf(bound, n).median);
const goals: [string, string, boolean][] = [
  ['ahead of every other at every size', ahead ? 'yes' : 'no', ahead],
  ['12 pieces in at most 0.02 ms', `${figure(rowOf(ours, 12).median)} ms`, rowOf(ours, 12).median <= 0.02],
  ['500 pieces in at most 0.3 ms', `${figure(rowOf(ours, 500).median)} ms`, rowOf(ours, 500).median <= 0.3],
  [
    'within 5 times the lower bound at 5,000 and 50,000',
    timesBound.slice(3).map(figure).join(' and '),
    timesBound.slice(3).every((t) => t <= 5),
  ],
  [
    'within 2 times the lower bound at 5,000 and 50,000',
    timesBound.slice(3).map(figure).join(' and '),
    timesBound.slice(3).every((t) => t <= 2),
  ],
  ...(
    [
      [12, 10],
      [500, 15],
    ] as const
  ).map(([pieces, times]): [string, string, boolean] => {
    const nearest = Math.min(...rivals.map((engine) => rowOf(engine, pieces).median).filter(Number.isFinite));
    const lead = nearest / rowOf(ours, pieces).median;
    return [`${times} times ahead of the nearest rival at ${pieces} pieces`, figure(lead), lead >= times];
  }),
  ...(
    [
      [12, 4],
      [500, 8],
    ] as const
  ).map(([pieces, most]): [string, string, boolean] => {
    const whole = warm.find(({ what }) => what === `evaluate ${pieces} pieces, the whole report`)!.ms;
    const times = whole / rowOf(ours, pieces).median;
    return [
      `the whole report at most ${most} times the bare section at ${pieces} pieces`,
      figure(times),
      times <= most,
    ];
  }),
  ['growth with an exponent of at most 1.1', figure(growth(rows, ours)), growth(rows, ours) <= 1.1],
  ['error of at most 1e-9 mm²', `${worst(ours).toExponential(1)} mm²`, worst(ours) <= 1e-9],
  ['fielded check as a whole process in at most 400 ms', `${figure(commands.check)} ms`, commands.check <= 400],
  [
    'fielded check in at most 2.5 times node -e 0',
    figure(commands.check / commands.nothing),
    commands.check <= 2.5 * commands.nothing,
  ],
  [
    '1,000 jobs in one process in at most 10 times one',
    figure(commands.thousand / commands.check),
    commands.thousand <= 10 * commands.check,
  ],
  ['at least 4,000,000 simulated joints a second', Math.round(joints).toLocaleString('en'), joints >= 4e6],
  ['at least 1,000,000 simulated joints a second', Math.round(joints).toLocaleString('en'), joints >= 1e6],
  ...warm
    .filter(({ goal }) => goal !== null)
    .map(({ what, ms, goal }): [string, string, boolean] => [
      `${what}: at most ${goal} ms`,
      `${figure(ms)} ms`,
      ms <= goal!,
    ]),
];

const page = `# Performance

Written by \`npm run bench\`, everything in one run; do not edit by hand. Machines are noisy: read the ratios before the
milliseconds.

${cpus()[0]?.model.trim()}, ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GB, Node ${process.version}, ${process.platform} ${process.arch}.

## The section, against other ways to work it out

One job is stock less a front cut less a back cut, each a free outline of lines and arcs. Fielded starts from the job's chains
and ends with boundaries, areas and moments; nothing is prepared for it. The others get their polygons ready made, outside
the clock, and end with an area: @flatten-js/core with true arcs, the rest with arcs flattened to the tolerance named.
Milliseconds, median (quartiles).

${table(
  ['engine', ...SIZES.map((n) => `${n.toLocaleString('en')} pieces`)],
  engines.map((engine) => [engine, ...SIZES.map((n) => times(rowOf(engine, n)))]),
)}

How many times Fielded's own time, how each grows (slope of log time over log pieces; 1 is in proportion), and how far its
area is from a scan-line integral (ten-point Gauss quadrature over every piece), mm² at worst:

${table(
  ['engine', ...SIZES.map((n) => n.toLocaleString('en')), 'growth', 'error'],
  engines.map((engine) => [
    engine,
    ...SIZES.map((n) => ratio(rowOf(engine, n))),
    figure(growth(rows, engine)),
    engine === bound ? '–' : worst(engine).toExponential(1),
  ]),
)}

"One pass of Green" adds up the boundary integral over the same pieces and does nothing else, each arc's segment by the sine of its
angle, as textbooks have it; Fielded sums a series instead, and so may come out below it.

The whole report of both jobs of many pieces holds advice: their tongues stop short, and every remedy is tried out before it is given.
${failures.length > 0 ? `\nNo figures:\n\n${failures.join('\n')}\n` : ''}
## Calls, warm

${table(
  ['call', 'ms'],
  warm.map(({ what, ms }) => [what, figure(ms)]),
)}

Simulated joints a second on one core: ${Math.round(joints).toLocaleString('en')}.

## Whole processes

${table(
  ['command', 'ms'],
  [
    ['node -e 0', figure(commands.nothing)],
    ['fielded check on the first example', figure(commands.check)],
    ['fielded check --json on a folder of 1,000 jobs', figure(commands.thousand)],
  ],
)}

Peak memory of the last: ${figure(commands.peak)} MB.

## Goals

${table(
  ['goal', 'measured', ''],
  goals.map(([goal, measured, met]) => [goal, measured, met ? 'met' : '**missed**']),
)}
`;

if (process.argv[2] === undefined)
  writeFileSync(fileURLToPath(new URL('../../docs/performance.md', import.meta.url)), page);
console.log(page);
