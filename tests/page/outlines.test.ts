// Outlines of one's own: drawn by hand on the sheet, and brought in with the files that name them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJobData } from '../../packages/core/src/index.ts';
import { readDoc } from '../../packages/page/src/desk/doc.ts';
import { openFiles } from '../../packages/page/src/files/open-text.ts';
import { putOutlinesIn } from '../../packages/page/src/files/outline-files.ts';
import { setAt } from '../../packages/page/src/job/data.ts';
import { EXAMPLE } from '../../packages/page/src/job/start.ts';
import {
  type DrawnPoint,
  drawnPath,
  GRIDS,
  lacksOf,
  movePoint,
  removePoint,
  snapPoint,
} from '../../packages/page/src/panels/outline/drawn-outline.ts';

const draw = (...given: readonly (readonly [number, number, DrawnPoint['by']])[]): DrawnPoint[] => {
  const points: DrawnPoint[] = [];
  for (const [x, y, by] of given) points.push(snapPoint(points, x, y, by));
  return points;
};

describe('an outline drawn by hand', () => {
  it('starts at the edge, and arcs go on as the outline was going', () => {
    const points = draw([3, 5.1, 'line'], [9.1, 5.3, 'line'], [14, 0, 'arc']);
    expect(points[0]).toEqual({ x: 0, y: 5, by: 'line' });
    expect(drawnPath(points)).toBe('M 0 5 L 9 5 A 5 5 0 0 0 14 0');
    expect(lacksOf(points)).toBeNull();
    expect(lacksOf(points.slice(0, 2))).toMatch(/face/);
    expect(lacksOf([])).toMatch(/edge/);
  });

  it('makes an ogee of two arcs that run into each other, worked out by hand', () => {
    // Two quarter circles of 4 mm: from level up to plumb half way, and back to level.
    const points = draw([0, 8, 'line'], [6, 8, 'line'], [10, 4, 'arc'], [14, 0, 'arc']);
    expect(drawnPath(points)).toBe('M 0 8 L 6 8 A 4 4 0 0 0 10 4 A 4 4 0 0 1 14 0');
  });

  it('snaps a line that nearly goes on from an arc to its tangent', () => {
    const arc = draw([0, 6, 'line'], [4, 6, 'line'], [9, 4, 'arc']);
    // 29 by 4: the arc of radius 7.25 has turned by 2·atan(2/5) = 43.6°, and leaves with slope 20/21.
    const [, , , end] = [...arc, snapPoint(arc, 12, 1.1, 'line')];
    expect((4 - end!.y) / (end!.x - 9)).toBeCloseTo(20 / 21, 9);
  });

  it('ends an arc exactly plumb where it nearly does, and draws on the grid of inches', () => {
    // Off level from (0, 6): a quarter circle meant to end plumb at (9, 0), the hand half a millimetre off.
    const points = draw([0, 6, 'line'], [3, 6, 'line'], [9.2, 0.1, 'arc']);
    expect(drawnPath(points)).toBe('M 0 6 L 3 6 A 6 6 0 0 0 9 0');
    const { x, y } = snapPoint([], 0, 5, 'line', GRIDS.in);
    expect(x).toBe(0);
    expect((y / 25.4) * 32).toBeCloseTo(6, 9);
  });

  it('moves a point on the grid or finely, and an arc after it goes on touching the line before', () => {
    const points = draw([0, 6, 'line'], [3, 6, 'line'], [9, 0, 'arc']);
    // 1 mm further in: the quarter circle has become one through (9, 0) that sets off level at 4, of radius 61/12.
    const moved = movePoint(points, 1, 4.2, 6.1, GRIDS.mm);
    expect(drawnPath(moved)).toBe('M 0 6 L 4 6 A 5.083333 5.083333 0 0 0 9 0');
    expect(movePoint(points, 2, 9.26, 0.14, 0.1)[2]).toEqual({ x: 9.3, y: 0.1, by: 'arc' });
    // The first point stays on the edge, whichever it is.
    expect(movePoint(points, 0, 2, 7.04, 0.1)[0]).toEqual({ x: 0, y: 7, by: 'line' });
    expect(removePoint(points, 0)[0]).toEqual({ x: 0, y: 6, by: 'line' });
  });

  it('reads as a job whatever is drawn, or is refused in words', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 0, max: 50, noNaN: true }),
            fc.double({ min: 0, max: 15, noNaN: true }),
            fc.constantFrom('line', 'arc'),
          ),
          { minLength: 1, maxLength: 7 },
        ),
        (given) => {
          const points = draw(...(given as [number, number, DrawnPoint['by']][]), [50, 0, 'line']);
          const data = setAt(EXAMPLE, 'cuts[0].profile', { shape: 'outline', path: drawnPath(points) });
          const { job, faults } = readJobData(data);
          expect(job !== null || faults.every(({ message }) => message.length > 10)).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('files that belong together', () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="10mm" viewBox="0 0 40 10"><path d="M0 8H12L34 1V0"/></svg>';
  const job = (units: string, extra = '') =>
    `fielded: 1\nunits: ${units}\n${extra}panel: { thickness: 20 mm }\nframe: { thickness: 22 mm, groove: { width: 6.4 mm, depth: 11 mm, setback: 7.5 mm }, swellGap: 2 mm }\ncuts:\n  - { side: front, profile: { shape: outline, file: shapes/thumb.svg } }\n`;

  it.each(['mm', 'in'])('are opened together: a job in %s has the outline in it from then on', async (units) => {
    const opened = await openFiles(
      [
        { name: 'thumb.svg', text: svg },
        { name: 'job.yaml', text: job(units) },
      ],
      readDoc,
    );
    if (!('doc' in opened)) throw new Error(opened.message + opened.lines.join());
    const { job: read, faults } = readJobData(opened.doc.data);
    expect(faults).toEqual([]);
    expect(read!.cuts[0]!.reach).toBeCloseTo(34, 4);
    expect(read!.cuts[0]!.depth).toBeCloseTo(8, 4);
  });

  it('say what is missing where one of them is', async () => {
    const opened = await openFiles([{ name: 'job.yaml', text: job('mm') }], readDoc);
    expect(opened).toMatchObject({ lines: [expect.stringContaining('drop their folder')] });
  });

  it('leave alone what names no drawing', () => {
    expect(putOutlinesIn(EXAMPLE, () => 'M 0 0')).toEqual(EXAMPLE);
  });
});
