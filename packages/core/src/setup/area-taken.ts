import { cutSection } from '../joint/section.ts';
import type { ClearedRegion } from '../joint/strip-reader.ts';
import { sweepCut } from '../machining/sweep.ts';
import type { Rules } from '../shop/shop.ts';
import { splitPasses } from './passes.ts';
import { END_GRAIN } from './power.ts';
import type { Pass } from './set-up-report.ts';
import type { Work } from './work.ts';

/** Share of the motor's power that a pass may take on end grain: the rest stays for knots and dull knives. */
const USABLE_POWER = 0.8;

/** What one pass may take on end grain, mm²; null where the machine's power is not known. */
export function greatestArea(power: number | undefined, feedRate: number, { cuttingEnergy }: Rules): number | null {
  return power === undefined ? null : (USABLE_POWER * power * 1000 * 60) / (END_GRAIN * cuttingEnergy * feedRate);
}

/** The passes that a cut is taken in, on stock that other cuts have been made on. */
export function passesFor(
  work: Work,
  before: readonly Work[],
  power: number | undefined,
  feedRate: number,
  rules: Rules,
): Pass[] {
  const { depth, reach } = work.cut;
  const limits = { greatestArea: greatestArea(power, feedRate, rules), lastPass: rules.lastPass };
  return splitPasses(depth, reach, areaTaker(work, before), limits);
}

/** What a cut set to some depth takes of stock of nominal thickness that other cuts have been made on, mm². */
export function areaTaken(work: Work, before: readonly Work[], depth: number): number {
  return areaTaker(work, before)(depth);
}

function areaTaker(work: Work, before: readonly Work[]): (depth: number) => number {
  const { cut, thickness, sweep } = work;
  const regions = before.map((each): ClearedRegion => ({ side: each.cut.side, edge: each.sweep.swept }));
  const width = Math.max(cut.reach, ...before.map((each) => each.cut.reach)) + 1;
  const without = regions.length === 0 ? 0 : cutSection(thickness, width, regions).removed.area;
  return (depth) => {
    if (depth <= 0) return 0;
    const own = { side: cut.side, edge: (depth === cut.depth ? sweep : sweepCut(cut, depth)).swept };
    return cutSection(thickness, width, [...regions, own]).removed.area - without;
  };
}
