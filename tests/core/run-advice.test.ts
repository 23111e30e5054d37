import { evaluate, type GivenJob } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { adviseRuns } from '../../packages/core/src/report/run-advice.ts';
import { FEW } from '../support/few-joints.ts';

type Given = GivenJob['cuts'][number];
const raise: Given = { name: 'raise', side: 'front', profile: { shape: 'rebate', reach: 38, depth: 9 } };
const bead: Given = { name: 'bead', side: 'front', profile: { shape: 'rebate', reach: 40, depth: 2 } };
const back: Given = { name: 'back', side: 'back', profile: { shape: 'rebate', reach: 14, depth: 4.8 } };
const onEdge = Math.PI / 2;

function advise(cuts: readonly Given[]): string {
  const job: GivenJob = {
    panel: { thickness: 20 },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts,
    spread: { thickness: 0.15, height: 0.1, fence: 0.1, grooveWidth: 0.05, film: 0 },
  };
  const { spread, section, units } = evaluate(job, FEW);
  return adviseRuns(spread!, section.cuts, units);
}

describe('which face to keep where', () => {
  it.each([
    [
      'flat alone',
      [raise, { ...back, run: 'over' }],
      'Keep the panel face down for both cuts (raise under, back over).',
    ],
    [
      'flat and on edge',
      [raise, { ...bead, tilt: onEdge }, { ...back, run: 'over' }],
      "Keep the panel's face on the table, and on edge against the fence, for every cut (raise under, bead on edge, back over).",
    ],
    [
      'the back on edge',
      [
        { ...raise, run: 'over' },
        { ...back, tilt: onEdge },
      ],
      "Keep the panel's back on the table, and on edge against the fence, for both cuts (raise over, back on edge).",
    ],
  ] as const)('%s', (_, cuts, said) => {
    expect(advise(cuts)).toContain(said);
  });

  it('no face where the stock goes into the clearance whatever is done', () => {
    const said = advise([
      { ...raise, tilt: onEdge },
      { ...bead, tilt: onEdge },
    ]);
    expect(said).not.toMatch(/Keep|face/);
  });

  it('no face where each cut has its own', () => {
    const said = advise([
      { ...raise, tilt: onEdge },
      { ...back, tilt: onEdge },
    ]);
    expect(said).not.toMatch(/Keep|face/);
  });
});
