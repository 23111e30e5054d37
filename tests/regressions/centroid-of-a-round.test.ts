// The moment of an arc's segment on the lower half of a circle had the wrong sign: the wood that an ovolo takes lay, by its
// centroid, 16 mm outside the panel, and the volume and weight of panels with an ovolo or an ogee were off by what overlaps at the corners.
import { evaluate, readJobData } from '@fielded/core';
import { expect, it } from 'vitest';

const RADIUS = 12;

// Centroids from the two sides, CRC Standard Mathematical Tables: 4/3π of the radius for a quarter of a circle, which a cove of equal reach
// and depth takes, and (10 − 3π)/(3(4 − π)) for the corner that a quarter circle leaves, which an ovolo takes.
it.each([
  ['cove', 4 / (3 * Math.PI), Math.PI / 4],
  ['ovolo', (10 - 3 * Math.PI) / (3 * (4 - Math.PI)), 1 - Math.PI / 4],
])('the %s takes wood with this centroid, and this much of it all round a panel', (shape, share, part) => {
  const { job } = readJobData({
    fielded: 1,
    panel: { thickness: 22 },
    frame: { thickness: 22, swellGap: 2, groove: { width: 6, depth: 10, setback: 6 } },
    cuts: [{ name: 'raise', side: 'front', profile: { shape, reach: RADIUS, depth: RADIUS } }],
    doors: [{ name: 'door', width: 400, height: 600, stile: 60, rail: 60 }],
  });
  const report = evaluate(job!);
  expect(report.section.removedCentroid!.fromEdge).toBeCloseTo(share * RADIUS, 9);
  expect(report.section.removedCentroid!.fromBack).toBeCloseTo(22 - share * RADIUS, 9);
  // Guldin: along the sides the area times their length, less what is counted twice in the four corners.
  const { width, height, volume } = report.doors![0]!.panels[0]!;
  const area = part * RADIUS * RADIUS;
  const taken = 2 * (width + height) * area - 8 * area * share * RADIUS;
  expect(volume).toBeCloseTo(width * height * 22 - taken, 5);
});
