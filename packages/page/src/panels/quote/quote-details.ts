import { QUOTE_WORDS, type QuoteKind, type QuoteOptions, type QuoteWords } from '@fielded/core';
import type { PaperName } from '@fielded/render';
import { readNote, writeNote } from '../../desk/job-notes.ts';
import { usualPaper } from '../../files/usual-paper.ts';

/** Whom a quote is for and how it is written: kept beside the job in this browser, in no file. */
export interface QuoteDetails {
  readonly kind: QuoteKind;
  /** Lines as they were typed. */
  readonly client: string;
  readonly number: string;
  /** ISO 8601; '' for the day on which it is made. */
  readonly date: string;
  readonly paper: PaperName;
}

const NOTE = 'quote';
const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;
const KINDS: readonly unknown[] = ['quote', 'estimate'];
const PAPERS: readonly unknown[] = ['a4', 'letter'];

/** The details that were given for a job before; for a new one nothing but the paper that is usual here. */
export function readDetails(id: string): QuoteDetails {
  const held = (readNote(id, NOTE) ?? {}) as Partial<Record<keyof QuoteDetails, unknown>>;
  const text = (value: unknown) => (typeof value === 'string' ? value : '');
  return {
    kind: KINDS.includes(held.kind) ? (held.kind as QuoteKind) : 'quote',
    client: text(held.client),
    number: text(held.number),
    date: text(held.date),
    paper: PAPERS.includes(held.paper) ? (held.paper as PaperName) : usualPaper(),
  };
}

const WORDS_NOTE = 'quote words';

/** The fixed words that were chosen for this job; the English ones where none were, or where one cannot be read. */
export function readWordsNote(id: string): QuoteWords {
  const held = readNote(id, WORDS_NOTE);
  if (typeof held !== 'object' || held === null) return QUOTE_WORDS;
  const words = { ...QUOTE_WORDS, ...held };
  return Object.values(words).every((text) => typeof text === 'string') ? words : QUOTE_WORDS;
}

/** Keeps the fixed words for this job; the English ones need no note. */
export function keepWords(id: string, words: QuoteWords): void {
  writeNote(id, WORDS_NOTE, words === QUOTE_WORDS ? undefined : words);
}

/** Keeps the details for this job. */
export function keepDetails(id: string, details: QuoteDetails): void {
  writeNote(id, NOTE, details);
}

/** The details as the core takes them. */
export function optionsOf({ kind, client, number, date }: QuoteDetails): QuoteOptions {
  return {
    kind,
    date: ISO_DAY.test(date) ? date : today(),
    ...(number.trim() !== '' && { number: number.trim() }),
    ...(client.trim() !== '' && { client: client.trim() }),
  };
}

/** The day here, ISO 8601. */
export function today(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}
