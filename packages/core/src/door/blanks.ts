import { coverAll, EXACT, type Limits } from './cover.ts';
import type { Blank, BlankPanel, LeftOver } from './door-report.ts';

/** The shop's rules for blanks, mm. */
export interface BlankRules {
  readonly leastEndGrainWidth: number;
  readonly greatestBlankWidth: number;
  readonly kerf: number;
  /** Cleaned off each sawn edge. */
  readonly edgeAllowance: number;
}

/** A panel to be made: its width across the grain and its length along it, mm. */
export interface BlankItem {
  readonly door: string;
  readonly width: number;
  readonly length: number;
}

/** Blanks, and narrow panels that none takes. */
export interface BlankList {
  readonly blanks: readonly Blank[];
  readonly leftOver: readonly LeftOver[];
}

/** Width of a spare where less would do: one that can be held and measured, mm. */
const LEAST_SPARE = 50;

/**
 * Joins narrow panels of one length into blanks that are wide enough to be run on their end grain, to be ripped afterwards
 * (formula D5). A blank is Σw + (k − 1)(kerf + 2·edgeAllowance) wide.
 *
 * First the fewest narrow panels are left over, then the most blanks are made, since those saw away least and are lightest to
 * handle. Wide panels ride along only where that saves a narrow one. Exact up to 24 panels of a length. With `spares` each
 * lot left over gets one spare panel that fills it up.
 */
export function makeBlanks(items: readonly BlankItem[], rules: BlankRules, spares = false): BlankList {
  const blanks: Blank[] = [];
  const leftOver: LeftOver[] = [];
  for (const group of byLength(items).values()) {
    const { length } = group[0]!;
    const { bins, left } = joinLength(group, rules, spares);
    blanks.push(...describeBlanks(length, bins, rules));
    leftOver.push(...describeLeft(length, left, rules));
  }
  return { blanks, leftOver };
}

/** Panels whose lengths are the same to a hundredth of a millimetre can ride together. */
function byLength(items: readonly BlankItem[]): Map<number, BlankItem[]> {
  const groups = new Map<number, BlankItem[]>();
  for (const item of items) {
    const length = Math.round(item.length * 100) / 100;
    const group = groups.get(length);
    if (group === undefined) groups.set(length, [item]);
    else group.push(item);
  }
  return groups;
}

interface Joined {
  readonly bins: BlankPanel[][];
  readonly left: BlankPanel[];
}

function joinLength(group: readonly BlankItem[], rules: BlankRules, spares: boolean): Joined {
  const narrow = group.filter(({ width }) => width < rules.leastEndGrainWidth);
  const wide = group.filter(({ width }) => width >= rules.leastEndGrainWidth);
  if (narrow.length === 0) return { bins: [], left: [] };
  const joined = joinLots(narrow, wide, rules);
  if (joined.left.length === 0 || !spares) return joined;
  return fillUp(joined, rules);
}

/** Lots of narrow panels joined one by one; what they leave over is tried once more together. */
function joinLots(narrow: readonly BlankPanel[], wide: readonly BlankPanel[], rules: BlankRules): Joined {
  const lots = splitLots(narrow);
  const known: Known = new Map();
  const bins: BlankPanel[][] = [];
  const left: BlankPanel[] = [];
  lots.forEach((lot, k) => {
    const hosts = wide.filter((_, i) => i % lots.length === k);
    const whole = coverNarrow(lot, rules, known);
    const joined = whole === null ? withWide(lot, hosts, rules) : { bins: whole, left: [] };
    for (const bin of joined.bins) bins.push(bin);
    left.push(...joined.left);
  });
  if (lots.length === 1 || left.length === 0) return { bins, left };
  const again = left.length > 2 * LOT ? null : coverNarrow(left, rules);
  return again === null ? { bins, left } : { bins: [...bins, ...again], left: [] };
}

/** What one more panel costs of a blank's width beside its own. */
function sawn({ kerf, edgeAllowance }: BlankRules): number {
  return kerf + 2 * edgeAllowance;
}

/** Sizes and limits with each panel's saw cut added to it: k panels then have k saw cuts, one more than they need. */
function limitsOf(rules: BlankRules): Limits {
  const cut = sawn(rules);
  return { least: rules.leastEndGrainWidth + cut, most: rules.greatestBlankWidth + cut };
}

