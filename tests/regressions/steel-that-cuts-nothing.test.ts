// Found by fuzzing shops: a sheared knife measured off the steel, held on edge, leaves nothing in the wood. Its outline is then no
// deeper than 0, and the guard at the engine's door took a job that was read for one made badly by hand.
import { evaluate, readJob } from '@fielded/core';
import { expect, it } from 'vitest';

const SHOP = `fielded: 1
knives: { k: { shape: ogee, reach: 73.66140425338415, depth: 8.195499308872968, head: h, measured: knife } }
heads: { h: { cuttingDiameter: 163.87337243650109, bodyDiameter: 90.77387529109946, height: 37.87045142613351, rake: 31.69938488630578, shear: 16.805829154327512, wedge: 30, maxSpeed: 8000 } }
`;

const JOB = `fielded: 1
shop: ./shop.yaml
panel: { thickness: 28 }
frame: { thickness: 30, groove: { width: 8, depth: 11, setback: 8 }, swellGap: 2 }
cuts: [{ name: c, side: front, knife: k, presented: on-edge }]
`;

it('a job that was read is never refused at the door: it is told that the cut takes nothing', () => {
  const { job, faults } = readJob(JOB, { loadShop: () => SHOP });
  expect(faults).toEqual([]);
  expect(job!.cuts[0]!.profile.depth).toBeLessThanOrEqual(0);
  const { problems, statements } = evaluate(job!);
  expect(problems.map(({ code }) => code)).toContain('cut-misses');
  expect(statements.canBeRun).toBe(false);
});
