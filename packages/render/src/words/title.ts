import type { Report, Verdict } from '@fielded/core';
import { verdictSentence, verdictWord } from '@fielded/core';
import type { Item } from '../scene.ts';
import { sayEdge } from './english/edge.ts';
import type { InVoice } from './lengths.ts';

/** The verdict as a heading. */
export function verdictHeading(verdict: Verdict | null, voice: InVoice): string {
  const word = verdictWord(verdict, voice);
  return word[0]!.toUpperCase() + word.slice(1);
}

/** A drawing in words: the verdict, then every dimension. */
export function describe(report: Report, items: readonly Item[]): string {
  const sentence = (words: string) => sayEdge('title.sentence', { words }, report);
  const labels = (list: readonly Item[]): string[] =>
    list.flatMap((item) => {
      if (item.kind !== 'group') return [];
      return item.label === undefined ? labels(item.items) : [sentence(item.label)];
    });
  return [sentence(verdictHeading(report.fit.verdict, report)), verdictSentence(report), ...labels(items)].join(' ');
}
