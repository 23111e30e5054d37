export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}

/**
 * Median milliseconds of one call, warm: called for a quarter of a second first, then timed in batches long enough for the
 * clock, for three quarters of a second. The calls' results are summed so that none can be left out.
 */
export function timeEach(call: () => number): number {
  let sum = 0;
  const until = performance.now() + 250;
  let warm = 0;
  while (performance.now() < until || warm === 0) {
    sum += call();
    warm++;
  }
  const batch = Math.max(1, Math.round(warm / 100));
  const times: number[] = [];
  const end = performance.now() + 750;
  while (performance.now() < end || times.length < 5) {
    const start = performance.now();
    for (let i = 0; i < batch; i++) sum += call();
    times.push((performance.now() - start) / batch);
  }
  if (!Number.isFinite(sum)) throw new Error('a timed call gave no number');
  return median(times);
}
