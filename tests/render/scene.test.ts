import type { Report } from '@fielded/core';
import { evaluate, formatLength, verdictSentence } from '@fielded/core';
import { draw, scene, viewsOf } from '@fielded/render';
import { describe, expect, test } from 'vitest';
import { JOBS, job } from './jobs-to-draw.ts';
import { dimensionTexts } from './layout-faults.ts';

const VIEWS = ['section', 'joint'] as const;
const door = { name: 'A', quantity: 1, width: 396, height: 716, stile: 60, rail: 60, across: 1, up: 1, muntin: 0 };

/** The value that a dimension names, looked up in the report, where a cut's settings stand under its section. */
function valueIn(report: Report, of: string): unknown {
  const path = of.replace(/^cuts\[/, 'section.cuts[').replace('.profile.', '.');
  return path
    .split(/[.[\]]+/)
    .filter(Boolean)
    .reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], report);
}

describe('every dimension shows the figure of the report that it names', () => {
  for (const [name, drawn] of Object.entries(JOBS)) {
    const report = evaluate({ ...drawn, doors: [door] });
    for (const view of viewsOf(report)) {
      test(`${view}: ${name}`, () => {
        const dimensions = dimensionTexts(scene(report, { view }));
        expect(dimensions.length).toBeGreaterThan(1);
        for (const { of, value, texts } of dimensions) {
          // Radii and slopes are read off the drawn profile: profile-sizes.test.ts holds them to the shapes' formulas.
          if (of.endsWith('.drawn')) continue;
          const half = of.endsWith(' / 2');
          const told = valueIn(report, of.replace(' / 2', '')) as number;
          expect(half ? told / 2 : told, of).toBeCloseTo(value, 9);
          const [main, under] = texts;
          const shown = under === undefined ? main : `${main} (${under})`;
          expect(shown, of).toBe(formatLength(value, report.units).replaceAll(` ${report.units}`, ''));
        }
      });
    }
  }
});

describe('other units', () => {
  const report = evaluate(job());
  const reachIn = (units: 'mm' | 'in' | 'both') =>
    dimensionTexts(scene(report, { view: 'section', units })).find(({ of }) => of === 'cuts[0].reach')?.texts;

  test('inches instead of millimetres', () => expect(reachIn('in')).toEqual(['≈1-1/2', '1.4961']));
  test('both, the other one under the line', () => expect(reachIn('both')).toEqual(['38', '≈1-1/2 in']));
  test('the unit is stated', () => {
    expect(draw(report, { view: 'joint', units: 'both' })).toContain('millimetres, inches under the line');
    expect(draw(report, { view: 'joint', units: 'in' })).toContain('inches, ≈ where rounded to 1/64');
  });
});

test('the sizes that decide a joint are all there', () => {
  const report = evaluate(job());
  const of = VIEWS.flatMap((view) => dimensionTexts(scene(report, { view })).map((dimension) => dimension.of));
  for (const wanted of [
    'panel.thickness',
    'cuts[0].depth',
    'cuts[1].depth',
    'cuts[0].reach',
    'cuts[1].reach',
    'cuts[0].profile.land',
    'cuts[0].profile.shoulder',
    'tongue.thicknessAtTip',
    'frame.groove.width',
    'frame.groove.depth',
    'frame.groove.setback',
    'tongue.insertion',
    'frame.swellGap',
    'fit.clearance',
    'fit.visibleMargin',
    'frame.thickness',
  ])
    expect(of).toContain(wanted);
});

test('a measured thickness is shown as measured, with the depth that came of it', () => {
  const report = evaluate(job({ panel: { thickness: 20, measured: 20.3, sawn: 'flat' } }));
  const shown = dimensionTexts(scene(report, { view: 'section' }));
  expect(shown.find(({ of }) => of === 'panel.measured')?.texts).toEqual(['20.3']);
  expect(shown.find(({ of }) => of === 'section.cuts[1].depthCut')?.texts).toEqual(['5.1']);
  expect(shown.some(({ of }) => of === 'cuts[1].depth')).toBe(false);
});

test('a report read back from JSON draws the same bytes, and so does drawing twice', () => {
  for (const drawn of Object.values(JOBS)) {
    const report = evaluate(drawn);
    for (const view of VIEWS) {
      const once = draw(report, { view });
      expect(draw(JSON.parse(JSON.stringify(report)) as Report, { view })).toBe(once);
      expect(draw(report, { view })).toBe(once);
    }
  }
});

test('siblings have different keys, so that a page can keep elements by them', () => {
  const visit = (items: ReturnType<typeof scene>['items']): void => {
    const keys = items.map(({ key }) => key);
    expect(new Set(keys).size, keys.join(' ')).toBe(keys.length);
    for (const item of items) if (item.kind === 'group') visit(item.items);
  };
  for (const drawn of Object.values(JOBS)) for (const view of VIEWS) visit(scene(evaluate(drawn), { view }).items);
});

describe('the verdict stands on the drawing in words, and again for those who cannot see it', () => {
  test.each([
    ['ogee and cove', 'Sliding', 'with 0.2 mm to spare'],
    ['too thick to enter', 'Will not enter', 'its tip is 11 mm thick and the groove 6.4 mm wide'],
    ['loose with sticking', 'Loose', '1 mm to spare'],
    ['cuts that meet', 'No tongue', 'leave no tongue'],
    ['bevel that wedges', 'Stops short', 'stops at 3.49 mm: it wedges'],
  ])('%s', (name, word, sentence) => {
    const report = evaluate(JOBS[name]!);
    const { description } = scene(report, { view: 'joint' });
    expect(description.startsWith(`${word}. ${verdictSentence(report)}`)).toBe(true);
    expect(description).toContain(sentence);
    expect(draw(report, { view: 'joint' })).toContain(`>${word}</text>`);
  });
});

test('scales of nothing or less are refused', () => {
  const report = evaluate(job());
  for (const scale of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(() => scene(report, { view: 'joint', scale })).toThrow(RangeError);
  }
});

test('a view that there is not is refused by name', () => {
  expect(() => scene(evaluate(job()), { view: 'sheet' as 'joint' })).toThrow(
    new RangeError('there is no view sheet: take section, joint, detail, cuts, corner, panel, door'),
  );
});
