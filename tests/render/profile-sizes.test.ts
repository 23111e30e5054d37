// Radii and slopes of the shapes by their published construction (an arc through two points tangent to a line: the chord
// theorem, r = (run² + rise²)/(2·rise)), held against what the cuts view shows.
import { evaluate, formatNumber, type NamedProfile } from '@fielded/core';
import { scene } from '@fielded/render';
import { expect, test } from 'vitest';
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
});
