// Measures Fielded against the alternatives in one run and writes docs/performance.md: npm run bench
import { writeFileSync } from 'node:fs';
import { cpus, loadavg, totalmem } from 'node:os';
import { fileURLToPath } from 'node:url';
import { BOUND, figure, judgeGoals, OURS, rowOf as rowIn, worstError } from './goals.ts';
import { explainLimits } from './limits.ts';
import { compareEngines, growth, type Row, SIZES } from './rivals/compare.ts';
import { compareOffsets, OFFSET_PIECES } from './rivals/offsets.ts';
import { jointsPerSecond, timeWarmCalls } from './warm-times.ts';
import { timeCommands } from './whole-commands.ts';
import { timeWholeJobs } from './whole-job-times.ts';

/** Seconds spent on each figure; a smaller number for a quick look, which is then not written down. */
const seconds = Number(process.argv[2] ?? 1.5);

/** How often every call is timed: what else runs makes a machine up to twice as slow for seconds at a time. */
const TURNS = 3;

const rows = await compareEngines(seconds);
const turns = Array.from({ length: TURNS }, () => [...timeWarmCalls(), ...timeWholeJobs()]);
const warm = turns[0]!.map((call, i) => ({ ...call, ms: Math.min(...turns.map((turn) => turn[i]!.ms)) }));
const joints = jointsPerSecond();
// After the calls: what it leaves in memory made a knife's outline take six times as long.
const offsets = await compareOffsets(seconds);
const commands = timeCommands();
const measured = { rows, offsets, warm, joints, commands };
const goals = judgeGoals(measured);

const engines = [...new Set(rows.map(({ engine }) => engine))];
const rowOf = (engine: string, pieces: number) => rowIn(rows, engine, pieces);
const table = (head: string[], lines: string[][]) =>
  [head, head.map((_, i) => (i === 0 ? '---' : '---:')), ...lines]
    .map((cells) => `| ${cells.join(' | ')} |`)
    .join('\n');

const times = (row: Row) =>
  row.failed === undefined
    ? `${figure(row.median)} (${figure(row.quartiles[0])}–${figure(row.quartiles[1])})`
    : 'failed';
const ratio = (row: Row) => figure(row.median / rowOf(OURS, row.pieces).median);
const failures = rows
  .filter(({ failed }) => failed !== undefined)
  .map(({ engine, pieces, failed }) => `- ${engine}, ${pieces} pieces: ${failed}`);

const page = `# Performance

Written by \`npm run bench\`, everything in one run; do not edit by hand. Machines are noisy: read the ratios before the
milliseconds. Calls are medians, those that are warm the least of ${TURNS} turns; whole processes are the least of several runs. What
else runs on the machine makes all of it longer.

${cpus()[0]?.model.trim()}, ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GB, Node ${process.version}, ${process.platform} ${process.arch};
${loadavg()[0]!.toFixed(1)} programs at work on it as this run ended.

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
    engine === BOUND ? '–' : worstError(rows, engine).toExponential(1),
  ]),
)}

"One pass of Green" adds up the boundary integral over the same pieces and does nothing else, each arc's segment by the sine of its
angle, as textbooks have it; Fielded sums a series instead, and so may come out below it.
${failures.length > 0 ? `\nNo figures:\n\n${failures.join('\n')}\n` : ''}
## Parallels

The parallel, 3 mm out, of one ring of ${OFFSET_PIECES.toLocaleString('en')} lines and arcs, as templates and sawn paths take it. Fielded trims lines and arcs;
both clippers start from chords ready made, and end with chords. Errors of area are against the mean of both clippers with chords
ten times finer. @flatten-js/core has no parallels: it measures how far ours lies from its distance, at worst
${offsets.distance.toExponential(1)} mm.

${table(
  ['engine', 'ms, median (quartiles)', 'times', 'error, mm²'],
  offsets.rows.map(({ engine, median, quartiles, error }) => [
    engine,
    `${figure(median)} (${figure(quartiles[0])}–${figure(quartiles[1])})`,
    figure(median / offsets.rows[0]!.median),
    error.toExponential(1),
  ]),
)}

## Calls, warm

The jobs of 12 and 500 pieces are those of the first table. Their tongues stop short in the groove of 6.4 mm that they are given, so the
whole report tries every remedy out, each as a section, a tongue and a verdict of its own, before it gives or drops it. The same cuts in a groove as wide as
the tongue needs fit, and ask for no advice: what a report cost before it advised.

${table(
  ['call', 'ms'],
  warm.map(({ what, ms }) => [what, figure(ms)]),
)}

Simulated joints a second on one core: ${Math.round(joints).toLocaleString('en')}.

## Whole processes

The least of several runs, by turns.

${table(
  ['command', 'ms', 'peak memory, MB'],
  [commands.nothing, commands.check, commands.thousand, commands.trace, ...commands.quotes].map(
    ({ what, ms, peak }) => [what, figure(ms), figure(peak)],
  ),
)}

## Goals

${table(
  ['goal', 'measured', ''],
  goals.map(({ goal, measured, met }) => [goal, measured, met ? 'met' : '**missed**']),
)}

${explainLimits(measured)}`;

if (process.argv[2] === undefined)
  writeFileSync(fileURLToPath(new URL('../../docs/performance.md', import.meta.url)), page);
console.log(page);
