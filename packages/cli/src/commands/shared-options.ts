import type { OfficePaper } from '@fielded/render';
import type { Option } from '../command.ts';
import { listed, UsageError, unsaid } from '../usage-error.ts';

// Options that several commands have, in the same words everywhere.

/** The endings of files with jobs and shops in them. */
export const FILE_ENDINGS: readonly string[] = ['.yaml', '.yml', '.json'];

type Valued = Option & { readonly value: string };

export const SHOP: Valued = {
  value: 'FILE',
  says: 'use this shop file, wherever it is, instead of the one a job names',
  endings: FILE_ENDINGS,
};

export const LANGUAGE: Valued = {
  value: 'FILE',
  says: 'say everything in the language of this file; with a decimal comma, semicolons part the columns of a .csv',
  endings: FILE_ENDINGS,
};

export const FORCE: Option & { readonly value?: never } = {
  says: 'replace a file that is there already and fielded did not write',
};

export const JSON_OUT: Option & { readonly value?: never } = {
  says: 'print the answer as JSON, lengths in mm at full precision',
};

/** What documents and sheets for the shop are laid out for. */
export const PAPER: Valued & { readonly choices: readonly OfficePaper[] } = {
  value: 'SIZE',
  choices: ['a4', 'letter'],
  says: 'the size of the pages; a4 unless told',
};

/** Refuses a paper for what has no pages: `written` where pages are asked for. */
export function checkPaper(paper: OfficePaper | undefined, written: boolean, endings: readonly string[]): void {
  if (paper !== undefined && !written)
    throw new UsageError(unsaid('print.usage.paper-of-pages', { endings: listed(endings, 'or') }));
}

/** `-o`, saying what each ending gives. */
export function output(says: string): Valued {
  return { value: 'FILE', short: 'o', says, endings: [] };
}
