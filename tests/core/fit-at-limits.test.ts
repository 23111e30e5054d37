// The verdict where the clearance lies on a limit: a limit that is met holds, whatever rounding does to the last digit.
import { line } from '@fielded/geometry';
import { expect, it } from 'vitest';
import { fitTongue, judgeTongue, measureTongue } from '../../packages/core/src/joint/fit.ts';
import type { Frame } from '../../packages/core/src/joint/frame.ts';
import type { Tongue } from '../../packages/core/src/joint/tongue.ts';

const frame: Frame = { thickness: 24, groove: { width: 6.35, depth: 11, setback: 7 }, swellGap: 2 };
const limits = { target: 0.2, snug: 0.1, loose: 0.5 };

it.each([
  [6.25 + 1e-6, 'tight'],
  [6.25, 'sliding'],
  [6.25 - 1e-6, 'sliding'],
  [5.85 + 1e-6, 'sliding'],
  [5.85, 'sliding'],
  [5.85 - 1e-6, 'loose'],
  [6.35, 'tight'],
] as const)('a tongue %d thick in a groove 6.35 wide, snug from 0.1 and loose beyond 0.5, is %s', (thick, verdict) => {
  const tongue: Tongue = [{ x0: 0, x1: 20, front: line(0, 11 + thick, 20, 11 + thick), back: line(0, 11, 20, 11) }];
  const { need } = measureTongue(tongue, 9);
  const fit = fitTongue(tongue, need, frame, limits, 24, 38);
  expect(fit.verdict).toBe(verdict);
  expect(judgeTongue(tongue, need, frame, limits)).toBe(verdict);
  expect(fit.clearance).toBeCloseTo(6.35 - thick, 12);
});
