// The shop's knife that leaves a profile, and how far in a profile reaches at a depth.
import { arc, line } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { keptKnife } from '../../packages/core/src/knife/kept-knife.ts';
import { reachAt } from '../../packages/core/src/machining/reach-at.ts';
import type { NamedProfile } from '../../packages/core/src/profile/profile.ts';
import { raiser, rules } from '../support/heads.ts';
import { kept } from '../support/matching-jobs.ts';

describe('the reach of a profile at a depth', () => {
  it('is where a line passes it, rising or falling', () => {
    // From 9 deep at x = 5 to the face at x = 35: 3 deep two thirds along.
    expect(reachAt([line(5, 9, 35, 0)], 3)).toBeCloseTo(25, 9);
    expect(reachAt([line(35, 0, 5, 9)], 3)).toBeCloseTo(25, 9);
  });

  it('is where an arc passes it: the farther of two places', () => {
    // A round of radius 5 about (20, 6): 2 deep at x = 20 ± 3.
    expect(reachAt([arc(15, 6, 25, 6, 20, 6, 1)], 2)).toBeCloseTo(23, 9);
    expect(reachAt([arc(15, 6, 20, 1, 20, 6, 1)], 2)).toBeCloseTo(17, 9);
  });

  it('is 0 where the profile is nowhere as deep', () => {
    expect(reachAt([line(5, 9, 35, 0)], 10)).toBe(0);
  });
});

describe('the kept knife for a profile', () => {
  const bevel: NamedProfile = { shape: 'bevel', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.5 };
  const shopOf = (profile: NamedProfile) =>
    ({ units: 'mm', knives: { kept: kept(profile) }, heads: { raiser }, machines: {}, rules }) as const;

  it('is one of the same profile, or one off by no more than 0.02 mm', () => {
    expect(keptKnife(shopOf({ ...bevel }), 'raiser', bevel)).toBe('kept');
    expect(keptKnife(shopOf({ ...bevel, reach: 38.015 }), 'raiser', bevel)).toBe('kept');
  });

  it.each([
    ['of another shape', { shape: 'cove' }],
    ['with another shoulder', { shoulder: 1 }],
    ['with another land', { land: 8 }],
  ] as const)('is none of the same reach and depth but %s', (_, other) => {
    expect(keptKnife(shopOf({ ...bevel, ...other }), 'raiser', bevel)).toBeUndefined();
  });

  it('is none of another head', () => {
    expect(keptKnife(shopOf(bevel), 'panel head', bevel)).toBeUndefined();
  });
});
