import { decimalOf, phrase, type Quote, type QuoteLine, type QuoteWords, say, type Voice } from '@fielded/core';

/** A line of a quote in its fixed words; work on the frame by its names in the voice's language. */
export function sayLine(
  { item, figures }: QuoteLine,
  { price }: Quote,
  { units, language }: Voice,
  words: QuoteWords,
): string {
  const key = item === 'wood' && figures.wood === '' ? 'item.timber' : (`item.${item}` as const);
  const given = price.notCounted.filter(({ missing }) => missing !== null);
  const voice: Voice = { units, ...(language && { language }) };
  const filled =
    item === 'frame' ? { names: given.map(({ what }) => say(`work.${what}`, {}, voice)).join(', ') } : figures;
  return phrase(words[key], filled, voice, { sentences: {}, decimal: decimalOf(words.language) });
}
