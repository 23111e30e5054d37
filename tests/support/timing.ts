import { readFileSync } from 'node:fs';

function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

/** The value that the part `q` of the values does not exceed. */
export function quantile(values: readonly number[], q: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))]!;
}

/** A thread's time is brought up to date at each tick of the system, and at no more than so many ms. */
const TICK = 10;

/** Milliseconds that this thread has worked, where the system tells that: Linux does. */
function threadTime(): number {
  try {
    return Number(readFileSync('/proc/thread-self/schedstat', 'latin1').split(' ')[0]) / 1e6;
  } catch {
    return Number.NaN;
  }
}

/**
 * Milliseconds that the processor works for a call, so that a busy machine fails no bound: what takes that long where nothing else
 * runs. Both clocks say too much rather than too little: the process counts what the engine compiles and clears up beside it.
 */
export function processorTime(call: () => unknown): number {
  const thread = threadTime();
  const before = process.cpuUsage();
  call();
  const { user, system } = process.cpuUsage(before);
  const all = (user + system) / 1000;
  return Math.min(all, threadTime() - thread + TICK || all);
}

/** The least that is measured in up to so many turns, or the first that is within `most`. */
export function leastOf(measure: () => number, most: number, turns: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let n = 0; n < turns && least >= most; n++) least = Math.min(least, measure());
  return least;
}

/**
 * The least of up to three such times, or the first that is within `most`: what else runs on the machine takes caches and collects
 * garbage beside a call, and never makes it faster.
 */
export function leastProcessorTime(call: () => unknown, most: number, turns = 3): number {
  return leastOf(() => processorTime(call), most, turns);
}

export interface Timing {
  /** Milliseconds of one call. */
  readonly median: number;
  readonly quartiles: readonly [number, number];
}

/**
 * Milliseconds of one call, warm: called for a quarter of the given time first, then timed in batches long enough for the
 * clock for the rest of it (five at least). The calls' results are summed so that none can be left out.
 */
export function timeFor(call: () => number, seconds: number): Timing {
  let sum = 0;
  let warm = 0;
  for (const until = performance.now() + seconds * 250; performance.now() < until || warm === 0; warm++) sum += call();
  const batch = Math.max(1, Math.round(warm / 100));
  const times: number[] = [];
  for (const end = performance.now() + seconds * 750; performance.now() < end || times.length < 5; ) {
    const start = performance.now();
    for (let i = 0; i < batch; i++) sum += call();
    times.push((performance.now() - start) / batch);
  }
  if (!Number.isFinite(sum)) throw new Error('a timed call gave no number');
  return { median: median(times), quartiles: [quantile(times, 0.25), quantile(times, 0.75)] };
}

/** Median milliseconds of one call, warm, over a second. */
export function timeEach(call: () => number): number {
  return timeFor(call, 1).median;
}
