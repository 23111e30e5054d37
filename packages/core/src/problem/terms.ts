import type { Units } from '../measure/length.ts';

/**
 * Terms that differ between British and American shops, each once. The keys of the job file stay as they are; words and
 * drawings follow the job's `terms`.
 */
export const TERMS = {
  raise: { british: 'fielding', american: 'raise' },
  reach: { british: 'width of fielding', american: 'bevel width' },
  setback: { british: 'groove from face', american: 'face offset' },
  margin: { british: 'fielding showing', american: 'reveal' },
  recessed: { british: 'below flush', american: 'recessed' },
  swellGap: { british: 'expansion gap', american: 'expansion gap' },
  head: { british: 'cutter block', american: 'cutterhead' },
  rake: { british: 'cutting angle', american: 'hook angle' },
  wedge: { british: 'sharpness angle', american: 'grinding angle' },
  limiter: { british: 'limiter', american: 'chip limiter' },
  seat: { british: 'working height', american: 'spindle travel' },
  ring: { british: 'table ring', american: 'table insert' },
  onEdge: { british: 'on edge', american: 'vertical' },
  under: { british: 'cutter below', american: 'face down' },
  over: { british: 'cutter above', american: 'face up' },
  sticking: { british: 'sticking', american: 'sticking' },
  cope: { british: 'scribe', american: 'cope' },
  rebate: { british: 'rebate', american: 'rabbet' },
  muntin: { british: 'muntin', american: 'mullion' },
  moulder: { british: 'spindle moulder', american: 'shaper' },
} as const;

export type Terms = 'british' | 'american';
export type Term = keyof typeof TERMS;

/** The terms a job speaks in: those it names, else British for millimetres and American for inches. */
export function termsOf({ units, terms }: { readonly units: Units; readonly terms?: Terms }): Terms {
  return terms ?? (units === 'in' ? 'american' : 'british');
}

/** A term as one side of the Atlantic says it. */
export function sayTerm(term: Term, terms: Terms): string {
  return TERMS[term][terms];
}
