// Knives measured on their steel that reach as far down the face as it goes. The wood they leave is a fitted outline, and
// came out a millionth of a millimetre inside the least radius that the face cuts, which was then refused as a fault of the
// caller; and steel that turns straight back at that limit was joined by an arc without a centre.
import { expect, it } from 'vitest';
import { evaluateShopJob, fuzzShop } from '../fuzz/fuzz-shops.ts';

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

it('150 odd shops, some at the limit, keep every promise', () => {
  expect(Array.from({ length: 150 }, (_, i) => fuzzShop(i + 1)).flat()).toEqual([]);
});
