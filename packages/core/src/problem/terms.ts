/** Terms that differ between British and American shops. The keys of the job file stay as they are. */
export const TERMS = {
  raise: { british: 'fielding', american: 'raise' },
  head: { british: 'cutter block', american: 'cutterhead' },
  rake: { british: 'cutting angle', american: 'hook angle' },
  rebate: { british: 'rebate', american: 'rabbet' },
} as const;

export type Terms = 'british' | 'american';
export type Term = keyof typeof TERMS;
