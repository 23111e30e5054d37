import { describe, expect, it } from 'vitest';
import { cuttingPoint, knifeFace, knifePoint, localRake } from '../../packages/core/src/knife/knife-face.ts';
import { DEGREE } from '../support/heads.ts';

/** Length of edge from the tip to what cuts `depth` shallower. */
function edgeLength(radius: number, rake: number, depth: number): number {
  return knifePoint(knifeFace({ cuttingDiameter: 2 * radius, rake: rake * DEGREE, shear: 0 }), 0, radius - depth).t;
}

describe('circular forming tools with the cutting face off centre', () => {
  // Machinery's Handbook, circular forming tools: r = √((√(R² − h²) − s)² + h²), s along the face. The standard tools' R
  // and h are from memory; the radii are recomputed from the formula and rounded to four places. Inches.
  const along = [0.001, 1 / 64, 1 / 16, 0.125];
  it.each([
    [0.875, 1 / 8, [0.874, 0.8595, 0.8132, 0.7515]],
    [1.125, 5 / 32, [1.124, 1.1095, 1.0631, 1.0014]],
    [1.5, 1 / 4, [1.499, 1.4846, 1.4384, 1.3769]],
  ])('R %f, face %f off centre', (radius, off, expected) => {
    const face = knifeFace({ cuttingDiameter: 2 * radius, rake: Math.asin(off / radius), shear: 0 });
    along.forEach((t, i) => {
      expect(Math.abs(cuttingPoint(face, { s: 0, t }).radius - expected[i]!)).toBeLessThanOrEqual(0.00005001);
    });
  });
});

describe('edge of a straight knife, as the cutting circle grows without end', () => {
  // J. Rose, Modern Machine-Shop Practice, figs 2181-2189: the section is drawn out by 1 / cos of the knife's slant.
  it.each([
    [30, '1.15470'],
    [45, '1.41421'],
  ])('%f°: length = depth / cos = %s', (rake, expected) => {
    expect(edgeLength(1e9, rake, 1)).toBeCloseTo(Number(expected), 5);
    expect(edgeLength(1e9, rake, 1)).toBeCloseTo(1 / Math.cos(rake * DEGREE), 6);
  });
});

describe('a square head, its knives bolted flat on the sides', () => {
  // J. Rose, Mechanical Drawing Self-Taught, figs 290-294: each member's place on the edge is found from its circle of
  // motion (there by construction, without figures; the figures are recomputed). Head 2 1/2 in square, so the face lies
  // 1 1/4 in off the axis; the first point of the moulding is cut 1 1/2 in along the face. Inches.
  it.each([
    [0.25, 0.3135],
    [0.5, 0.6101],
    [0.75, 0.8961],
    [1, 1.1749],
  ])('moulding %f in deep takes %f in of edge', (depth, expected) => {
    const innermost = Math.hypot(1.25, 1.5);
    const radius = innermost + depth;
    const rake = Math.asin(1.25 / radius) / DEGREE;
    expect(edgeLength(radius, rake, depth)).toBeCloseTo(expected, 4);
  });
});

describe('edge length for depth on three heads', () => {
  // Recomputed from the formula of circular forming tools, millimetres.
  it.each([
    [62.5, 12, [5.1218, 10.2678, 15.4462, 20.6695]],
    [62.5, 20, [5.3519, 10.7797, 16.3126, 21.9979]],
    [60, 25, [5.5725, 11.2853, 17.203, 23.4428]],
  ])('R %f at %f°', (radius, rake, expected) => {
    [5, 10, 15, 20].forEach((depth, i) => {
      expect(edgeLength(radius, rake, depth)).toBeCloseTo(expected[i]!, 4);
    });
  });

  it.each([
    [62.5, 20, 30.197],
    [60, 25, 39.34],
  ])('rake 20 mm in from the tip, R %f at %f°: %f°', (radius, rake, expected) => {
    const face = knifeFace({ cuttingDiameter: 2 * radius, rake: rake * DEGREE, shear: 0 });
    expect(localRake(face, 0, radius - 20) / DEGREE).toBeCloseTo(expected, 3);
  });
});
