// Steel measured longer than its face: past the foot of the perpendicular to the axis it cuts outwards again, and where it
// turned straight back it was joined by an arc without a centre, whose angles were no numbers.
import { expect, it } from 'vitest';
import { evaluateShopJob } from '../fuzz/fuzz-shops.ts';

it('steel that turns back at the least radius of its face gives figures, all of them numbers', () => {
  const head =
    'cuttingDiameter: 118.58, bodyDiameter: 22.83, height: 32.67, rake: 29.6, shear: -17.56, wedge: 27.86, knives: 2, maxSpeed: 8000, knifeThickness: 2.35, limiterGap: 1.62';
  const shop = `fielded: 1
knives: { k: { shape: rebate, reach: 58.58, depth: 5.51, head: h, measured: knife } }
heads: { h: { ${head} } }`;
  const job = `fielded: 1
shop: ./shop.yaml
panel: { thickness: 27.83 }
frame: { thickness: 30, groove: { width: 8, depth: 11, setback: 8 }, swellGap: 2 }
cuts: [{ name: c, side: back, knife: k }]`;
  expect(evaluateShopJob(job, shop)).toEqual([]);
});
