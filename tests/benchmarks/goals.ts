import { growth, type Row, SIZES } from './rivals/compare.ts';
import type { OffsetRow } from './rivals/offsets.ts';
import type { Warm } from './warm-times.ts';
import type { CommandTimes } from './whole-commands.ts';

/** All that one run has measured. */
export interface Measured {
  readonly rows: readonly Row[];
  readonly offsets: { readonly rows: readonly OffsetRow[]; readonly distance: number };
  readonly warm: readonly Warm[];
  readonly joints: number;
  readonly commands: CommandTimes;
}

export interface Goal {
  readonly goal: string;
  readonly measured: string;
  readonly met: boolean;
}

export const BOUND = 'one pass of Green';
export const OURS = 'Fielded';

/** A number in three digits. */
export function figure(value: number): string {
  return Number.isFinite(value) ? Number(value.toPrecision(3)).toString() : '–';
}

export function rowOf(rows: readonly Row[], engine: string, pieces: number): Row {
  return rows.find((row) => row.engine === engine && row.pieces === pieces)!;
}

/** The rivals' names: every engine but ours and the lower bound. */
function rivalsOf(rows: readonly Row[]): string[] {
  return [...new Set(rows.map(({ engine }) => engine))].filter((engine) => engine !== BOUND && engine !== OURS);
}

export function worstError(rows: readonly Row[], engine: string): number {
  return Math.max(
    ...rows.filter((row) => row.engine === engine && Number.isFinite(row.error)).map(({ error }) => error),
  );
}

const atMost = (goal: string, value: number, most: number, unit = ''): Goal => ({
  goal,
  measured: `${figure(value)}${unit}`,
  met: value <= most,
});
const atLeast = (goal: string, value: number, least: number): Goal => ({
  goal,
  measured: value >= 1000 ? Math.round(value).toLocaleString('en') : figure(value),
  met: value >= least,
});

/** Every goal, and whether this run met it. */
export function judgeGoals(measured: Measured): Goal[] {
  return [...sectionGoals(measured), ...reportGoals(measured), ...commandGoals(measured), ...callGoals(measured)];
}

function sectionGoals({ rows, offsets }: Measured): Goal[] {
  const rivals = rivalsOf(rows);
  const ours = (pieces: number) => rowOf(rows, OURS, pieces).median;
  const ahead = SIZES.every((n) => rivals.every((engine) => !(rowOf(rows, engine, n).median <= ours(n))));
  const lead = (pieces: number) =>
    Math.min(...rivals.map((engine) => rowOf(rows, engine, pieces).median).filter(Number.isFinite)) / ours(pieces);
  const timesBound = [5000, 50_000].map((n) => ours(n) / rowOf(rows, BOUND, n).median);
  const within = (times: number): Goal => ({
    goal: `within ${times} times the lower bound at 5,000 and 50,000`,
    measured: timesBound.map(figure).join(' and '),
    met: timesBound.every((t) => t <= times),
  });
  const [own, ...others] = offsets.rows;
  return [
    { goal: 'ahead of every other at every size', measured: ahead ? 'yes' : 'no', met: ahead },
    atMost('12 pieces in at most 0.02 ms', ours(12), 0.02, ' ms'),
    atMost('500 pieces in at most 0.3 ms', ours(500), 0.3, ' ms'),
    within(5),
    within(2),
    atLeast('10 times ahead of the nearest rival at 12 pieces', lead(12), 10),
    atLeast('15 times ahead of the nearest rival at 500 pieces', lead(500), 15),
    atMost('growth with an exponent of at most 1.1', growth(rows, OURS), 1.1),
    { ...atMost('error of at most 1e-9 mm²', worstError(rows, OURS), 1e-9), measured: small(worstError(rows, OURS)) },
    atLeast(
      'the parallel of 5,000 pieces ahead of both clippers',
      Math.min(...others.map((row) => row.median)) / own!.median,
      1,
    ),
    {
      ...atMost('the parallel everywhere within 1e-7 mm of its distance', offsets.distance, 1e-7),
      measured: small(offsets.distance),
    },
  ];
}

function small(value: number): string {
  return value.toExponential(1);
}

function reportGoals({ rows, warm, joints }: Measured): Goal[] {
  const bare = (pieces: number) => rowOf(rows, OURS, pieces).median;
  const called = (what: string) => warm.find((each) => each.what === what)!.ms;
  const report = (pieces: number, how: string, most: number) =>
    atMost(
      `the whole report of ${pieces} pieces ${how} at most ${most} times the bare section`,
      called(`evaluate ${pieces} pieces ${how}, the whole report${how === 'that fit' ? '' : ' with advice'}`) /
        bare(pieces),
      most,
    );
  return [
    report(12, 'that fit', 4),
    report(500, 'that fit', 8),
    report(12, 'that stop short', 4),
    report(500, 'that stop short', 8),
    atLeast('at least 1,000,000 simulated joints a second', joints, 1e6),
    atLeast('at least 4,000,000 simulated joints a second', joints, 4e6),
  ];
}

function commandGoals({ commands: { nothing, check, thousand, trace, quotes } }: Measured): Goal[] {
  return [
    atMost('fielded check as a whole process in at most 400 ms', check.ms, 400, ' ms'),
    atMost('fielded check in at most 2.5 times node -e 0', check.ms / nothing.ms, 2.5),
    atMost('1,000 jobs in one process in at most 10 times one check', thousand.ms / check.ms, 10),
    atMost('1,000 jobs in one process in at most 10 times node -e 0', thousand.ms / nothing.ms, 10),
    atMost('tracing A4 at 600 dpi in at most 2 s', trace.ms / 1000, 2, ' s'),
    atMost('tracing A4 at 600 dpi in at most 512 MB', trace.peak, 512, ' MB'),
    ...quotes.map(({ what, ms }) => atMost(`${what}: at most 1.5 s`, ms / 1000, 1.5, ' s')),
  ];
}

function callGoals({ warm }: Measured): Goal[] {
  return warm.flatMap(({ what, ms, goal }) =>
    goal === null ? [] : [atMost(`${what}: at most ${goal.toLocaleString('en')} ms`, ms, goal, ' ms')],
  );
}
