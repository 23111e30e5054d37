import { evaluate, type KnifeReport, readJob } from '@fielded/core';
import { Random } from '../support/random.ts';
import type { Finding } from './fuzz-jobs.ts';
import { judgeCase, notNumbers, refusedInWords } from './judge-case.ts';
import { randomHead, randomKnife } from './random-shop.ts';

type GroundFor = { readonly run: 'under' | 'over'; readonly rotation: 'clockwise' | 'counterclockwise' };

const other = { under: 'over', over: 'under', clockwise: 'counterclockwise', counterclockwise: 'clockwise' } as const;

/**
 * Knives turned over: a head laid the other way up keeps its knives' hand, so that steel ground for the other run and the other rotation
 * is the same steel; ground for the other hand it is that of a head whose shear leans the other way.
 */
export function fuzzKnives(seed: number): Finding[] {
  return judgeCase(seed, () => {
    const random = new Random(seed);
    const presented = random.oneOf(['flat', 'flat', 'on-edge', random.between(5, 60)]);
    const head = { ...randomHead(random), shear: random.oneOf([0, random.between(-30, 30)]) };
    const knife = {
      ...randomKnife(random, 'h', 9, presented),
      measured: random.oneOf(['wood', 'knife']),
      presented: undefined,
    };
    const ground: GroundFor = {
      run: random.oneOf(['under', 'over']),
      rotation: random.oneOf(['clockwise', 'counterclockwise']),
    };
    const made = (groundFor: GroundFor, shear: number) =>
      makeKnife(presented, { ...knife, groundFor }, { ...head, shear });
    const as = made(ground, head.shear);
    if ('faults' in as) return refusedInWords(as.faults);
    const turned = made({ run: other[ground.run], rotation: other[ground.rotation] }, head.shear);
    const handed = made({ ...ground, rotation: other[ground.rotation] }, 0 - head.shear);
    return [
      ...notNumbers(as.knife ?? {}, 'knife'),
      ...('faults' in turned
        ? ['refused when turned over']
        : differences(as, turned).map((what) => `turned over: ${what}`)),
      ...('faults' in handed
        ? ['refused with the other hand']
        : differences(as, handed).map((what) => `of the other hand: ${what}`)),
    ];
  });
}

interface Made {
  readonly knife: KnifeReport | null;
  readonly area: number;
}

function makeKnife(
  presented: unknown,
  knife: unknown,
  head: unknown,
): Made | { readonly faults: readonly { message: string }[] } {
  const shop = { fielded: 1, heads: { h: head }, knives: { k: knife } };
  const file = {
    fielded: 1,
    shop: './shop.yaml',
    panel: { thickness: 28 },
    frame: { thickness: 30, groove: { width: 8, depth: 11, setback: 8 }, swellGap: 2 },
    cuts: [{ name: 'c', side: 'front', knife: 'k', presented }],
  };
  const { job, faults } = readJob(JSON.stringify(file), { loadShop: () => JSON.stringify(shop) });
  if (job === null) return { faults };
  const { knives = [], section } = evaluate(job);
  return { knife: knives[0] ?? null, area: section.removedArea };
}

/** Where two pieces of steel, or what they leave in the wood, are not the same. */
function differences(one: Made, two: Made): string[] {
  if (Math.abs(one.area - two.area) > 1e-9 * Math.max(1, one.area)) return [`takes ${two.area} mm², not ${one.area}`];
  if ((one.knife === null) !== (two.knife === null)) return ['a knife there and none here'];
  if (one.knife === null || two.knife === null) return [];
  const { knife: p } = one;
  const { knife: q } = two;
  const found: string[] = [];
  for (const key of ['length', 'width', 'leastRadius', 'tipAt', 'pieces', 'deviation'] as const)
    if (Math.abs(p[key] - q[key]) > 1e-9) found.push(`${key} ${q[key]}, not ${p[key]}`);
  if (p.outline !== q.outline) found.push('another outline');
  if (Math.abs(p.clearance.least - q.clearance.least) > 1e-9) found.push('another clearance');
  if (p.limiter?.outline !== q.limiter?.outline) found.push('another limiter');
  return found;
}
