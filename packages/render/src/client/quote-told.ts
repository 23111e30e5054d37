import { decimalOf, facePhrase, type Language, phrase, type QuoteWords, type Report } from '@fielded/core';
import type { Block } from '../document/document.ts';

/** Says one of the fixed sentences of a quote. */
export type Say = (key: keyof QuoteWords, figures?: Readonly<Record<string, number | string>>) => string;

/** How a quote is put into words: its fixed sentences, lengths in the job's unit, and how the field stands to the frame. */
export interface Told {
  readonly say: Say;
  readonly length: (mm: number) => string;
  readonly face: string;
}

/** Makes a language of a quote's fixed words, in which the face is said too. */
export function tell(report: Report, words: QuoteWords): Told {
  const language: Language = { sentences: words, decimal: decimalOf(words.language) };
  const { units, fit } = report;
  return {
    say: (key, figures = {}) => phrase(words[key], figures, { units }, language),
    length: (mm) => phrase('{mm:coarse}', { mm }, { units }, language),
    face: fit.frontFace === null ? '' : facePhrase(fit.frontFace, units, { units, language }),
  };
}

/** A paragraph in quiet letters. */
export function quiet(text: string): Block {
  return { kind: 'paragraph', text, tone: 'quiet' };
}
