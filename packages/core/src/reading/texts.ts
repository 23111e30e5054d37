import { toldKey, toldPart, type ValueWords } from '../problem/say-fault.ts';
import { type FigureSchema, figure } from './figure-schema.ts';
import { kindOf } from './figures.ts';

/** A line of text of up to `most` characters; a whole number stands for its digits, since makers number their doors. */
export function textLine(words: ValueWords, most = 200): FigureSchema<string> {
  const word = toldKey(words);
  const wanted = toldPart('wanted.text', { word, most });
  return figure({ form: 'text' }, (input) => {
    const line = typeof input === 'number' && Number.isInteger(input) ? String(input) : input;
    if (typeof line !== 'string')
      return { code: 'wrong-type', read: kindOf(input, toldPart('wanted.word', { word })), wanted };
    if (line.trim() === '') return { code: 'empty-value', read: toldPart('read.empty', {}), wanted };
    return line.length > most
      ? { code: 'out-of-range', read: toldPart('read.too-long', { characters: line.length }), wanted }
      : { value: line };
  });
}

/** A currency by its ISO 4217 code: three capital letters. */
export function currency(): FigureSchema<string> {
  const wanted = toldPart('wanted.currency', {});
  return figure({ form: 'text' }, (input) => {
    if (typeof input !== 'string')
      return { code: 'wrong-type', read: kindOf(input, toldPart('wanted.a-currency', {})), wanted };
    return /^[A-Z]{3}$/.test(input)
      ? { value: input }
      : { code: 'unknown-choice', read: toldPart('read.not-a-currency', {}), wanted };
  });
}

/** SVG path data, still as text: what it draws is read with the profile. */
export function pathText(): FigureSchema<string> {
  const wanted = toldPart('wanted.path', {});
  return figure({ form: 'text' }, (input) =>
    typeof input === 'string'
      ? { value: input }
      : { code: 'wrong-type', read: kindOf(input, toldPart('wanted.path-data', {})), wanted },
  );
}
