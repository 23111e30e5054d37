import { SAME_LENGTH } from '@fielded/geometry';
import { formatLength, formatNumber } from '../measure/format.ts';
import { IN_ENGLISH, type Language, type Voice } from './language.ts';
import type { Figures, Said, Spans } from './problem.ts';
import { type SentenceFigure, tellApart } from './tell-apart.ts';
import { sayTerm, TERMS, type Term, termsOf } from './terms.ts';

/** What is spoken: a language, and the English that stands in where it lacks a sentence. */
export interface Speech {
  readonly language: Language;
  readonly english: Readonly<Record<string, string>>;
}

/**
 * A sentence with its figures and terms written in. Names given as figures are written as they are, whatever stands in them;
 * numbers that differ are written so that they can be told apart (see `tellApart`).
 *
 * @throws RangeError for a figure that is not given or a term that is not known.
 */
export function phraseIn(sentence: string, figures: Figures, voice: Voice, speech: Speech): string {
  const words = withoutPlace(sentence, figures, voice);
  const numbers = showNumbers(words, figures, voice, speech);
  return words.replace(PLACEHOLDER, (_, name: string | undefined, kind: string | undefined, term: string) => {
    if (name === undefined) return showTerm(term, voice);
    const value = figures[name];
    if (value === undefined) throw new RangeError(`the sentence names {${name}}, which is not given`);
    if (kind === 'path') return showPlace(String(value), voice, speech);
    if (typeof value === 'string') return value;
    if (typeof value === 'number') return withDecimal(numbers(value, kind ?? 'number'), speech.language);
    if (kind === 'said') return sayIn(value as Said, voice, speech);
    if (kind === 'list')
      return joinAll(
        (value as readonly Said[]).map((each) => sayIn(each, voice, speech)),
        'figure.list',
        speech,
      );
    return withDecimal(showSpans(value as Spans, numbers, speech), speech.language);
  });
}

/** Writes the numbers of one sentence, given each with its kind. */
type ShowNumber = (value: number, kind: string) => string;

/** How the numbers that a sentence names are written, so that those that differ can be told apart. */
function showNumbers(sentence: string, figures: Figures, voice: Voice, speech: Speech): ShowNumber {
  const keys: string[] = [];
  const named: SentenceFigure[] = [];
  const add = (value: number, kind: string) => {
    keys.push(`${kind} ${value}`);
    named.push({ value, ...howWritten(value, kind, voice, speech) });
  };
  for (const [, name, kind] of sentence.matchAll(PLACEHOLDER)) {
    const value = name === undefined ? undefined : figures[name];
    if (typeof value === 'number' && kind !== 'path') add(value, kind ?? 'number');
    if (kind === 'spans') for (const end of (value as Spans | undefined)?.flat() ?? []) add(end, 'length');
  }
  const written = tellApart(named);
  return (value, kind) => written[keys.indexOf(`${kind} ${value}`)]!;
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

function showSpans(spans: Spans, show: ShowNumber, speech: Speech): string {
  const shown = spans.map(([from, to]) => fill('figure.span', show(from, 'length'), show(to, 'length'), speech));
  return joinAll(shown, 'figure.and', speech);
}

function joinAll(parts: readonly string[], how: 'figure.list' | 'figure.and', speech: Speech): string {
  return parts.length === 0 ? '' : parts.reduce((one, next) => fill(how, one, next, speech));
}

/** How a number of a kind is written, and with how many decimals unless it takes more. */
function howWritten(value: number, kind: string, voice: Voice, speech: Speech): Omit<SentenceFigure, 'value'> {
  switch (kind) {
    case 'length':
    case 'coarse': {
      const write = (digits: number) => showLength(value, digits, voice, speech);
      return { kind: 'length', digits: kind === 'length' ? 2 : 1, write };
    }
    case 'degrees':
      return { kind, digits: 1, write: (digits) => `${formatNumber(value, digits)}°` };
    case 'percent':
      return { kind, digits: 1, write: (digits) => `${formatNumber(value, digits)} %` };
    case 'area':
      return { kind, digits: 2, write: (digits) => showArea(value, digits, voice) };
    case 'count':
      return { kind, digits: 0, write: () => formatNumber(value, 0) };
    case 'grouped':
      return { kind, digits: 0, write: () => showGrouped(value, speech) };
    case 'share':
      return { kind, digits: 1, write: () => showShare(value, speech) };
    case 'number':
      return { kind, digits: 2, write: (digits) => formatNumber(value, digits) };
    default:
      throw new RangeError(`a figure cannot be written as ${kind}`);
  }
}

/** A length; one that no shop measures is told as less than the least that is shown. */
function showLength(mm: number, digits: number, { units }: Voice, speech: Speech): string {
  if (mm < SAME_LENGTH || mm >= LEAST_SHOWN / 2) return formatLength(mm, units, digits);
  return fill('figure.under', formatLength(LEAST_SHOWN, units, 3), '', speech);
}

/** mm: nothing finer is measured in wood. */
const LEAST_SHOWN = 0.001;

function showArea(value: number, digits: number, { units }: Voice): string {
  return units === 'in' ? `${formatNumber(value / 645.16, digits + 2)} in²` : `${formatNumber(value, digits)} mm²`;
}

function showGrouped(value: number, speech: Speech): string {
  return formatNumber(value, 0).replace(/\B(?=(\d{3})+$)/g, speech.language.decimal === ',' ? TIED : ',');
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
