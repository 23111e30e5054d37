/** A figure that depends on one setting; null where the joint has none. */
export type FigureOfSetting = (setting: number) => number | null;

interface Found {
  readonly setting: number;
  readonly value: number;
}

/** What a search came to. */
export interface SearchResult {
  /** The setting nearest the present one that gives the value; null where none does. */
  readonly found: Found | null;
  /** Where the figure comes nearest to it; null where the figure exists nowhere. */
  readonly nearest: Found | null;
  /** Least and most of the figure over the range, as far as it was looked at; null where it exists nowhere. */
  readonly reachable: readonly [number, number] | null;
}

/** Tolerance for calling the target met: rounding error of a section a metre wide, with margin. */
const HIT = 1e-12;
/** First step away from the present setting, mm, and how much each next one is longer. */
const FIRST_STEP = 0.01;
const GROWTH = 1.03;

/**
 * The setting nearest to `from`, within [least, most], at which a figure has the value wanted.
 *
 * Looks outwards both ways in growing steps (0.01 mm, each 3 % longer) and bisects where the figure passes the value, or
 * begins to have it, until neighbouring doubles are left (formula S5). Steps over a jump: there is no setting between. A figure may be
 * level, and miss over part of the range. A pair of answers closer together than a step (0.3 mm at 10 mm away) is missed
 * unless one was looked at.
 */
export function searchSetting(
  curve: FigureOfSetting,
  value: number,
  from: number,
  least: number,
  most: number,
): SearchResult {
  const looked: Found[] = [];
  const look = (setting: number): Found | null => {
    const read = curve(setting);
    if (read === null) return null;
    const found = { setting, value: read };
    looked.push(found);
    return found;
  };
  const isHit = (found: Found) => Math.abs(found.value - value) <= HIT;
  // Is the present setting right already?
  const start = look(from);
  let found: Found | null = start !== null && isHit(start) ? start : null;
  const ways = ([-1, 1] as const).map((way) => ({ way, at: from, last: start, open: true }));
  // Step outwards, both ways in turn, until one passes the value or both have come to their bounds.
  for (let step = FIRST_STEP; found === null && ways.some(({ open }) => open); step *= GROWTH) {
    for (const side of ways) {
      if (!side.open) continue;
      const next = Math.min(most, Math.max(least, side.at + side.way * step));
      const here = look(next);
      const answer = between(curve, value, { setting: side.at, found: side.last }, { setting: next, found: here });
      if (answer !== null) looked.push(answer);
      if (answer !== null && isHit(answer) && isNearer(answer, found, from)) found = answer;
      side.open = next !== (side.way < 0 ? least : most);
      side.at = next;
      side.last = here;
    }
  }
  return {
    found,
    // Worked out where it is asked for: closing in takes as many readings as the search.
    get nearest() {
      return found ?? nearestOf(curve, looked, value);
    },
    reachable: rangeOf(looked),
  };
}

interface End {
  readonly setting: number;
  readonly found: Found | null;
}

/** The best answer between two settings, if the figure passes the value, reaches it or stops existing between them. */
function between(curve: FigureOfSetting, value: number, near: End, far: End): Found | null {
  // Does the figure exist at one end only? Take the last setting where it does.
  const edge = near.found === null || far.found === null ? edgeOfBeing(curve, near, far) : null;
  const a = near.found ?? edge;
  const b = far.found ?? edge;
  if (a === null || b === null) return null;
  const isHit = (found: Found) => Math.abs(found.value - value) <= HIT;
  if (isHit(a)) return a;
  // Is the value passed between the two, or come within rounding of?
  const above = a.value > value;
  const passed = b.value === value || b.value > value !== above;
  if (!passed && !isHit(b)) return edge;
  // Where it passes, down to the last bit; where it only comes within rounding, to where it first does.
  const isBefore = (found: Found) => (passed ? found.value !== value && found.value > value === above : !isHit(found));
  let same = a;
  let other = b;
  for (;;) {
    const middle = (same.setting + other.setting) / 2;
    if (middle === same.setting || middle === other.setting) break;
    const read = curve(middle);
    if (read === null) break;
    const found = { setting: middle, value: read };
    if (isBefore(found)) same = found;
    else other = found;
  }
  return Math.abs(same.value - value) < Math.abs(other.value - value) ? same : other;
}

/** The last setting at which the figure exists between one where it does and one where it does not. */
function edgeOfBeing(curve: FigureOfSetting, one: End, another: End): Found | null {
  if (one.found === null && another.found === null) return null;
  let inside: Found = one.found ?? another.found!;
  let outside = one.found === null ? one.setting : another.setting;
  for (;;) {
    const middle = (inside.setting + outside) / 2;
    if (middle === inside.setting || middle === outside) return inside;
    const value = curve(middle);
    if (value === null) outside = middle;
    else inside = { setting: middle, value };
  }
}

function isNearer(answer: Found, found: Found | null, from: number): boolean {
  return found === null || Math.abs(answer.setting - from) < Math.abs(found.setting - from);
}

/**
 * Where the figure comes nearest: each place looked at that is nearer than those beside it, closed in on between the two. There
 * are several where it jumps: a peak of the figure, and an end before a jump.
 */
function nearestOf(curve: FigureOfSetting, looked: readonly Found[], value: number): Found | null {
  if (looked.length === 0) return null;
  const miss = (found: Found | undefined) =>
    found === undefined ? Number.POSITIVE_INFINITY : Math.abs(found.value - value);
  // Of equals the first looked at, which is the nearest to the present setting.
  let kept = looked.reduce((best, found) => (miss(found) < miss(best) - HIT ? found : best));
  const sorted = [...looked].sort((p, q) => p.setting - q.setting);
  for (const [place, found] of sorted.entries()) {
    const beside = [sorted[place - 1], sorted[place + 1]];
    const isLevel = beside.every((other) => other === undefined || miss(other) <= miss(found) + HIT);
    if (isLevel || beside.some((other) => miss(other) < miss(found))) continue;
    const [low = found, high = found] = beside;
    const closest = closeIn(curve, [low.setting, found, high.setting], miss);
    if (miss(closest) < miss(kept) - HIT) kept = closest;
  }
  return kept;
}

/** The place between two settings that misses least, by golden section about one that misses less than they do. */
function closeIn(
  curve: FigureOfSetting,
  [from, found, till]: [from: number, found: Found, till: number],
  miss: (found: Found | undefined) => number,
): Found {
  const golden = (3 - Math.sqrt(5)) / 2;
  let [low, best, high] = [from, found, till];
  for (let turn = 0; turn < 80; turn++) {
    // Look into the longer side: what is found there is the best, or an end.
    const isAbove = high - best.setting > best.setting - low;
    const setting = best.setting + golden * ((isAbove ? high : low) - best.setting);
    const value = curve(setting);
    const tried = value === null ? undefined : { setting, value };
    const isBetter = miss(tried) < miss(best);
    if (isAbove === isBetter) low = isBetter ? best.setting : setting;
    else high = isBetter ? best.setting : setting;
    if (isBetter) best = tried!;
  }
  return best;
}

function rangeOf(looked: readonly Found[]): readonly [number, number] | null {
  if (looked.length === 0) return null;
  const values = looked.map(({ value }) => value);
  return [Math.min(...values), Math.max(...values)];
}
