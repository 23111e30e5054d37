// A cut that ends inside the groove leaves the stock at the groove's mouth as it was: its test piece was to be measured there, or nowhere.
import { answerPlan, prepareJob, readJob } from '@fielded/core';
import { expect, it } from 'vitest';

const HEAD = { cuttingDiameter: 160, bodyDiameter: 60, height: 40, rake: 15, maxSpeed: 7000 };
const SHOP = {
  fielded: 1,
  heads: { raiser: HEAD, small: HEAD },
  machines: { spindle: { speeds: [6000], seat: [-70, 90], opening: 220, nutDiameter: 40, reversing: true } },
};

/** The plan of a raise of 9 mm and a rebate of 4.8 mm that ends `reach` mm in, where the panel goes in 9 mm. */
function planOf(reach: number, unit: number) {
  const data = {
    fielded: 1,
    units: unit === 1 ? 'mm' : 'in',
    shop: 'shop.yaml',
    panel: { thickness: 20 / unit },
    frame: {
      thickness: 22 / unit,
      groove: { width: 12 / unit, depth: 11 / unit, setback: 5 / unit },
      swellGap: 2 / unit,
    },
    cuts: [
      {
        name: 'relief',
        side: 'back',
        profile: { shape: 'rebate', reach: reach / unit, depth: 4.8 / unit },
        head: 'small',
      },
      {
        name: 'raise',
        side: 'front',
        profile: { shape: 'rebate', reach: 38 / unit, depth: 9 / unit },
        head: 'raiser',
      },
    ],
  };
  const { job } = readJob(JSON.stringify(data), { loadShop: () => JSON.stringify(SHOP) });
  return answerPlan(prepareJob(job!), undefined)!.plan;
}

it.each([
  [14, 9],
  [9, 4.5],
  [8.5, 4.25],
  [6, 3],
])('after a relief of %d mm its test piece is measured %d mm in, where the relief is', (reach, at) => {
  for (const unit of [1, 25.4]) {
    const { setups, correction } = planOf(reach, unit);
    const [relief, raise] = setups.map(({ testPiece }) => testPiece!);
    expect(relief!.at).toBeCloseTo(at, 9);
    expect(relief!.thickness).toBeCloseTo(20 - 4.8, 9);
    // A calliper that reads 0.1 mm too much asks for 0.1 mm more depth.
    expect(correction[0]!.at(-1)!.spindle).toBeCloseTo(correction[0]!.at(-1)!.reads, 9);
    // The raise goes past the mouth, and is measured there: on the relief, where that reaches as far.
    expect(raise!.at).toBeCloseTo(9, 9);
    expect(raise!.thickness).toBeCloseTo(reach < 9 ? 20 - 9 : 20 - 9 - 4.8, 9);
  }
});
