// A hollow that ends exactly at the panel's edge left a curve of 1e-16 mm in the section, written as an arc from a point to
// itself with the flag of a large arc: read strictly nothing, but a whole circle to one who adds up areas.
import { evaluate, readJob } from '@fielded/core';
import { expect, it } from 'vitest';
import { pathArea } from '../fuzz/path-area.ts';

it('a curve shorter than can be written is not written', () => {
  const { job } = readJob(`fielded: 1
panel: { thickness: 26.29550518747419 }
frame: { thickness: 30.5, groove: { width: 7.9, depth: 8.4, setback: 4.5 }, swellGap: 0 }
cuts:
  - side: front
    profile: { shape: outline, path: "M 0 16 A 4 4 0 0 1 0 9 A 20 20 0 0 1 1 8 L 3 5 L 5 9 L 8 10 L 9 1 V 0" }
    presented: 62.74654572363943
`);
  const { section } = evaluate(job!);
  expect(section.outline.match(/A \S+ \S+ 0 1/)).toBeNull();
  const left = section.width * section.thickness - section.removedArea;
  expect(pathArea(section.outline).area).toBeCloseTo(left, 6);
});
