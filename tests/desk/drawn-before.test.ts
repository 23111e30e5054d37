// What a drawing costs that is fitted into its room: no scale is drawn twice, and none that was drawn of the report before.
import { expect, it } from 'vitest';
import type { Report } from '../../packages/core/src/index.ts';
import { runToEnd } from '../../packages/core/src/index.ts';
import { keepDrawn } from '../../packages/page/src/stage/drawn-before.ts';
import { fitScale } from '../../packages/page/src/stage/framing.ts';

const [before, after] = [{}, {}] as [Report, Report];

it('a drawing of the same report from the same options is the one that was made', () => {
  const drawn = keepDrawn<object>();
  const draw = (report: Report, ...options: unknown[]) => drawn(report, options, () => ({}));
  const first = draw(before, 2, ['cuts[0].depth']);
  expect(draw(before, 2, ['cuts[0].depth'])).toBe(first);
  expect(draw(before, 2, ['cuts[0].reach'])).not.toBe(first);
  expect(draw(before, 2, null)).not.toBe(first);
  expect(draw(before, 2, ['cuts[0].depth'])).toBe(first);
  expect(draw(after, 2, ['cuts[0].depth'])).not.toBe(first);
  expect(draw(before, 2, ['cuts[0].depth'])).not.toBe(first);
});

it('keeps forty drawings at most', () => {
  const drawn = keepDrawn<object>();
  const draw = (scale: number) => drawn(before, scale, () => ({}));
  const first = draw(0);
  for (let scale = 1; scale < 40; scale++) draw(scale);
  expect(draw(0)).toBe(first);
  draw(40);
  expect(draw(0)).not.toBe(first);
});

it.each([
  ['that grows with its scale', (scale: number) => 40 * scale + 46, 120, 2],
  ['whose texts make it swing from too large to too small', (scale: number) => (scale < 1.5 ? 30 : 500), 120, 2],
  ['that no scale fits', (scale: number) => 300 + scale, 120, 2],
])('fits a drawing %s without drawing a scale twice, in four drawings at most', (_, size, room, start) => {
  const scales: number[] = [];
  const draw = (scale: number) => {
    scales.push(scale);
    return { width: size(scale), height: 10, scale, title: '', description: '', items: [] };
  };
  const fitted = runToEnd(fitScale(draw, { width: room, height: 100 }, start));
  expect(new Set(scales).size).toBe(scales.length);
  expect(scales.length).toBeLessThanOrEqual(4);
  expect(fitted.scene.width).toBe(size(fitted.scale));
  // The largest that fits of those drawn, or else the nearest.
  const fits = scales.filter((scale) => size(scale) <= room);
  if (fits.length > 0) expect(fitted.scale).toBe(Math.max(...fits));
});
