import { SAME_LENGTH } from '@fielded/geometry';
import type { Limits } from './bins.ts';

/** The shop's rules for blanks, mm. */
export interface BlankRules {
  readonly leastEndGrainWidth: number;
  readonly greatestBlankWidth: number;
  readonly kerf: number;
  /** Cleaned off each sawn edge. */
  readonly edgeAllowance: number;
}

/** Whether a panel is too narrow, mm across the grain, to be run on its end grain by itself; one just as wide as the rule asks is not, however it rounds. */
export function isNarrow(width: number, leastEndGrainWidth: number): boolean {
  return width < leastEndGrainWidth - SAME_LENGTH;
}

/**
 * A size in whole hundredths of a millimetre: sizes of one such number are one size at the saw. An eighth of an inch, 3.175 mm, lies halfway
 * between two; it goes up whichever way binary arithmetic left it.
 */
export function hundredths(mm: number): number {
  return Math.round(mm * 100 + 1e-6);
}

/** What one more panel costs of a blank's width beside its own. */
export function sawn({ kerf, edgeAllowance }: BlankRules): number {
  return kerf + 2 * edgeAllowance;
}

/** Sizes and limits with each panel's saw cut added to it: k panels then have k saw cuts, one more than they need. */
export function limitsOf(rules: BlankRules): Limits {
  const cut = sawn(rules);
  return { least: rules.leastEndGrainWidth + cut, most: rules.greatestBlankWidth + cut };
}