/** Longer lists are shared out in lots of so many panels, a number that most numbers of panels to a blank divide. */
const LOT = 240;

/** What lots of sizes gave: lots of the same sizes are shared out alike. */
type Known = Map<string, number[][] | null>;

function coverNarrow(narrow: readonly BlankPanel[], rules: BlankRules, known?: Known): BlankPanel[][] | null {
  const cut = sawn(rules);
  const sizes = narrow.map(({ width }) => width + cut);
  const key = sizes.join(' ');
  const found = known?.get(key);
  const bins = found === undefined ? coverAll(sizes, limitsOf(rules)) : found;
  known?.set(key, bins);
  return bins === null ? null : bins.map((bin) => bin.map((i) => narrow[i]!));
}

/** A long list as lots, dealt out by width like cards; the last takes the remainder, and may be twice as long. */
function splitLots(panels: readonly BlankPanel[]): (readonly BlankPanel[])[] {
  if (panels.length <= 2 * LOT) return [panels];
  const count = Math.floor(panels.length / LOT);
  const lots = Array.from({ length: count }, (): BlankPanel[] => []);
  const bySize = [...panels].sort((p, q) => q.width - p.width);
  bySize.forEach((panel, i) => {
    lots[i < count * LOT ? i % count : count - 1]!.push(panel);
  });
  return lots;
}

/** Ways of sharing out that are tried before the rest is shared out first fit. */
const MOST_WAYS = 20_000;

/**
 * The fewest narrow panels left over where not all can lie in blanks of their own. Every choice of panels to leave out, and of
 * those that ride with a wide one, is tried from the fewest up; of long lists only the widest are left out.
 */
function withWide(narrow: readonly BlankPanel[], wide: readonly BlankPanel[], rules: BlankRules): Joined {
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
      // Equal widths are interchangeable.
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
  // Long lists take longer to try.
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
    // Hosts that are full even for the narrowest rider are not looked at again.
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

/** What is left over in as few lots as the greatest width allows, each with a spare that fills it up. */
function fillUp({ bins, left }: Joined, rules: BlankRules): Joined {
  const cut = sawn(rules);
  const { least, most } = limitsOf(rules);
  const filled: BlankPanel[][] = [];
  let lot: BlankPanel[] = [];
  let width = 0;
  const close = () => {
    if (lot.length === 0) return;
    const spare = Math.max(LEAST_SPARE, least - width - cut);
    filled.push([...lot, { door: 'spare', width: spare }]);
    [lot, width] = [[], 0];
  };
  for (const panel of left) {
    if (width + panel.width + cut + LEAST_SPARE + cut > most) close();
    lot.push(panel);
    width += panel.width + cut;
  }
  close();
  return { bins: [...bins, ...filled], left: [] };
}

/** Blanks with their rips; equal ones counted together. */
function describeBlanks(length: number, bins: readonly BlankPanel[][], rules: BlankRules): Blank[] {
  const cut = sawn(rules);
  const found = new Map<string, Blank & { quantity: number }>();
  for (const bin of bins) {
    const panels = [...bin].sort((p, q) => q.width - p.width).map(({ door, width }) => ({ door, width }));
    const key = JSON.stringify(panels);
    const same = found.get(key);
    if (same !== undefined) {
      found.set(key, { ...same, quantity: same.quantity + 1 });
      continue;
    }
    let at = 0;
    const rips = panels.slice(0, -1).map(({ width }) => {
      at += width + cut;
      return at - cut / 2;
    });
    const width = panels.reduce((total, panel) => total + panel.width, 0) + (panels.length - 1) * cut;
    found.set(key, { length, width, panels, rips, quantity: 1 });
  }
  return [...found.values()];
}

/** Missing to a blank: the least width less what lies there, less one kerf with its allowances. */
function describeLeft(length: number, left: readonly BlankPanel[], rules: BlankRules): LeftOver[] {
  if (left.length === 0) return [];
  const cut = sawn(rules);
  const lies = left.reduce((total, { width }) => total + width, 0) + (left.length - 1) * cut;
  const missing = Math.max(0, rules.leastEndGrainWidth - lies - cut);
  const found = new Map<string, LeftOver>();
  for (const { door, width } of left) {
    const key = `${door} ${width}`;
    const same = found.get(key);
    found.set(key, { door, width, length, missing, quantity: (same?.quantity ?? 0) + 1 });
  }
  return [...found.values()];
}
