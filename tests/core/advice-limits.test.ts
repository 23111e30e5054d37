// Advice that its file could not hold, or that no machine of the shop could follow, is not given: jobs made so that the first remedy at hand
// is such a one. The law is that of tests/properties/advice.test.ts, whose random jobs come to these
// cases too seldom: what advice writes is read again, and brings no other problem.
import { evaluate, type Problem, readJob, writeValues } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { presentationsToTry } from '../../packages/core/src/report/advice-candidates.ts';
import { plainJob } from './joints-to-spread.ts';

const keyOf = ({ code, at }: Problem) => `${code} ${at}`;

/** What is advised against a problem of a job, and what each piece of it brings when its file is changed so and read again. */
function advised(text: string, code: string, shop: string) {
  const read = (file: string) => readJob(file, { loadShop: () => shop });
  const { job, faults } = read(text);
  expect(faults).toEqual([]);
  const { problems } = evaluate(job!);
  const before = new Set(problems.map(keyOf));
  const problem = problems.find((each) => each.code === code);
  expect(problem, problems.map(keyOf).join(', ')).toBeDefined();
  return (problem!.advice ?? []).map(({ writes }) => {
    const written = writeValues(text, writes, job!.units);
    if (!('text' in written)) throw new Error(`${JSON.stringify(writes)} could not be written`);
    const again = read(written.text);
    const after = again.job === null ? again.faults : evaluate(again.job).problems;
    const worse = after.filter((each) => each.severity !== 'caution' && !before.has(keyOf(each)));
    return { paths: writes.map(({ path }) => path.join('.')), brings: worse.map(({ code: came }) => came) };
  });
}

describe('a tongue that goes in less far than the shop asks', () => {
  // 7 mm where the shop asks for 8. The first remedy is a groove of 11 mm; but a muntin with such a groove on both sides has to be
  // wider than 22 mm, and a file with a narrower one is not read. The second is a gap of 2 mm in place of 3.
  const job = (muntin: number) => `fielded: 1
shop: shop.yaml
panel: { thickness: 20, width: 300, species: black cherry }
season: { made: 9, driest: 8.9, dampest: 9.1 }
frame: { thickness: 22, groove: { width: 6.4, depth: 10, setback: 7.5 }, swellGap: 3 }
cuts:
  - { name: raise, side: front, profile: { shape: rebate, reach: 30, depth: 8 } }
  - { name: relief, side: back, profile: { shape: rebate, reach: 14, depth: 5.8 } }
doors: [{ width: 500, height: 900, stile: 60, rail: 70, across: 2, muntin: ${muntin} }]
`;
  const shop = 'fielded: 1\nrules: { leastEngagement: 8 }\n';

  it.each([
    [30, 'frame.groove.depth'],
    [21, 'frame.swellGap'],
  ])('in a frame with a muntin of %i mm is cured by %s', (muntin, path) => {
    expect(advised(job(muntin), 'little-engagement', shop)).toContainEqual({ paths: [path], brings: [] });
    expect(advised(job(muntin), 'little-engagement', shop).every(({ brings }) => brings.length === 0)).toBe(true);
    expect(advised(job(muntin), 'little-engagement', shop)).toHaveLength(1);
  });
});

it('another way to hold a panel is tried for the cut that is named, whichever it is, and on edge only for one that is not run over', () => {
  const job = plainJob();
  const paths = (name: string | undefined) =>
    presentationsToTry(job, name).map(({ writes }) =>
      writes.map(({ path, ...to }) => [path.join('.'), 'word' in to && to.word]),
    );
  expect(paths('raise')).toEqual([[['cuts.0.presented', 'on-edge']], [['cuts.0.presented', 'flat']]]);
  // The relief is run over.
  expect(paths('back relief')).toEqual([[['cuts.1.presented', 'flat']]]);
  expect(paths('bead')).toEqual([]);
  expect(paths(undefined)).toEqual([]);
});

describe('a tongue that is too thick for its groove', () => {
  // The relief takes 0.1 mm too little. Its head, 40 mm high with its cutting point 10 mm in, then has its seat at 5.5 + 10 − 40 = −24.5 mm
  // under the panel: a machine whose seat goes up to there and no further cannot cut deeper.
  const job = `fielded: 1
shop: shop.yaml
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts:
  - { name: raise, side: front, profile: { shape: rebate, reach: 30, depth: 8 } }
  - { name: relief, side: back, knife: rebate-a, depth: 5.5 }
`;
  const shop = (highest: number) => `fielded: 1
heads:
  low: { cuttingDiameter: 120, bodyDiameter: 70, height: 40, rake: 15, maxSpeed: 9000, feed: hand, bore: 30 }
knives:
  rebate-a: { head: low, shape: rebate, reach: 14, depth: 8, fromFace: 10, groundFor: { run: under, rotation: counterclockwise } }
machines:
  main: { speeds: [4500, 6000], seat: [-80, ${highest}], opening: 200, nutDiameter: 50, spindle: 30, spindleLength: 100 }
`;

  it.each([
    [-20, 'cuts.1.depth'],
    [-24.4, 'cuts.0.depth'],
  ])('on a machine whose seat goes up to %f mm is cured by %s', (highest, path) => {
    const given = advised(job, 'will-not-enter', shop(highest));
    expect(given[0]).toEqual({ paths: [path], brings: [] });
    expect(given.every(({ brings }) => brings.length === 0)).toBe(true);
  });
});
