import { SAME_LENGTH } from '@fielded/geometry';
import { type BlankRules, hundredths, sawn } from './blank-rules.ts';
import type { Blank, BlankPanel, LeftOver } from './door-report.ts';

/** Blanks with their rips; equal ones counted together. */
export function describeBlanks(length: number, bins: readonly BlankPanel[][], rules: BlankRules): Blank[] {
  const cut = sawn(rules);
  const found = new Map<string, Blank & { quantity: number }>();
  for (const bin of bins) {
    const panels = [...bin].sort((p, q) => q.width - p.width).map(({ door, width }) => ({ door, width }));
    const key = JSON.stringify(panels.map(({ door, width }) => [door, hundredths(width)]));
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
export function describeLeft(length: number, left: readonly BlankPanel[], rules: BlankRules): LeftOver[] {
  if (left.length === 0) return [];
  const cut = sawn(rules);
  const lies = left.reduce((total, { width }) => total + width, 0) + (left.length - 1) * cut;
  const short = rules.leastEndGrainWidth - lies - cut;
  const missing = short > SAME_LENGTH ? short : 0;
  const found = new Map<string, LeftOver>();
  for (const { door, width } of left) {
    const key = `${door} ${hundredths(width)}`;
    const same = found.get(key);
    found.set(key, { door, width, length, missing, quantity: (same?.quantity ?? 0) + 1 });
  }
  return [...found.values()];
}
