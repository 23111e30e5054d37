import { type BlankRules, hundredths, isNarrow, limitsOf, sawn } from './blank-rules.ts';
import { describeBlanks, describeLeft } from './describe-blanks.ts';
import type { Blank, BlankPanel, LeftOver } from './door-report.ts';
import { coverNarrow, type Joined, type Known, withWide } from './ride-wide.ts';

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
    const length = hundredths(item.length);
    const group = groups.get(length);
    if (group === undefined) groups.set(length, [item]);
    else group.push(item);
  }
  return groups;
}

function joinLength(group: readonly BlankItem[], rules: BlankRules, spares: boolean): Joined {
  const narrow = group.filter(({ width }) => isNarrow(width, rules.leastEndGrainWidth));
  const wide = group.filter(({ width }) => !isNarrow(width, rules.leastEndGrainWidth));
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

/** Longer lists are split into lots of this many panels; most numbers of panels per blank divide it. */
const LOT = 240;

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
