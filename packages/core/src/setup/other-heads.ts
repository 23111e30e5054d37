import { keptKnife } from '../knife/kept-knife.ts';
import type { Cut } from '../machining/cut.ts';
import type { Voice } from '../problem/language.ts';
import type { Advice } from '../problem/problem.ts';
import { advise, told } from '../problem/say.ts';
import type { Shop } from '../shop/shop.ts';
import type { LeastOpening } from './against.ts';
import { chooseWays } from './choose.ts';
import type { SetUp } from './set-up-report.ts';
import { type Judged, listWorking } from './ways.ts';
import { prepareWork, type Work } from './work.ts';

/** Whether a knife for a cut can be ground for the head it names. */
export type CanBeGround = (cut: Cut) => boolean;

/** Other heads that are proposed for a cut, at most. */
const MOST_PROPOSED = 2;

/**
 * Other heads of the shop that would make a cut which nothing can make in its own, two at most: the best way with each. A knife of the
 * shop with the same profile that is kept in the head is taken; else one has to be ground, and must be able to be. Heads with a knife come first.
 */
export function tryOtherHeads(
  work: Work,
  shop: Shop,
  voice: Voice,
  canBeGround: CanBeGround,
  opening?: LeastOpening,
): Judged[] {
  const { knife: _, ...bare } = work.cut;
  const cuts = Object.keys(shop.heads)
    .filter((head) => head !== work.headName)
    .map((head): Cut => {
      const knife = work.cut.tilt === 0 ? keptKnife(shop, head, work.cut.profile) : undefined;
      return { ...bare, head, ...(knife !== undefined && { knife }) };
    })
    .sort((one, other) => Number(one.knife === undefined) - Number(other.knife === undefined));
  const found: Judged[] = [];
  for (const cut of cuts) {
    if (found.length === MOST_PROPOSED) break;
    const other = prepareWork(shop, cut, work)!;
    const [way] = chooseWays([listWorking(other, shop, voice, opening)], false);
    // A knife is worked out last: it takes longer than all ways together.
    if (way !== undefined && (cut.knife !== undefined || canBeGround(cut))) found.push(way);
  }
  return found;
}

/**
 * The other head in words, with its figures; `index` is the cut's place in the job, −1 on the frame. What can be written is written: a
 * knife's name, or the head of a cut that names no knife. A knife that is kept in its own head cannot simply be put into another.
 */
export function adviseHead({ work }: Judged, setUp: SetUp, own: Cut, index: number, voice: Voice): Advice {
  const figures = {
    head: work.headName,
    machine: setUp.machine,
    run: told(`run.${setUp.run}`, {}),
    rotation: told(`rotation.${setUp.rotation}`, {}),
    point: setUp.cuttingPoint,
    axis: setUp.fence.toAxis,
    speed: setUp.speed,
  };
  const { knife } = work.cut;
  if (knife !== undefined) {
    const named = index >= 0 ? [{ path: ['cuts', index, 'knife'], word: knife }] : [];
    return advise('advice.other-head', { ...figures, knife }, named, voice);
  }
  const writes = own.knife === undefined && index >= 0 ? [{ path: ['cuts', index, 'head'], word: work.headName }] : [];
  return advise('advice.other-head.ground', figures, writes, voice);
}
