import { formatLength, formatNumber } from '../measure/format.ts';
import { ENGLISH } from './english.ts';
import { IN_ENGLISH, type Language, type Voice } from './language.ts';
import type { Figures, Said, Spans } from './problem.ts';
import { sayTerm, TERMS, type Term, termsOf } from './terms.ts';

/**
 * A sentence with its figures and terms written in.
 *
 * @throws RangeError for a figure that is not given or a term that is not known.
 */
export function phrase(sentence: string, figures: Figures, voice: Voice, language: Language): string {
  return sentence
    .replace(/\{(\w+)(?::(\w+))?\}/g, (_, name: string, kind: string | undefined) => {
      const value = figures[name];
      if (value === undefined) throw new RangeError(`the sentence names {${name}}, which is not given`);
      if (typeof value === 'string') return value;
      if (kind === 'said') return sayIn(value as Said, voice, language);
      return withDecimal(showFigure(value as number | Spans, kind ?? 'number', voice, language), language);
    })
    .replace(/\[(\w+)\]/g, (_, term: string) => {
      if (!Object.hasOwn(TERMS, term)) throw new RangeError(`the sentence names [${term}], which is no term`);
      return sayTerm(term as Term, termsOf(voice));
    });
}

/** A sentence of the catalogue in a language, or in English where the language lacks it. */
export function sayIn({ sentence, figures }: Said, voice: Voice, language: Language): string {
  const own = Object.hasOwn(language.sentences, sentence) ? language.sentences[sentence] : undefined;
  if (own !== undefined) return phrase(own, figures, voice, language);
  return phrase(ENGLISH[sentence as keyof typeof ENGLISH] ?? '', figures, voice, IN_ENGLISH);
}

function showFigure(value: number | Spans, kind: string, voice: Voice, language: Language): string {
  const length = (mm: number) => formatLength(mm, voice.units);
  if (typeof value !== 'number') {
    const span = language.sentences['figure.span'] ?? ENGLISH['figure.span'];
    const and = language.sentences['figure.and'] ?? ENGLISH['figure.and'];
    return value.map(([from, to]) => fill(span, length(from), length(to))).reduce((one, next) => fill(and, one, next));
  }
  switch (kind) {
    case 'length':
      return length(value);
    case 'coarse':
      return formatLength(value, voice.units, 1);
    case 'degrees':
      return `${formatNumber(value, 1)}°`;
    case 'percent':
      return `${formatNumber(value, 1)} %`;
    case 'area':
      return voice.units === 'in' ? `${formatNumber(value / 645.16, 4)} in²` : `${formatNumber(value, 2)} mm²`;
    case 'count':
      return formatNumber(value, 0);
    case 'number':
      return formatNumber(value, 2);
    default:
      throw new RangeError(`a figure cannot be written as ${kind}`);
  }
}

/** A sentence of two words. */
function fill(sentence: string, one: string, other: string): string {
  return sentence.replace(/\{(one|other)\}/g, (_, name) => (name === 'one' ? one : other));
}

function withDecimal(words: string, { decimal }: Language): string {
  return decimal === '.' ? words : words.replace(/(\d)\.(\d)/g, `$1${decimal}$2`);
}
