import { evaluate, type GivenJob } from '@fielded/core';
import { describe, expect, it } from 'vitest';

const job = (film: number, other: Partial<GivenJob> = {}): GivenJob => ({
  panel: { thickness: 20, film },
  frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
  cuts: [
    { name: 'raise', side: 'front', profile: { shape: 'rebate', reach: 38, depth: 9 } },
    { name: 'back', side: 'back', profile: { shape: 'rebate', reach: 14, depth: 4.8 } },
  ],
  ...other,
});

describe('a film of 0.05 mm on the faces of a tongue 6.2 mm thick, in a bare groove of 6.4 mm (formula 9)', () => {
  const { fit } = evaluate(job(0.05));

  it('leaves the groove less two films', () => {
    expect(fit.clearance).toBeCloseTo(6.4 - 6.2 - 0.1, 12);
  });

  it('keeps the wood a film off the wall that the panel is pressed against', () => {
    // From the frame's front: 7.5 of lip, 0.05 of film, then the tongue, which lies 9 below the panel's face.
    const pressedForward = 9 - (7.5 + 0.05);
    // From the frame's back: 8.1 of lip, 0.05 of film, then the tongue, which lies 4.8 in from the panel's back; the panel is 20 thick.
    const panelBack = 8.1 + 0.05 - 4.8;
    const pressedBack = panelBack + 20 - 22;
    expect(fit.frontFace!.most).toBeCloseTo(pressedForward, 12);
    expect(fit.frontFace!.least).toBeCloseTo(pressedBack, 12);
    expect(fit.backFace!.most).toBeCloseTo(-panelBack, 12);
    expect(fit.backFace!.least).toBeCloseTo(-panelBack - (pressedForward - pressedBack), 12);
  });

  it('leaves the middle of the float where it was: the tongue in the middle of its groove', () => {
    const bare = evaluate(job(0)).fit;
    for (const face of ['frontFace', 'backFace'] as const)
      expect(fit[face]!.least + fit[face]!.most).toBeCloseTo(bare[face]!.least + bare[face]!.most, 12);
  });

  it('and moves a spread by itself from either wall', () => {
    const spread = { thickness: 0, height: 0, fence: 0, grooveWidth: 0, film: 0.02 };
    const { frontFace } = evaluate(job(0.05, { spread })).spread!;
    const slopeOf = (end: 'least' | 'most') => frontFace[end].sources.find(({ name }) => name === 'film')!.slope;
    expect([slopeOf('most'), slopeOf('least')]).toEqual([-1, 1]);
    // 0.03 to 0.07 mm of film.
    expect(frontFace.most.worst).toEqual([expect.closeTo(1.43, 9), expect.closeTo(1.47, 9)]);
    expect(frontFace.least.worst).toEqual([expect.closeTo(1.33, 9), expect.closeTo(1.37, 9)]);
  });
});
