import type { Pass } from './plan.ts';

/** What a pass may take, and how a cut is split into passes. */
interface PassLimits {
  /** mm², or null where the machine's power is not known. */
  readonly greatestArea: number | null;
  /** Depth of the last pass, mm. */
  readonly lastPass: number;
}

/** More passes than anyone would run: the machine is too weak for the feed. */
const MOST_PASSES = 12;

/**
 * Splits a cut by height (formula U9): each earlier pass is set less deep, which never spoils the section. One pass where the
 * machine takes it. Else the last takes `lastPass` of depth, less where that alone is too much, and the rest is split into
 * the fewest passes of equal area. `areaAt` is what a setting of some depth takes altogether, mm², growing with the depth.
 */
export function splitPasses(
  depth: number,
  reach: number,
  areaAt: (depth: number) => number,
  { greatestArea, lastPass }: PassLimits,
): Pass[] {
  const whole = areaAt(depth);
  if (greatestArea === null || whole <= greatestArea) return [{ depth, reach, area: whole }];
  const wanted = whole - areaAt(Math.max(0, depth - lastPass));
  const last = Math.min(wanted, greatestArea);
  const rest = whole - last;
  const count = Math.min(MOST_PASSES - 1, Math.max(1, Math.ceil(rest / greatestArea - 1e-9)));
  const settings = Array.from({ length: count }, (_, k) => depthFor((rest * (k + 1)) / count, depth, areaAt));
  return [...settings, depth].map((setting, k, all) => ({
    depth: setting,
    reach,
    area: areaAt(setting) - (k === 0 ? 0 : areaAt(all[k - 1]!)),
  }));
}

/** The depth that takes an area, to a thousandth of a millimetre. */
function depthFor(area: number, depth: number, areaAt: (depth: number) => number): number {
  let low = 0;
  let high = depth;
  while (high - low > 5e-4) {
    const middle = (low + high) / 2;
    if (areaAt(middle) < area) low = middle;
    else high = middle;
  }
  // Never more than the area asked for: the pass before it would be too much for the machine.
  return low;
}
