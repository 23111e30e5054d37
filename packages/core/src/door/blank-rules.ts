import type { Limits } from './bins.ts';

/** The shop's rules for blanks, mm. */
export interface BlankRules {
  readonly leastEndGrainWidth: number;
  readonly greatestBlankWidth: number;
  readonly kerf: number;
  /** Cleaned off each sawn edge. */
  readonly edgeAllowance: number;
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
