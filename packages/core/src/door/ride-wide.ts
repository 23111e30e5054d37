import { EXACT } from './bins.ts';
import { type BlankRules, limitsOf, sawn } from './blank-rules.ts';
import { coverAll } from './cover.ts';
import type { BlankPanel } from './door-report.ts';

/** Panels shared out among blanks, and those that are left over. */
export interface Joined {
  readonly bins: BlankPanel[][];
  readonly left: BlankPanel[];
}

/** What lots of sizes gave: lots of the same sizes are shared out alike. */
export type Known = Map<string, number[][] | null>;

/** Narrow panels in blanks of their own, as many blanks as can be; null where not all find room. */
export function coverNarrow(narrow: readonly BlankPanel[], rules: BlankRules, known?: Known): BlankPanel[][] | null {
  const cut = sawn(rules);
  const sizes = narrow.map(({ width }) => width + cut);
  const key = sizes.join(' ');
  const found = known?.get(key);
  const bins = found === undefined ? coverAll(sizes, limitsOf(rules)) : found;
  known?.set(key, bins);
  return bins === null ? null : bins.map((bin) => bin.map((i) => narrow[i]!));
}

/** Ways of sharing out that are tried before the rest is shared out first fit. */
const MOST_WAYS = 20_000;

/**
 * The fewest narrow panels left over where not all can lie in blanks of their own. Every choice of panels to leave out, and of
 * those that ride with a wide one, is tried from the fewest up; of long lists only the widest are left out.
 */
export function withWide(narrow: readonly BlankPanel[], wide: readonly BlankPanel[], rules: BlankRules): Joined {
  // Each panel is told from its equals, which may be one and the same object.
  const bySize = narrow.map((panel) => ({ ...panel })).sort((p, q) => q.width - p.width);
  const cut = sawn(rules);
  const total = narrow.reduce((sum, { width }) => sum + width + cut, 0);
  if (wide.length === 0 && total < limitsOf(rules).least) return { bins: [], left: bySize };
  // A wide panel has the more room for narrow ones the narrower it is.
  const hosts = [...wide].sort((p, q) => p.width - q.width).slice(0, narrow.length);
  const budget = { ways: MOST_WAYS };
  for (let out = 0; out < narrow.length && budget.ways > 0; out++) {
    for (const left of choices(bySize, out)) {
      const rest = bySize.filter((panel) => !left.includes(panel));
      const bins = placeAll(rest, hosts, rules, budget);
      if (bins !== null) return { bins, left };
      if (budget.ways <= 0) break;
    }
  }
  return carryMost(bySize, hosts, rules);
}

/** First fit: as many as the wide panels carry, the widest left over; found by halving, since fewer are easier to carry. */
function carryMost(narrow: readonly BlankPanel[], hosts: readonly BlankPanel[], rules: BlankRules): Joined {
  const { most } = limitsOf(rules);
  let [few, many] = [0, narrow.length];
  while (few < many) {
    const out = Math.floor((few + many) / 2);
    if (carry(narrow.slice(out), hosts, sawn(rules), most) === null) few = out + 1;
    else many = out;
  }
  return { bins: carry(narrow.slice(few), hosts, sawn(rules), most) ?? [], left: narrow.slice(0, few) };
}

/** Sets of `count` panels to leave out, the widest first; for long lists only the first. */
function* choices(panels: readonly BlankPanel[], count: number): Generator<BlankPanel[]> {
  if (panels.length > EXACT) {
    yield panels.slice(0, count);
    return;
  }
  const pick = function* (from: number, chosen: BlankPanel[]): Generator<BlankPanel[]> {
    if (chosen.length === count) {
      yield [...chosen];
      return;
    }
    for (let i = from; i <= panels.length - (count - chosen.length); i++) {
      // Of panels of equal width, try one.
      if (i > from && panels[i]!.width === panels[i - 1]!.width) continue;
      chosen.push(panels[i]!);
      yield* pick(i + 1, chosen);
      chosen.pop();
    }
  };
  yield* pick(0, []);
}

/** All panels in blanks, as few as possible of them riding with wide ones; null where that cannot be. */
function placeAll(
  panels: readonly BlankPanel[],
  hosts: readonly BlankPanel[],
  rules: BlankRules,
  budget: { ways: number },
): BlankPanel[][] | null {
  // Each try of a long list takes longer: allow fewer.
  const cost = 1 + Math.floor(panels.length / 3);
  budget.ways -= cost;
  const own = coverNarrow(panels, rules);
  if (own !== null || hosts.length === 0) return own;
  const cut = sawn(rules);
  const { most } = limitsOf(rules);
  for (let riding = 1; riding <= panels.length; riding++) {
    for (const riders of choices(panels, riding)) {
      budget.ways -= cost;
      if (budget.ways <= 0) return null;
      const rest = panels.filter((panel) => !riders.includes(panel));
      const restBins = rest.length === 0 ? [] : coverNarrow(rest, rules);
      if (restBins === null) continue;
      const carried = carry(riders, hosts, cut, most);
      if (carried !== null) return [...restBins, ...carried];
    }
  }
  return null;
}

/** Riders on as few hosts as hold them, first fit from the widest rider. */
function carry(
  riders: readonly BlankPanel[],
  hosts: readonly BlankPanel[],
  cut: number,
  most: number,
): BlankPanel[][] | null {
  const bins = hosts.map((host) => ({ panels: [host], width: host.width + cut }));
  const least = riders.reduce((narrowest, { width }) => Math.min(narrowest, width), Number.POSITIVE_INFINITY);
  let first = 0;
  for (const rider of riders) {
    // Skip hosts that have no room left for the narrowest rider.
    while (first < bins.length && bins[first]!.width + least + cut > most + 1e-9) first++;
    let at = first;
    while (at < bins.length && bins[at]!.width + rider.width + cut > most + 1e-9) at++;
    const bin = bins[at];
    if (bin === undefined) return null;
    bin.panels.push(rider);
    bin.width += rider.width + cut;
  }
  return bins.filter(({ panels }) => panels.length > 1).map(({ panels }) => panels);
}
