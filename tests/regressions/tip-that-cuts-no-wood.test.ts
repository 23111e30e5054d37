// A profile that reaches farthest above the face as set, or past the edge, has the tip of its knife there: the blank was ordered
// without that part of it, up to a quarter too short.
import { evaluate, type Job } from '@fielded/core';
import { expect, it } from 'vitest';
import { raiser, rules } from '../support/heads.ts';

const lengthOf = (cut: Partial<Job['cuts'][number]>, rake: number) => {
  const profile = { shape: 'bevel', reach: 38, depth: 9, land: 11, shoulder: 0, balance: 0.5 } as const;
  const whole = {
    name: 'raise',
    side: 'front',
    profile,
    depth: 9,
    reach: 38,
    run: 'under',
    tilt: 0,
    head: 'h',
  } as const;
  const job: Job = {
    title: 'One cut',
    units: 'mm',
    panel: { thickness: 24, measured: 24, sawn: 'flat' },
    frame: { thickness: 24, groove: { width: 6, depth: 11, setback: 7 }, swellGap: 2 },
    cuts: [{ ...whole, ...cut }],
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
    shop: { units: 'mm', knives: {}, heads: { h: { ...raiser, rake } }, machines: {}, rules },
  };
  return evaluate(job).knives![0]!;
};

it('a bevel set 4 mm less deep leaves the face at 26, and its knife is still 38 long', () => {
  const knife = lengthOf({ depth: 5 }, 0);
  expect(knife.wood.length).toBeCloseTo(26, 9);
  expect(knife).toMatchObject({ length: 38, leastRadius: 42 });
});

it('on a face with rake it is longer still: √(80² − h²) − √(42² − h²) at h = 80·sin 18°', () => {
  const rake = Math.PI / 10;
  const h = 80 * Math.sin(rake);
  expect(lengthOf({ depth: 5 }, rake).length).toBeCloseTo(Math.sqrt(80 ** 2 - h ** 2) - Math.sqrt(42 ** 2 - h ** 2), 9);
});

it('on edge with its flat past the panel, 20 mm out, the knife is as long as it cuts deep at its tip', () => {
  // At the panel's edge, 9 mm up the bevel, it is 6 deep.
  const knife = lengthOf({ tilt: Math.PI / 2, reach: 18 }, 0);
  expect(knife.wood.length).toBeCloseTo(6, 9);
  expect(knife).toMatchObject({ length: 9, leastRadius: 71 });
});
