import { evaluate, readJob } from '@fielded/core';
import type { Traced, TracedSide } from './trace-scan.ts';

/** The usual frame about a traced panel, mm: what the maker goes on from. */
const GROOVE_DEPTH = 11;
const SWELL_GAP = 2;
const CLEARANCE = 0.2;
const LEAST_FRAME = 22;

/**
 * A job file about a traced sample, in millimetres: its panel and cuts as read, in a usual frame whose groove has room for the tongue and
 * stands so that the faces are flush. Everything of the frame is assumed, and says so. Reads without faults.
 */
export function tracedJob(traced: Traced, title: string): string {
  const setback = Math.max(0.5, tenth(traced.front.depth));
  const width = tenth(Math.max(1, traced.edge + CLEARANCE));
  const { job } = readJob(write(traced, title, setback, width));
  if (job === null) return write(traced, title, setback, width);
  // The tongue may be thicker further in than at its tip.
  const needed = evaluate(job).tongue.grooveNeeded;
  return write(traced, title, setback, needed === null ? width : tenth(needed + CLEARANCE));
}

function write({ thickness, front, back }: Traced, title: string, setback: number, width: number): string {
  const frame = Math.max(LEAST_FRAME, Math.ceil(setback + width + 4));
  const cut = (side: string, { path }: TracedSide) =>
    `  - name: ${side}\n    side: ${side}\n    profile: { shape: outline, path: "${rounded(path)}" }\n`;
  return `# Traced from a scan. The frame is assumed: write in the one you have.
fielded: 1
title: ${JSON.stringify(title)}
units: mm
panel: { thickness: ${tenth(thickness)}, measured: ${hundredth(thickness)} }
frame:
  thickness: ${frame}
  groove: { width: ${width}, depth: ${GROOVE_DEPTH}, setback: ${setback} }
  swellGap: ${SWELL_GAP}
cuts:
${cut('front', front)}${back ? cut('back', back) : ''}`;
}

/** Path data to a thousandth of a millimetre: finer than any scan. */
function rounded(path: string): string {
  return path.replace(/-?\d+\.\d+(?:e-?\d+)?/g, (number) => String(Math.round(Number(number) * 1000) / 1000 + 0));
}

function tenth(mm: number): number {
  return Math.round(mm * 10) / 10;
}

function hundredth(mm: number): number {
  return Math.round(mm * 100) / 100;
}
