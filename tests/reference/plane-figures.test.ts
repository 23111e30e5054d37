// Areas and centroids of plane figures against published formulas and worked examples: CRC Standard Mathematical Tables
// (circular segment, spandrel), and a handbook's worked example of a segment from its chord and height.
import type { BigNumber } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { profileChain, raiseRadius } from '../../packages/core/src/profile/chain.ts';
import { line } from '../../packages/geometry/src/curve/curve.ts';
import { type Piece, splitCurve } from '../../packages/geometry/src/curve/piece.ts';
import { addMoments, segmentArea } from '../../packages/geometry/src/strips/moments.ts';
import { arithmetic } from '../support/mathjs.ts';

/** The segment of a circle about the origin, its chord level, as the area between its arc and its chord. */
function segment(r: number, degrees: number): { area: number; height: number } {
  const half = ((degrees / 2) * Math.PI) / 180;
  const x = r * Math.sin(half);
  const y = r * Math.cos(half);
  const bow: Piece[] = [];
  const level: Piece[] = [];
  splitCurve({ x0: -x, y0: y, x1: x, y1: y, cx: 0, cy: 0, r, turn: -1 }, bow);
  splitCurve(line(-x, y, x, y), level);
  const sum = { area: 0, x: 0, y: 0 };
  const chord = { area: 0, x: 0, y: 0 };
  for (const p of bow) addMoments(sum, p, p.x0, p.x1);
  for (const p of level) addMoments(chord, p, p.x0, p.x1);
  return { area: sum.area - chord.area, height: (sum.y - chord.y) / (sum.area - chord.area) };
}

describe('circular segments (CRC formulas, r = 1)', () => {
  it.each([
    { degrees: 60, area: 0.09059, centroid: 0.91994 },
    { degrees: 90, area: 0.2854, centroid: 0.82587 },
    { degrees: 120, area: 0.61418, centroid: 0.70502 },
  ])('$degrees°', ({ degrees, area, centroid }) => {
    const s = segment(1, degrees);
    expect(s.area).toBeCloseTo(area, 5);
    expect(s.height).toBeCloseTo(centroid, 5);
    expect(segmentArea(2 * Math.sin((degrees * Math.PI) / 360), 1)).toBeCloseTo(area, 5);
  });

  it('chord 21, height 6: radius 12.1875, 118.97953°, area 89.254148 (handbook worked example)', () => {
    const r = (10.5 ** 2 + 6 ** 2) / (2 * 6);
    expect(r).toBe(12.1875);
    expect((2 * Math.asin(10.5 / r) * 180) / Math.PI).toBeCloseTo(118.97953, 5);
    expect(segmentArea(21, r)).toBeCloseTo(89.254148, 6);
  });

  it('keeps its digits for a bow of 1 µm in 100 mm (the parabola 2/3·chord·height, its limit)', () => {
    const height = 1e-3;
    const r = (50 ** 2 + height ** 2) / (2 * height);
    expect(segmentArea(100, r) / ((2 / 3) * 100 * height)).toBeCloseTo(1, 8);
  });

  it('is r²·(asin s − s·√(1 − s²)) to rounding, from flat to a half circle, in numbers of 64 digits (mathjs)', () => {
    const { bignumber, asin, multiply, subtract, sqrt, divide, pow } = arithmetic;
    for (const chord of [1e-6, 1e-3, 0.1, 0.4, 0.499, 0.5, 0.501, 0.7, 1, 1.5, 1.9, 1.99, 2]) {
      const s = divide(bignumber(chord), bignumber(2)) as BigNumber;
      const root = sqrt(subtract(bignumber(1), pow(s, bignumber(2)) as BigNumber) as BigNumber) as BigNumber;
      const exact = subtract(asin(s) as BigNumber, multiply(s, root) as BigNumber) as BigNumber;
      const off = divide(subtract(bignumber(segmentArea(chord, 1)), exact), exact) as BigNumber;
      expect(Math.abs(off.toNumber()), `chord ${chord}`).toBeLessThan(chord <= 0.5 ? 1e-15 : 6e-15);
    }
  });
});

describe('quarter circle, radius 10 (published: area 78.5398, centroid 4.2441 from each side)', () => {
  it('is what the strips’ integrals give', () => {
    const pieces: Piece[] = [];
    splitCurve({ x0: 0, y0: 10, x1: 10, y1: 0, cx: 0, cy: 0, r: 10, turn: -1 }, pieces);
    const sum = { area: 0, x: 0, y: 0 };
    for (const p of pieces) addMoments(sum, p, p.x0, p.x1);
    expect(sum.area).toBeCloseTo(78.5398, 4);
    expect(sum.x / sum.area).toBeCloseTo(4.2441, 4);
    expect(sum.y / sum.area).toBeCloseTo(4.2441, 4);
  });
});

describe('corner spandrel, the corner a quarter-circle cove takes', () => {
  it.each([1, 13])('radius %d: (1 − π/4)·r², centroid (10 − 3π)/(3(4 − π))·r from the sides it touches', (r) => {
    // Of the square at the panel's corner the cove's hollow leaves the spandrel: take the area above the arc, up to the face.
    const chain = profileChain({ shape: 'cove', reach: r, depth: r, land: 0, shoulder: 0, balance: 0.5 });
    expect(raiseRadius(r, r)).toBe(r);
    const pieces: Piece[] = [];
    for (const c of chain) splitCurve(c, pieces);
    const hollow = { area: 0, x: 0, y: 0 };
    for (const p of pieces) addMoments(hollow, p, p.x0, p.x1);
    // Depth grows downwards: the arc is the lower edge of a quarter disc, so the spandrel is the square less that.
    const area = r * r - hollow.area;
    expect(area).toBeCloseTo((1 - Math.PI / 4) * r * r, 10);
    if (r === 13) expect(area).toBeCloseTo(36.27, 2);
    const fromSide = ((10 - 3 * Math.PI) / (3 * (4 - Math.PI))) * r;
    expect(fromSide / r).toBeCloseTo(0.223368, 6);
    expect(r - (r ** 3 / 2 - hollow.x) / area).toBeCloseTo(fromSide, 9);
  });
});
