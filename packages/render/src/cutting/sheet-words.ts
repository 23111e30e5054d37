import { byJob, type CuttingList, type ListedPanel, type Report } from '@fielded/core';
import type { Block, TextDocument } from '../document/document.ts';
import { safeDocument } from '../document/safe-document.ts';
import type { PaperName } from '../paper.ts';
import { safeText } from '../text/safe-text.ts';
import { sayList } from '../words/english/list.ts';
import { sayNote } from '../words/english/note.ts';
import { type InVoice, spokenLength } from '../words/lengths.ts';

/** What goes into the sheets beside the list itself. */
export interface CuttingSheetOptions {
  /** The jobs' reports, in the list's order. */
  readonly reports: readonly Report[];
  /** The shop's rules that were not given and had to be assumed, as words: "kerf 3.2 mm". */
  readonly assumed: readonly string[];
  readonly paper?: PaperName;
}

/** Says a heading or another entry without figures. */
type Heading = Parameters<typeof sayList>[0];

/** A sheet as a document, with its title and foot. */
export function cuttingDocument(
  what: 'list.saw' | 'list.moulder' | 'list.panels',
  list: CuttingList,
  voice: InVoice,
  blocks: readonly Block[],
): TextDocument {
  const title = sayList(what, { jobs: list.jobs.map(safeText).join(', ') }, voice);
  const language = sayNote('page.language', {}, voice);
  const spoken = voice.language && { spoken: voice.language };
  return safeDocument({ title, language, foot: title, blocks: [{ kind: 'title', text: title }, ...blocks], ...spoken });
}

/** The errors of the jobs, first on every sheet: six at most. */
export function troubles(reports: readonly Report[], voice: InVoice): Block[] {
  const errors = reports.flatMap(({ problems }) => problems.filter(({ severity }) => severity === 'error'));
  return errors.slice(0, 6).map(({ message }) => ({
    kind: 'paragraph',
    text: sayNote('error.line', { message }, voice),
    tone: 'trouble',
  }));
}

/** Shares of columns: fractions of an inch take more room than millimetres, and no figure may be broken. */
export function sharesIn(
  units: Report['units'],
  inMillimetres: readonly number[],
  inInches: readonly number[],
): readonly number[] {
  return units === 'in' ? inInches : inMillimetres;
}

/** Says entries without figures: one, or several at once. */
export function headings(
  voice: InVoice,
): ((key: Heading) => string) & { readonly all: (...keys: Heading[]) => string[] } {
  const say = (key: Heading): string => sayList(key, {}, voice);
  return Object.assign(say, { all: (...keys: Heading[]) => keys.map(say) });
}

/** A size in a column whose unit the sheet has said. */
export function plainSize(mm: number, voice: InVoice): string {
  return spokenLength(mm, voice, 1).replaceAll(` ${voice.units}`, '');
}

/** "A × 4, B": the doors that pieces are for; by job where there are several. */
export function forWhom(list: CuttingList, doors: ListedPanel['for']): string {
  return byJob(list, doors)
    .map(({ job, doors: own }) => {
      const names = own
        .map(({ door, quantity }) => `${safeText(door)}${quantity > 1 ? `\u00a0×\u00a0${quantity}` : ''}`)
        .join(', ');
      return job === '' ? names : `${safeText(job)}: ${names}`;
    })
    .join('; ');
}

/** Scales of the pictures on the sheets, as their denominators. */
export const SCALES: readonly number[] = [2, 5, 10, 15, 20, 25, 30, 40, 50, 75, 100];
