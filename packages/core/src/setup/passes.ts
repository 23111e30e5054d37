import type { Pass } from './set-up-report.ts';

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

/** Bisection ends at this width, mm, or where the area is short by no more than the second, mm². */
const DEPTH_STEP = 5e-4;
const AREA_STEP = 0.02;

/** The depth that takes an area and no more: the pass before it would be too much for the machine. False position (Illinois). */
function depthFor(area: number, depth: number, areaAt: (depth: number) => number): number {
  let [low, high] = [0, depth];
  let missing = area;
  // Weights of the two ends: halve that of an end that stays (Illinois), so that both move.
  let [short, over] = [-area, areaAt(depth) - area];
  while (high - low > DEPTH_STEP && missing > AREA_STEP) {
    const middle = (low * over - high * short) / (over - short);
    const off = areaAt(middle) - area;
    if (off <= 0) [low, missing, short, over] = [middle, -off, off, over / 2];
    else [high, over, short] = [middle, off, short / 2];
  }
  return low;
}
