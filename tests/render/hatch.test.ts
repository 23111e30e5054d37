import { readLoops } from '@fielded/geometry';
import { expect, test } from 'vitest';
import { hatchLoops } from '../../packages/render/src/geometry/hatch.ts';

const lengthOf = (strokes: ReturnType<typeof hatchLoops>) =>
  strokes.reduce((sum, s) => sum + Math.hypot(s.x1 - s.x0, s.y1 - s.y0), 0);

/** Fine hatching sums up to the area: what the strokes cover is length times spacing (Cavalieri's principle). */
test.each([
  ['square', 'M0 0L10 0L10 10L0 10Z', 100],
  ['disc of radius 10', 'M-10 0A10 10 0 0 1 10 0A10 10 0 0 1 -10 0Z', Math.PI * 100],
  ['square with a round hole', 'M0 0L20 0L20 20L0 20ZM5 10A5 5 0 1 1 15 10A5 5 0 1 1 5 10Z', 400 - Math.PI * 25],
  ['quarter-circle spandrel', 'M0 0L10 0A10 10 0 0 0 0 10Z', 100 - (Math.PI * 100) / 4],
  ['three quarters of a disc', 'M0 0L10 0A10 10 0 1 1 0 -10Z', (3 * Math.PI * 100) / 4],
])('hatch of a %s covers its area', (_, data, area) => {
  for (const rising of [true, false]) {
    const covered = lengthOf(hatchLoops(readLoops(data), 0.01, rising)) * 0.01;
    expect(Math.abs(covered - area)).toBeLessThan(0.2);
  }
});

test('strokes run at 45°, one way or the other, and end on the boundary', () => {
  const disc = readLoops('M-10 0A10 10 0 0 1 10 0A10 10 0 0 1 -10 0Z');
  for (const rising of [true, false]) {
    const strokes = hatchLoops(disc, 1.8, rising);
    expect(strokes.length).toBe(11);
    for (const { x0, y0, x1, y1 } of strokes) {
      expect((x1 - x0) / (y1 - y0)).toBeCloseTo(rising ? -1 : 1, 12);
      expect(Math.hypot(x0, y0)).toBeCloseTo(10, 9);
      expect(Math.hypot(x1, y1)).toBeCloseTo(10, 9);
    }
  }
});

test('a line through a corner or along a touching arc neither doubles nor drops a stroke', () => {
  // Hatch lines pass exactly through two corners of this square, and touch the disc at its 45° points.
  const spacing = Math.SQRT2;
  const square = hatchLoops(readLoops('M0 0L4 0L4 4L0 4Z'), spacing, true);
  expect(
    square.map(({ x0, y0, x1, y1 }) => Math.hypot(x1 - x0, y1 - y0)).map((n) => Math.round(n / Math.SQRT2)),
  ).toEqual([2, 4, 2]);
  const r = 4 * spacing;
  const disc = hatchLoops(readLoops(`M${-r} 0A${r} ${r} 0 0 1 ${r} 0A${r} ${r} 0 0 1 ${-r} 0Z`), spacing, true);
  expect(disc.length).toBe(7);
});

test('no spacing is refused', () => {
  for (const spacing of [0, -1, Number.NaN]) expect(() => hatchLoops([], spacing, true)).toThrow(RangeError);
});
