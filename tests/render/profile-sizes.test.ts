// Radii and slopes of the shapes by their published construction (an arc through two points tangent to a line: the chord
// theorem, r = (run² + rise²)/(2·rise)), held against what the cuts view shows.
import { evaluate, formatNumber, type NamedProfile, readJobData } from '@fielded/core';
import { scene, sheets } from '@fielded/render';
import { expect, test } from 'vitest';
import { textWidth, wrapTitle } from '../../packages/render/src/text/measure-text.ts';
import { choosePoints } from '../../packages/render/src/views/chosen-points.ts';
import { cut, job, profile } from './jobs-to-draw.ts';
import { dimensionTexts, layoutFaults } from './layout-faults.ts';

const sizes = { reach: 30, depth: 9, land: 10, shoulder: 1 };
const [run, rise] = [20, 8];
const whole = (run ** 2 + rise ** 2) / (2 * rise);

function derived(shape: NamedProfile['shape'], more: Partial<NamedProfile> = {}, tilt = 0): string[] {
  const cuts = [cut('raise', 'front', profile(shape, { ...sizes, ...more }), { tilt })];
  const shown = dimensionTexts(scene(evaluate(job({ cuts })), { view: 'cuts' }));
  return shown.filter(({ of }) => of === 'section.cuts[0].drawn').map(({ texts }) => texts[0]!);
}

test.each([
  ['rebate', { land: 0, shoulder: 0 }, []],
  ['bevel', {}, [`${formatNumber((Math.atan2(rise, run) * 180) / Math.PI, 1)}°`]],
  ['cove', {}, [`R ${formatNumber(whole, 2)}`]],
  ['ovolo', {}, [`R ${formatNumber(whole, 2)}`]],
  ['ogee', { balance: 0.25 }, [`R ${formatNumber(whole * 0.25, 2)}`, `R ${formatNumber(whole * 0.75, 2)}`]],
] as const)('%s', (shape, more, expected) => {
  expect(derived(shape, more)).toEqual(expected);
  expect(derived(shape, more, Math.PI / 2)).toEqual(expected);
});

test('every size that defines a shape is there', () => {
  const report = evaluate(job({ cuts: [cut('raise', 'front', profile('ogee', sizes))] }));
  const of = dimensionTexts(scene(report, { view: 'cuts' })).map((dimension) => dimension.of);
  for (const size of ['depth', 'reach', 'profile.land', 'profile.shoulder']) expect(of).toContain(`cuts[0].${size}`);
});

test('cuts stand in as many columns as wide paper has room for, each as large as before and clear of the others', () => {
  const cuts = ['raise', 'quirk', 'relief'].map((name) => cut(name, 'front', profile('ogee', sizes)));
  const report = evaluate(job({ cuts }));
  const one = scene(report, { view: 'cuts', scale: 2, bare: true });
  const wide = scene(report, { view: 'cuts', scale: 2, bare: true, across: one.width * 2.3 });
  expect(wide.width).toBeGreaterThan(one.width * 1.8);
  expect(wide.width).toBeLessThanOrEqual(one.width * 2.3 + 16);
  expect(wide.height).toBeLessThan(one.height * 0.75);
  expect(layoutFaults(wide)).toEqual([]);
  expect(scene(report, { view: 'cuts', scale: 2, bare: true, across: 10 })).toEqual(one);
  // Four where three have room stand two by two.
  const four = evaluate(job({ cuts: [...cuts, cut('chamfer', 'front', profile('ogee', sizes))] }));
  const even = scene(four, { view: 'cuts', scale: 2, bare: true, across: one.width * 3.5 });
  expect(even.width).toBeLessThan(one.width * 2.4);
  expect(even.height).toBeLessThan(one.height);
});

test('a radius that ends in half a hundredth is rounded alike at every scale', () => {
  const ogee = profile('ogee', { reach: 38, depth: 9, land: 11, shoulder: 1.5 });
  const report = evaluate(job({ cuts: [cut('raise', 'front', ogee)] }));
  const told = Array.from({ length: 30 }, (_, i) => scene(report, { view: 'cuts', scale: 1 + i / 20, bare: true }));
  const radii = told.flatMap((drawn) =>
    dimensionTexts(drawn).flatMap(({ texts }) => texts.filter((t) => /R \d/.test(t))),
  );
  // (27² + 7.5²)/(4·7.5) = 26.175 mm
  expect(new Set(radii)).toEqual(new Set(['2× R 26.18']));
});

test('of an outline of very many pieces the corners are given that lie farthest off the rest, and how many there are', () => {
  // A wave of 120 chords: its crests and hollows, where a chord across them is worst, say most.
  const wave = Array.from({ length: 121 }, (_, i) => ({ x: i / 3, y: 5 + 2 * Math.sin(i / 6) }));
  const given = choosePoints(wave, 12).map((i) => wave[i]!);
  expect(given).toHaveLength(12);
  expect([given[0], given.at(-1)]).toEqual([wave[0], wave.at(-1)]);
  const farthest = (line: typeof wave) =>
    Math.max(
      ...wave.map(({ x, y }) => {
        const k = Math.max(
          1,
          line.findIndex((point) => point.x >= x),
        );
        const [a, b] = [line[k - 1]!, line[k]!];
        return Math.abs(a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x) - y);
      }),
    );
  // The line through the twelve keeps closer to the wave than one through as many evenly apart.
  const even = Array.from({ length: 12 }, (_, i) => wave[Math.round((i * 120) / 11)]!);
  expect(farthest(given)).toBeLessThan(farthest(even));
  expect(choosePoints(wave.slice(0, 12), 12)).toEqual([...Array(12).keys()]);

  const path = `M 0 9 L 12 9 ${wave.map(({ x, y }) => `L ${(12 + x * 0.6).toFixed(3)} ${(y * 0.9).toFixed(3)}`).join(' ')} L 36 0`;
  const { job: read } = readJobData({
    fielded: 1,
    panel: { thickness: 20 },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts: [{ name: 'raise', side: 'front', profile: { shape: 'outline', path } }],
  });
  const report = evaluate(read!);
  const drawn = scene(report, { view: 'cuts' });
  expect(drawn.width).toBeLessThan(250);
  expect(layoutFaults(drawn)).toEqual([]);
  expect(JSON.stringify(drawn)).toMatch(/Sized at 12 of its 12\d corners/);
  expect(sheets(report, { view: 'sheet', paper: 'a4' }).length).toBeGreaterThan(0);
});

test('a title of up to three lines never loses its scale', () => {
  expect(wrapTitle('Panel', '1:10', 3.5, 60)).toEqual(['Panel  1:10']);
  const long = wrapTitle(`Panel of the door ${'of the scullery and '.repeat(9)}the pantry`, '1:10', 3.5, 60);
  expect(long).toHaveLength(3);
  expect(long[2]).toMatch(/… {2}1:10$/);
  for (const line of long) expect(textWidth(line, 3.5)).toBeLessThanOrEqual(60);
});
