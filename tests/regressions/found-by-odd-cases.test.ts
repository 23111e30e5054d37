// What odd doors, rates and pictures found, each by name.
import { evaluate, type GivenJob, readJob } from '@fielded/core';
import { line } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { cutSection } from '../../packages/core/src/joint/section.ts';
import { priceQuantities } from '../../packages/core/src/quote/price.ts';
import { fitSurface } from '../../packages/exchange/src/scan/fit-surface.ts';
import { pathArea } from '../fuzz/path-area.ts';
import { Random } from '../support/random.ts';
import { processorTime } from '../support/timing.ts';

const FILE = {
  fielded: 1,
  panel: { thickness: 20, species: 'black cherry' },
  frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
  cuts: [{ name: 'raise', side: 'front', profile: { shape: 'bevel', reach: 40, depth: 10 } }],
};

function reportOf(doors: unknown, cuts: unknown = FILE.cuts) {
  const { job, faults } = readJob(JSON.stringify({ ...FILE, cuts, doors }));
  if (job === null) throw new Error(faults.map(({ message }) => message).join('\n'));
  return evaluate(job as GivenJob);
}

describe('a panel narrower than twice its raise', () => {
  it('has the volume that is left of it, by a grid of half a millimetre', () => {
    const { doors } = reportOf([{ width: 160, height: 300, stile: 60, rail: 60 }]);
    const { width, height, volume } = doors![0]!.panels[0]!;
    expect([width, height]).toEqual([58, 198]);
    let left = 0;
    for (let x = 0.25; x < width; x += 0.5)
      for (let y = 0.25; y < height; y += 0.5) {
        const a = Math.min(x, y, width - x, height - y);
        left += (20 - 10 * Math.max(0, 1 - a / 40)) / 4;
      }
    expect(volume / left).toBeCloseTo(1, 4);
  });
});

describe('a cut that comes up to the face where the section ends', () => {
  it('leaves wood all along it, and no gap without width at its end', () => {
    const edge = [line(0, 9, 50, 0)];
    expect(cutSection(20, 50, [{ side: 'front', edge }]).gaps).toEqual([]);
  });
});

describe('a head that runs to a point', () => {
  it('has a blank as high as its panel: 9 mm square to an edge at 45° stand 12.73 mm above its corner', () => {
    const head = { shape: 'outline', path: 'M 0 140 L 140 0 L 280 140' };
    const { doors } = reportOf([{ width: 400, height: 700, stile: 60, rail: 60, head }]);
    const [panel] = doors![0]!.panels;
    expect(panel!.height).toBeCloseTo(580 + 9 + 9 * Math.SQRT2, 6);
  });
});

describe('a profile that runs along itself and then parts', () => {
  it('keeps in its outline the wood between the two, as in its area', () => {
    // The arc bulges 0.0385 mm past its chord; below its middle it leaves a sliver of wood under the level stroke.
    const path = 'M 0 12 A 13 13 0 0 0 0 10 L -1 10 L 3 10 L 4 1 V 0';
    const cut = { name: 'odd', side: 'front', profile: { shape: 'outline', path }, reach: 36, depth: 12 };
    const { section } = reportOf([], [cut]);
    const left = section.width * section.thickness - section.removedArea;
    expect(pathArea(section.outline).area).toBeCloseTo(left, 6);
  });
});

it('rails that go into the stiles by nothing, as a file may say, are evaluated', () => {
  const frame = { ...FILE.frame, joint: { kind: 'cope', length: 0 } };
  const { job } = readJob(
    JSON.stringify({ ...FILE, frame, doors: [{ width: 400, height: 700, stile: 60, rail: 60 }] }),
  );
  expect(evaluate(job!).doors![0]!.parts.find(({ part }) => part === 'top rail')!.length).toBe(280);
});

describe('rates past use', () => {
  const quantities = {
    timber: [{ wood: 'oak', thickness: 20, order: 2 }],
    setUps: null,
    metres: 0,
    doors: 5,
    face: 0,
    knives: [],
  };
  const rates = { currency: 'EUR', margin: 0, validDays: 30, terms: [] };

  it('of less than a millionth are read', () => {
    const { lines, net } = priceQuantities(quantities, { ...rates, wood: { oak: 2e-7 }, door: 1, hour: 1e-9 });
    expect(lines.map(({ amount }) => amount)).toEqual([0, null, 0]);
    expect(net).toBe(0);
  });

  it('that come to more than a million million coins are left out by name', () => {
    const { lines, total, notPriced } = priceQuantities(quantities, {
      ...rates,
      wood: { oak: 1e9 },
      door: 1e5,
      hour: 1e9,
    });
    expect(lines.map(({ item, amount }) => [item, amount])).toEqual([
      ['wood', 2e11],
      ['set-ups', null],
      ['doors', null],
    ]);
    expect([total, notPriced]).toEqual([2e11, ['machines', 'rates.hour']]);
  });
});

describe('a torn edge', () => {
  it('60 mm long is followed in less than 3 seconds', () => {
    const random = new Random(3);
    const points = Array.from({ length: 2400 }, (_, i) => ({ x: i * 0.03, y: 6 + random.between(-0.4, 0.4) }));
    const time = processorTime(() => expect(fitSurface(points, 0.042).chain.length).toBeGreaterThan(500));
    expect(time).toBeLessThan(3000);
  });
});
