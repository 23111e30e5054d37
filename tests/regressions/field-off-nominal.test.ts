// A cut that is set less deep than its profile is drawn leaves the face before its reach: the field begins there, as the margin ends there.
import { evaluate, readJob, templateOutline } from '@fielded/core';
import { makeTemplate } from '@fielded/render';
import { expect, it } from 'vitest';
import { sketchPanel } from '../../packages/render/src/views/panel.ts';

const SIZES = { stile: 60, rail: 60, height: 700 };
const DOORS = [
  { name: 'plain', width: 400, ...SIZES },
  { name: 'narrow', width: 170, ...SIZES },
  { name: 'arched', width: 400, ...SIZES, head: { shape: 'arch', rise: 40 } },
];

function reportOf(depth: number, endGap = 2) {
  const raise = { name: 'raise', side: 'front', profile: { shape: 'bevel', reach: 38, depth: 9, land: 11 }, depth };
  const back = { name: 'back', side: 'back', profile: { shape: 'rebate', reach: 14, depth: 4.8 } };
  const { job } = readJob(
    JSON.stringify({
      fielded: 1,
      panel: { thickness: 20 },
      frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2, endGap },
      cuts: [raise, back],
      doors: DOORS,
    }),
  );
  return evaluate(job!);
}

it('the field of a bevel of 9 mm set 5 mm deep begins 11 + 27 · 5/9 = 26 mm in, and not at its reach of 38', () => {
  const report = reportOf(5);
  const [plain, narrow, arched] = report.doors!;
  expect(report.section.cuts[0]!.faceEnd).toBeCloseTo(26, 9);
  // Openings of 280 × 580, 9 mm in the groove all round.
  expect(plain!.panels[0]!.field!.width).toBeCloseTo(298 - 52, 9);
  expect(plain!.panels[0]!.field!.height).toBeCloseTo(598 - 52, 9);
  // 68 mm of panel keep a field of 16 mm: the raises do not meet.
  expect(narrow!.panels[0]!.field!.width).toBeCloseTo(16, 9);
  expect(report.problems.map(({ code }) => code)).not.toContain('raises-meet');
  // An arch of 280 and 40 has a radius of (140² + 40²)/80 = 265; its field lies 26 − 9 within it.
  expect((arched!.head!.field as { radius: number }).radius).toBeCloseTo(265 + 9 - 26, 9);
  expect(makeTemplate(report, arched!, 'field')!.outline).toEqual(
    templateOutline(arched!, 'field', report.section.cuts[0]!.faceEnd!),
  );
});

it('set as deep as it is drawn, the field begins at its reach', () => {
  const report = reportOf(9);
  expect(report.section.cuts[0]!.faceEnd).toBe(38);
  expect(report.doors![0]!.panels[0]!.field).toEqual({ width: 298 - 76, height: 598 - 76 });
  expect(report.problems.map(({ code }) => code)).toContain('raises-meet');
});

it('the margin is dimensioned where it shows, beside the panel where its ends go in less far', () => {
  const tier = sketchPanel(reportOf(5, 6), 1, 0).tiers.find(({ key }) => key === 'fit.visibleMargin')!;
  expect(tier.side).toBe('above');
  expect(tier.from.x).toBe(9);
  expect(tier.to.x).toBeCloseTo(26, 9);
});
