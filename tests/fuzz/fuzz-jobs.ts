import { evaluate, evaluateJoint, type Job, type Report, readJobData } from '@fielded/core';
import { Random } from '../support/random.ts';
import { randomJob } from '../support/random-job.ts';
import { judgeCase } from './judge-case.ts';
import { pathArea } from './path-area.ts';
import { randomFile } from './random-file.ts';
import { surfacesAt } from './scan-line.ts';

/** A case that broke a promise, with what it needs to be made again. */
export interface Finding {
  readonly seed: number;
  readonly what: string;
}

/**
 * Makes case `seed` and holds its report against everything that must be true of it: every fourth a job file built key by key,
 * the others jobs of named shapes whose surfaces are checked on scan lines too. Those are asked for their joint alone unless it is `whole`.
 */
export function fuzzJob(seed: number, whole = true): Finding[] {
  return judgeCase(seed, () => (seed % 4 === 3 ? fileFaults(seed) : namedFaults(seed, whole)));
}

function namedFaults(seed: number, whole: boolean): string[] {
  // Two in three line up exactly or miss by a hair: that is where geometry goes wrong.
  const job = randomJob(seed, (['free', 'exact', 'near'] as const)[seed % 3]!);
  return findFaults(job, seed, whole);
}

/** A file is refused in words, or its job keeps what is promised of every job. */
function fileFaults(seed: number): string[] {
  const { job, faults } = readJobData(JSON.parse(JSON.stringify(randomFile(seed))));
  if (job !== null) return reportFaults(evaluate(job));
  return faults.length > 0 && faults.every(({ message }) => message !== '') ? [] : ['neither a job nor a fault'];
}

/** What is wrong with a job's report, or with its joint alone, scan lines included: its profiles are named shapes. */
export function findFaults(job: Job, seed: number, whole = true): string[] {
  const report = whole ? evaluate(job) : evaluateJoint(job);
  return [...reportFaults(report), ...scanLineFaults(job, report, seed)];
}

function reportFaults({ section }: Report): string[] {
  const faults: string[] = [];
  const stock = section.width * section.thickness;

  const figures = [
    section.removedArea,
    ...section.cuts.flatMap((c) => [c.removedArea, c.sharedArea, c.takenFromDrawing]),
  ];
  if (figures.some((n) => !Number.isFinite(n) || n < 0)) faults.push('a figure is no number');
  const outline = pathArea(section.outline);
  if (!outline.finite) faults.push('outline has what is no number');
  if (!outline.closed) faults.push('outline does not close');
  // The outline is written to 1e-9 mm, so its area is good to that times its length.
  const left = stock - section.removedArea;
  if (Math.abs(outline.area - left) > 1e-9 * stock + 3e-7 + outline.slack)
    faults.push(`outline holds ${outline.area}, wood left ${left}`);
  const taken = section.cuts.reduce((sum, c) => sum + c.removedArea - c.sharedArea, 0);
  if (Math.abs(taken - section.removedArea) > 1e-9 * stock)
    faults.push(`cuts take ${taken}, section lost ${section.removedArea}`);
  return faults;
}

/** From the shapes' definitions: the tongue's surfaces at a few places, and so the groove it needs at least. */
function scanLineFaults(job: Job, { tongue, fit }: Report, seed: number): string[] {
  const faults: string[] = [];
  const random = new Random(seed ^ 0x5bd1e995);
  let front = Number.NEGATIVE_INFINITY;
  let back = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 12; i++) {
    const at = surfacesAt(job, i === 0 ? 0 : random.between(0, tongue.insertion));
    if (at === null) {
      if (fit.verdict !== null) faults.push('no wood on a scan line, yet there is a tongue');
      return faults;
    }
    front = Math.max(front, at.top);
    back = Math.min(back, at.bottom);
  }
  if (tongue.grooveNeeded !== null && tongue.grooveNeeded < front - back - 1e-9) {
    faults.push(`needs a groove of ${tongue.grooveNeeded}, scan lines ${front - back}`);
  }
  if (tongue.thicknessAtTip !== null) {
    // A surface that leaves the edge upright has many thicknesses within a hair of it: any of those will do.
    const hair = [0, 1e-9].map((x) => surfacesAt(job, x)!).map(({ top, bottom }) => top - bottom);
    const off = Math.max(Math.min(...hair) - tongue.thicknessAtTip, tongue.thicknessAtTip - Math.max(...hair));
    if (off > 1e-9) faults.push(`tip ${tongue.thicknessAtTip}, scan lines ${hair}`);
  }
  return faults;
}
