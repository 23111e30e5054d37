import type { Job } from '@fielded/core';
import { manyPieces } from '../../support/many-pieces.ts';
import { timeFor } from '../../support/timing.ts';
import { chordEngines, type Engine, flattenJs, ours } from './engines.ts';
import { greenPass, scanLineArea } from './true-area.ts';

/** One engine at one size: the median time of a section and its quartiles, ms, and how far its area is off, mm². */
export interface Row {
  readonly engine: string;
  readonly pieces: number;
  readonly median: number;
  readonly quartiles: readonly [number, number];
  readonly error: number;
  /** Why there are no figures: it gave up or took too long. */
  readonly failed?: string;
}

export const SIZES = [12, 100, 500, 5000, 50_000] as const;

/** Slower than this (ms) at one size, an engine is not tried at the next. */
const TOO_SLOW = 4000;

/** Times every engine on the same seeded jobs, size by size, the lower bound first. */
export async function compareEngines(seconds: number): Promise<Row[]> {
  const bound: Engine = { name: 'one pass of Green', arcs: true, prepare: (job) => () => greenPass(job) };
  const engines = [bound, ours, flattenJs, ...(await chordEngines(1e-3)), ...(await chordEngines(1e-4))];
  const rows: Row[] = [];
  const slow = new Set<string>();
  for (const pieces of SIZES) {
    const job = manyPieces(pieces, pieces);
    const area = scanLineArea(job);
    for (const engine of engines) {
      const row = slow.has(engine.name)
        ? gaveUp(engine, pieces, 'too slow at the size before')
        : measure(engine, job, pieces, area, seconds);
      if (row.median > TOO_SLOW / 10) slow.add(engine.name);
      rows.push(engine === bound ? { ...row, error: 0 } : row);
      process.stderr.write(`${engine.name}, ${pieces}: ${row.failed ?? `${row.median.toPrecision(3)} ms`}\n`);
    }
  }
  return rows;
}

function measure(engine: Engine, job: Job, pieces: number, area: number, seconds: number): Row {
  try {
    const call = engine.prepare(job);
    const error = Math.abs(call() - area);
    return { engine: engine.name, pieces, ...timeFor(call, seconds), error };
  } catch (error) {
    return gaveUp(engine, pieces, error instanceof Error ? error.message.split('\n')[0]! : String(error));
  }
}

function gaveUp(engine: Engine, pieces: number, failed: string): Row {
  return {
    engine: engine.name,
    pieces,
    median: Number.NaN,
    quartiles: [Number.NaN, Number.NaN],
    error: Number.NaN,
    failed,
  };
}

/** Slope of log(time) over log(pieces) by least squares, over the sizes that gave figures: 1 is linear. */
export function growth(rows: readonly Row[], engine: string): number {
  const points = rows
    .filter((row) => row.engine === engine && Number.isFinite(row.median))
    .map((row) => [Math.log(row.pieces), Math.log(row.median)] as const);
  const mean = (k: 0 | 1) => points.reduce((sum, p) => sum + p[k], 0) / points.length;
  const [mx, my] = [mean(0), mean(1)];
  return (
    points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) / points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0)
  );
}
