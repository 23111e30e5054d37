// Contrast by the formula of WCAG 2.2 (relative luminance, success criterion 1.4.3): text at least 4.5 to 1.
import { evaluate } from '@fielded/core';
import { PALETTES, scene, scenesToHtml } from '@fielded/render';
import { expect, test } from 'vitest';
import { verdictMark } from '../../packages/render/src/words/verdict-mark.ts';
import { JOBS } from './jobs-to-draw.ts';

function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((p, q) => q - p);
  return (light! + 0.05) / (dark! + 0.05);
}

test('the formula gives the known ends of its scale', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

test.each(Object.entries(PALETTES))('%s: every text can be read on paper and on removed wood', (_, palette) => {
  for (const ground of [palette.paper, palette.removed])
    for (const text of [palette.ink, palette.quiet, palette.judged, palette.trouble])
      expect(contrast(text, ground)).toBeGreaterThanOrEqual(4.5);
});

test('each verdict has a mark of its own shape', () => {
  const verdicts = ['will-not-enter', 'stops-short', 'tight', 'sliding', 'loose', null] as const;
  const shapes = verdicts.map((verdict) => JSON.stringify(verdictMark(verdict, 0, 0).loops));
  expect(new Set(shapes).size).toBe(verdicts.length);
});

test('ten drawings in one page: nothing has an id, and each has its title and its description', () => {
  const scenes = Object.values(JOBS).flatMap((job) => [
    scene(evaluate(job), { view: 'joint' }),
    scene(evaluate(job), { view: 'cuts' }),
  ]);
  const html = scenesToHtml(scenes.slice(0, 10));
  expect(html).not.toMatch(/\s(id|class)=|<script|<link|url\(/);
  expect(html.match(/<figure/g)).toHaveLength(10);
  for (const { title } of scenes.slice(0, 10)) {
    expect(html).toContain(`aria-label="${title}"`);
    expect(html).toContain(`<b>${title}</b>`);
  }
  expect(html).toContain('Depth of raise: 9 mm.');
});

test('a piece for another page says nothing about its paper; a sheet that fills its paper does', () => {
  const [drawing] = [scene(evaluate(JOBS['ogee and cove']!), { view: 'joint' })];
  expect(scenesToHtml([drawing])).not.toContain('@page');
  expect(scenesToHtml([{ ...drawing, width: 210, height: 297 }], { fillsPaper: true })).toContain(
    '@page{size:210mm 297mm;margin:0}',
  );
});
