import type { Report, Verdict } from '@fielded/core';
import { goesTogether, stateRun, verdictSentence, verdictWord } from '@fielded/core';
import type { Item, Role } from '../scene.ts';
import { sayEdge } from './english/edge.ts';

/** What stands at the head of a drawing: words, the mark before them, and how they are drawn. */
export interface Head {
  readonly words: string;
  readonly mark: Verdict | 'not-run' | null;
  readonly role: Role;
}

/**
 * The verdict as a heading; where the tongue slides and an error stands against the job all the same, that it cannot be run: a
 * tick at the head of a drawing would be read as leave to go ahead.
 */
export function verdictHead(report: Report): Head {
  const { fits, canBeRun } = report.statements;
  const { verdict } = report.fit;
  const blocked = fits && canBeRun === false;
  const words = blocked ? stateRun(report).words : verdictWord(verdict, report);
  return {
    words: words[0]!.toUpperCase() + words.slice(1),
    mark: blocked ? 'not-run' : verdict,
    role: !blocked && goesTogether(verdict) ? 'judged-text' : 'trouble-text',
  };
}

/** A drawing in words: the verdict, then every dimension. */
export function describe(report: Report, items: readonly Item[]): string {
  const sentence = (words: string) => sayEdge('title.sentence', { words }, report);
  const labels = (list: readonly Item[]): string[] =>
    list.flatMap((item) => {
      if (item.kind !== 'group') return [];
      return item.label === undefined ? labels(item.items) : [sentence(item.label)];
    });
  return [sentence(verdictHead(report).words), verdictSentence(report), ...labels(items)].join(' ');
}
