import { processorTime } from '../support/timing.ts';
import type { Finding } from './fuzz-jobs.ts';

/** Most work that a single case may take, ms of the processor's time. */
const HANG = 1000;

/** Runs one case: what it finds, or that it threw or took too long, with the seed that makes it again. */
export function judgeCase(seed: number, run: () => readonly string[], most = HANG): Finding[] {
  let faults: string[] = [];
  const took = processorTime(() => {
    try {
      faults = [...run()];
    } catch (error) {
      faults = [`threw ${error instanceof Error ? `${error.message} ${error.stack?.split('\n')[1]?.trim()}` : error}`];
    }
  });
  if (took > most) faults.push(`took ${took.toFixed(0)} ms`);
  return faults.map((what) => ({ seed, what }));
}

/** A file that is refused is refused in words. */
export function refusedInWords(faults: readonly { readonly message: string }[]): string[] {
  return faults.length > 0 && faults.every(({ message }) => message !== '') ? [] : ['neither a job nor a fault'];
}

/** Every figure of an answer that is no number, by its place. */
export function notNumbers(value: unknown, at: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at} is ${value}`];
  if (typeof value === 'string')
    return /NaN|undefined|Infinity/.test(value) ? [`${at} says ${value.slice(0, 60)}`] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notNumbers(inner, `${at}.${key}`));
}
