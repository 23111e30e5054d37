import type { Report } from '@fielded/core';
import { verdictSentence } from '@fielded/core';
import type { Item } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { verdictHeading } from './verdict.ts';

/** What a drawing is called: the job's title and the view's name. */
export function titleOf(report: Report, name: string): string {
  return `${safeText(report.title)}: ${name[0]!.toLowerCase()}${name.slice(1)}`;
}

/** A drawing in words: the verdict, then every dimension. */
export function describe(report: Report, items: readonly Item[]): string {
  const labels = (list: readonly Item[]): string[] =>
    list.flatMap((item) => {
      if (item.kind !== 'group') return [];
      return item.label === undefined ? labels(item.items) : [`${item.label}.`];
    });
  return [`${verdictHeading(report.fit.verdict)}.`, verdictSentence(report), ...labels(items)].join(' ');
}
