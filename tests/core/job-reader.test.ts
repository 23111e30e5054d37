// A reader that remembers the shop reads what readJobData reads, and far faster: a drag on the page rests on both.
import { createJobReader, readJobData } from '@fielded/core';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { leastOf } from '../support/timing.ts';

const SHOP = parse(`
fielded: 1
heads:
  small: { cuttingDiameter: 125, bodyDiameter: 72, height: 40, rake: 18, shear: 6, maxSpeed: 9000 }
  plain: { cuttingDiameter: 125, bodyDiameter: 72, height: 40, rake: 12, maxSpeed: 9000 }
knives:
  off-steel: { shape: cove, reach: 14, depth: 5, land: 4, head: small, measured: knife }
`);

function job(depth: number, more: object = {}): object {
  return {
    fielded: 1,
    shop: 'shop.yaml',
    panel: { thickness: 20 },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts: [
      { name: 'raise', side: 'front', profile: { shape: 'bevel', reach: 38, depth, land: 11 }, head: 'small' },
      { name: 'relief', side: 'back', knife: 'off-steel', run: 'over', ...more },
    ],
  };
}

it('reads the same as readJobData, whichever jobs and shops came before', () => {
  const read = createJobReader();
  const other = { ...SHOP, heads: { ...SHOP.heads, small: { ...SHOP.heads.small, rake: 5 } } };
  const asked = [
    [job(9), SHOP],
    [job(9.1), SHOP],
    [job(9, { head: 'plain' }), SHOP],
    [job(9, { run: 'under' }), SHOP],
    [job(9, { presented: 20 }), SHOP],
    [job(9), other],
    [job(9), SHOP],
    [job(9), undefined],
    [job(9), { fielded: 1, heads: 7 }],
    [
      { ...job(9), shop: 'elsewhere.yaml' },
      { fielded: 1, heads: 7 },
    ],
    [job(9), SHOP],
  ] as const;
  for (const [data, shop] of asked) expect(read(data, shop)).toEqual(readJobData(data, shop));
  const [first, steeper] = [read(job(9), SHOP).job!, read(job(9), other).job!];
  expect(first.cuts[1]!.profile).not.toEqual(steeper.cuts[1]!.profile);
});

it('reads the same of jobs that share most of their parts: sizes, units, faults and other names of words', () => {
  const read = createJobReader();
  const first = job(9) as { frame: object; cuts: readonly [object, object] };
  const [raise, relief] = first.cuts;
  const steps = [
    first,
    { ...first, units: 'in' },
    { ...first, frame: { ...first.frame, swellGap: -1 } },
    { ...first, frame: { ...first.frame, groove: { width: 6.4, depth: '11 mn', setback: 7.5 } } },
    { ...first, cuts: [{ ...raise, profile: { shape: 'rabbet', reach: 20, depth: 3 } }, relief] },
    {
      ...first,
      cuts: [
        { ...raise, run: 'face down' },
        { ...relief, unknown: 1 },
      ],
    },
    { ...first, frame: first.cuts[0] },
    { ...first, panel: [] },
    first,
  ];
  for (const data of [...steps, ...steps]) expect(read(data, SHOP)).toEqual(readJobData(data, SHOP));
});

it('works out what a knife off its steel cuts once for a whole drag', () => {
  const read = createJobReader();
  const times = (how: typeof readJobData) => {
    const start = performance.now();
    for (let i = 0; i < 20; i++) how(job(8 + i / 20), SHOP);
    return performance.now() - start;
  };
  times(readJobData);
  times(read);
  expect(leastOf(() => times(read) / times(readJobData), 0.5, 5)).toBeLessThan(0.5);
});
