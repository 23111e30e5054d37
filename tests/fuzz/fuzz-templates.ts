import { type DoorReport, evaluate, readJob, type TemplatePart, templateOutline } from '@fielded/core';
import { readDxf, writeDxf } from '@fielded/exchange';
import { Random } from '../support/random.ts';
import { awayFrom, type DxfPiece, dxfPieces, pointsAlong, widestGap } from './dxf-pieces.ts';
import type { Finding } from './fuzz-jobs.ts';
import { judgeCase, refusedInWords } from './judge-case.ts';
import { jobWithDoors, randomHead, sizeOf } from './random-doors.ts';

/** DXF templates of shaped doors: closed, as large as they should be, the panel and its field as far from the sight edge as they should be. */
export function fuzzTemplates(seed: number): Finding[] {
  return judgeCase(seed, () => {
    const random = new Random(seed);
    const [width, height, stile] = [sizeOf(random, 160, 1200), sizeOf(random, 260, 2300), sizeOf(random, 20, 70)];
    const wide = random.unit() < 0.03 ? 10_000 : width;
    const door = {
      width: wide,
      height,
      stile,
      rail: sizeOf(random, 20, 110),
      head: randomHead(random, wide - 2 * stile),
    };
    const { job, faults } = readJob(JSON.stringify(jobWithDoors(random, [door], false)));
    if (job === null) return refusedInWords(faults);
    const report = evaluate(job).doors![0]!;
    const reach = Math.max(...job.cuts.filter(({ side }) => side === 'front').map((cut) => cut.reach));
    return (['rail', 'panel', 'field'] as const).flatMap((part) => {
      const written = writeTemplate(report, part, reach);
      return written === null ? [] : templateFaults(report, part, reach, written).map((what) => `${part}: ${what}`);
    });
  });
}

/** null where nothing of the part is left, which is refused by name. */
function writeTemplate(report: DoorReport, part: TemplatePart, reach: number): string | null {
  try {
    return writeDxf([{ name: part.toUpperCase(), chains: [templateOutline(report, part, reach)] }]);
  } catch (error) {
    if (error instanceof RangeError && part !== 'rail') return null;
    throw error;
  }
}

const SAME = 1e-6;

function templateFaults(door: DoorReport, part: TemplatePart, reach: number, text: string): string[] {
  const faults: string[] = [];
  const pieces = dxfPieces(text);
  if (pieces.length < 3) return ['no outline'];
  const gap = widestGap(pieces);
  if (!(gap < SAME)) faults.push(`ends lie ${gap} apart`);
  const { outlines, leftOut } = readDxf(text, 1e-5);
  if (outlines.length !== 1 || leftOut.length > 0) faults.push(`read back as ${outlines.length} outlines`);
  const points = pointsAlong(pieces, 12);
  const box = { wide: spread(points.map(({ x }) => x)), tall: spread(points.map(({ y }) => y)) };
  const wanted = sizesOf(door, part, reach);
  // A field whose ears have run out may be lower than its rectangle.
  if (part !== 'field' && Math.abs(box.wide - wanted.width) > SAME)
    faults.push(`${box.wide} wide, should be ${wanted.width}`);
  if (part !== 'field' && Math.abs(box.tall - wanted.height) > 1e-6)
    faults.push(`${box.tall} high, should be ${wanted.height}`);
  return [...faults, ...(part === 'field' ? fieldFaults(door, reach, pieces) : [])];
}

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

function sizesOf({ panel, panels, parts, topRail, head }: DoorReport, part: TemplatePart, reach: number) {
  if (part === 'panel') return panels.find(({ shaped }) => shaped)!;
  if (part === 'field') return { width: panel.width - 2 * reach, height: panel.height - 2 * reach };
  const rail = parts.find((each) => each.part === 'top rail')!;
  return { width: rail.length, height: topRail + head!.rise };
}

/** No point of the field is nearer to the panel's edge than the reach, and none of its round parts further in. */
function fieldFaults(door: DoorReport, reach: number, field: readonly DxfPiece[]): string[] {
  const edge = dxfPieces(writeDxf([{ name: 'PANEL', chains: [templateOutline(door, 'panel', reach)] }]));
  const away = pointsAlong(field, 12).map(({ x, y }) => awayFrom(edge, x, y));
  const least = Math.min(...away);
  const faults: string[] = [];
  // Where an arch of nearly half a circle springs, different gaps across and along the grain leave a ledge of their difference.
  const ledge = Math.abs(door.panel.width - door.opening.width - (door.panel.height - door.opening.height)) / 2;
  if (least < reach - ledge - 1e-5) faults.push(`${least} from the edge, should be ${reach}`);
  // Only beside a corner of the edge is its parallel further off than that.
  if (least > reach + 1e-5) faults.push(`nowhere nearer than ${least}, should be ${reach}`);
  return faults;
}
