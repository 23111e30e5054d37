import type { Head, NamedProfile, Profile } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { makeKnife } from '../../packages/core/src/knife/knife.ts';
import { readOutline } from '../../packages/core/src/profile/read-outline.ts';
import { DEGREE, raiser, rules } from '../support/heads.ts';
import { Random } from '../support/random.ts';
import { randomProfile } from '../support/random-job.ts';
import { trials } from '../support/trials.ts';

/** Any head that is read without a fault, however little it is good for. */
function anyHead(random: Random): Head {
  const rake = random.between(0, 59);
  return {
    ...raiser,
    cuttingDiameter: random.between(30, 300),
    rake: rake * DEGREE,
    shear: random.unit() < 0.3 ? 0 : random.between(-44.9, 44.9) * DEGREE,
    wedge: random.between(1, 89.9 - rake) * DEGREE,
    limiterGap: random.between(0, 5),
    knifeThickness: random.between(0.5, 30),
  };
}

/** A profile or an outline that may double back, bulge and turn under. */
function anyProfile(random: Random): Profile {
  if (random.unit() < 0.5) return randomProfile(random, 30);
  let path = `M ${random.between(0, 3)} ${random.between(6, 25)}`;
  for (let i = 0; i < 5; i++) {
    const [x, y] = [random.between(0, 45), random.between(0, 12)];
    path +=
      random.unit() < 0.5
        ? ` L ${x} ${y}`
        : ` A ${random.between(3, 60)} ${random.between(3, 60)} 0 0 ${random.oneOf([0, 1])} ${x} ${y}`;
  }
  const outline = readOutline(`${path} V 0`, 'mm');
  if ('sentence' in outline) return anyProfile(random);
  const reach = Math.max(...outline.chain.map((c) => c.x1));
  return { shape: 'outline', reach, depth: outline.chain[0]!.y0, chain: outline.chain };
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

describe('a knife of any profile in any head', () => {
  it('is computed or refused in words, never with a throw or a figure that is none', () => {
    const random = new Random(606);
    const count = trials(200, 1500);
    let made = 0;
    for (let i = 0; i < count; i++) {
      const steel = random.unit() < 0.1 ? { steel: randomProfile(random, 20) as NamedProfile } : {};
      const order = {
        name: 'any',
        knife: null,
        headName: 'any',
        head: anyHead(random),
        profile: anyProfile(random),
        ...steel,
        tilt: random.oneOf([0, Math.PI / 2, random.between(0, Math.PI / 2)]),
        setting: {
          right: random.between(-6, 6),
          down: random.between(-3, 3),
          deeper: random.oneOf([0, random.between(0, 1)]),
        },
        assumed: true,
        groundFor: { run: 'under', rotation: 'counterclockwise' } as const,
        rules,
        machines: {},
        units: random.oneOf(['mm', 'in'] as const),
        at: '',
      };
      const { knife, problems } = makeKnife(order);
      if (knife === null) expect(problems.map((p) => p.code)).toContain('face-never-reaches');
      else {
        made++;
        expect(numbersIn(knife).every(Number.isFinite), `case ${i}`).toBe(true);
        expect(knife.outline).not.toContain('NaN');
        expect(knife.deviation).toBeLessThanOrEqual(0.005);
      }
    }
    expect(made).toBeGreaterThan(count / 4);
  });
});
