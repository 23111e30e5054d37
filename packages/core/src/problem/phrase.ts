import { formatLength, formatNumber } from '../measure/format.ts';
import { IN_ENGLISH, type Language, type Voice } from './language.ts';
import type { Figures, Said, Spans } from './problem.ts';
import { sayTerm, TERMS, type Term, termsOf } from './terms.ts';

/** What is spoken: a language, and the English that stands in where it lacks a sentence. */
export interface Speech {
  readonly language: Language;
  readonly english: Readonly<Record<string, string>>;
}

/**
 * A sentence with its figures and terms written in. Names given as figures are written as they are, whatever stands in them.
 *
 * @throws RangeError for a figure that is not given or a term that is not known.
 */
export function phraseIn(sentence: string, figures: Figures, voice: Voice, speech: Speech): string {
  return withoutPlace(sentence, figures, voice).replace(
    PLACEHOLDER,
    (_, name: string | undefined, kind: string | undefined, term: string) => {
      if (name === undefined) return showTerm(term, voice);
      const value = figures[name];
      if (value === undefined) throw new RangeError(`the sentence names {${name}}, which is not given`);
      if (kind === 'path') return showPlace(String(value), voice, speech);
      if (typeof value === 'string') return value;
      if (typeof value === 'number')
        return withDecimal(showNumber(value, kind ?? 'number', voice, speech), speech.language);
      if (kind === 'said') return sayIn(value as Said, voice, speech);
      if (kind === 'list')
        return joinAll(
          (value as readonly Said[]).map((each) => sayIn(each, voice, speech)),
          'figure.list',
          speech,
        );
      return withDecimal(showSpans(value as Spans, voice, speech), speech.language);
    },
  );
}

/** `{name}`, `{name:kind}` or `[term]`. */
const PLACEHOLDER = /\{(\w+)(?::(\w+))?\}|\[(\w+)\]/g;

/** `{name:path}: ` before what is said of a place: left out where the words stand beside it. */
const PLACE_FIRST = /^\{(\w+):path\}: /;

function withoutPlace(sentence: string, figures: Figures, { namePlace }: Voice): string {
  const [head, name] = (namePlace && PLACE_FIRST.exec(sentence)) ?? [];
  return head !== undefined && namePlace?.(String(figures[name!])) === '' ? sentence.slice(head.length) : sentence;
}

function showPlace(path: string, { namePlace }: Voice, speech: Speech): string {
  if (namePlace === undefined) return path;
  const called = namePlace(path);
  return called === '' ? fill('figure.here', '', '', speech) : called;
}

function showTerm(term: string, voice: Voice): string {
  if (!Object.hasOwn(TERMS, term)) throw new RangeError(`the sentence names [${term}], which is no term`);
  return sayTerm(term as Term, termsOf(voice));
}

/** A sentence of the catalogue in a language, or in English where the language lacks it. */
export function sayIn({ sentence, figures }: Said, voice: Voice, { language, english }: Speech): string {
  if (voice.mute) return '';
  const own = Object.hasOwn(language.sentences, sentence) ? language.sentences[sentence] : undefined;
  if (own !== undefined) return phraseIn(own, figures, voice, { language, english });
  // A sentence that the language lacks is English, with the figures written as in all the others.
  const standIn = { ...IN_ENGLISH, decimal: language.decimal };
  return phraseIn(english[sentence] ?? '', figures, voice, { language: standIn, english });
}

function showSpans(spans: Spans, { units }: Voice, speech: Speech): string {
  const shown = spans.map(([from, to]) =>
    fill('figure.span', formatLength(from, units), formatLength(to, units), speech),
  );
  return joinAll(shown, 'figure.and', speech);
}

function joinAll(parts: readonly string[], how: 'figure.list' | 'figure.and', speech: Speech): string {
  return parts.length === 0 ? '' : parts.reduce((one, next) => fill(how, one, next, speech));
}

function showNumber(value: number, kind: string, voice: Voice, speech: Speech): string {
  const length = (mm: number) => formatLength(mm, voice.units);
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
    case 'grouped':
      return formatNumber(value, 0).replace(/\B(?=(\d{3})+$)/g, speech.language.decimal === ',' ? TIED : ',');
    case 'share':
      return showShare(value, speech);
    case 'number':
      return formatNumber(value, 2);
    default:
      throw new RangeError(`a figure cannot be written as ${kind}`);
  }
}

/** A space at which no line breaks, so that a figure keeps its %. */
const TIED = '\u00a0';

/** A share, 0 to 1, in %: to a tenth, to a hundredth below 1 and above 99, and never as none or all where it is neither. */
function showShare(share: number, speech: Speech): string {
  if (share === 0 || share === 1) return `${share * 100}${TIED}%`;
  if (share < 0.0001) return fill('figure.under', `0.01${TIED}%`, '', speech);
  if (share > 0.9999) return fill('figure.over', `99.99${TIED}%`, '', speech);
  return `${formatNumber(share * 100, share < 0.01 || share > 0.99 ? 2 : 1)}${TIED}%`;
}

/** A sentence of the catalogue with one or two words in it. */
function fill(key: string, one: string, other: string, { language, english }: Speech): string {
  const sentence = Object.hasOwn(language.sentences, key) ? language.sentences[key] : english[key];
  return (sentence ?? '').replace(/\{(one|other)\}/g, (_, name) => (name === 'one' ? one : other));
}

function withDecimal(words: string, { decimal }: Language): string {
  return decimal === '.' ? words : words.replace(/(\d)\.(\d)/g, `$1${decimal}$2`);
}
