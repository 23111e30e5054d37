/// <reference path="./untyped-libraries.d.ts" />
import bidiFactory from 'bidi-js';
import { hasLeftwards, runsLeftwards } from '../text/safe-text.ts';
import type { Typeface, Typefaces } from './typefaces.ts';

/** A stretch of a line of text that one font draws in one direction, at `x` from the line's left end. Lengths in ems. */
interface Run {
  readonly typeface: Typeface;
  /** Its signs as written; brackets that run right to left are mirrored. */
  readonly text: string;
  readonly x: number;
  readonly width: number;
}

export interface Shaped {
  /** From left to right as seen. */
  readonly runs: readonly Run[];
  readonly width: number;
}

/** Signs that belong to no script: they stay with the letters before them. */
const NEUTRAL = /[\p{sc=Common}\p{sc=Inherited}]/u;

const bidi: ReturnType<typeof bidiFactory> = bidiFactory();

/**
 * A line of text as stretches that one font draws in one direction, in the order they are seen (Unicode Bidirectional
 * Algorithm, UAX #9), the line as a whole running the way its first letter does.
 *
 * A sign that no font has is left to the first, which draws its mark for a missing one.
 */
export function shapeText(text: string, typefaces: Typefaces): Shaped {
  const levels = hasLeftwards(text) ? bidi.getEmbeddingLevels(text, runsLeftwards(text) ? 'rtl' : 'ltr').levels : null;
  const runs: Run[] = [];
  let x = 0;
  for (const { typeface, text: signs, level } of orderRuns(splitRuns(text, typefaces, levels))) {
    const seen = level % 2 === 1 ? mirrorBrackets(signs) : signs;
    const width = typeface.advance(seen) / typeface.unitsPerEm;
    runs.push({ typeface, text: seen, x, width });
    x += width;
  }
  return { runs, width: x };
}

interface Stretch {
  readonly typeface: Typeface;
  readonly level: number;
  text: string;
}

/** Splits where the font or the level of direction changes, in the order the text is written. */
function splitRuns(text: string, typefaces: Typefaces, levels: Uint8Array | null): Stretch[] {
  const runs: Stretch[] = [];
  let at = 0;
  for (const sign of text) {
    const code = sign.codePointAt(0)!;
    const level = levels?.[at] ?? 0;
    at += sign.length;
    // Signs of format have done their work by now.
    if (/\p{Cf}/u.test(sign)) continue;
    const last = runs.at(-1);
    const stays = last !== undefined && NEUTRAL.test(sign) && last.typeface.has(code);
    const typeface = stays ? last.typeface : (typefaces.find(({ has }) => has(code)) ?? typefaces[0]);
    if (last !== undefined && last.typeface === typeface && last.level === level) last.text += sign;
    else runs.push({ typeface, level, text: sign });
  }
  return runs;
}

/** Rule L2 of the algorithm: from the highest level down, stretches of that level or above are turned round. */
function orderRuns(runs: readonly Stretch[]): Stretch[] {
  const ordered = [...runs];
  const highest = Math.max(0, ...runs.map(({ level }) => level));
  for (let level = highest; level > 0; level -= 1) {
    for (let from = 0; from < ordered.length; from += 1) {
      let to = from;
      while (to < ordered.length && ordered[to]!.level >= level) to += 1;
      if (to > from) ordered.splice(from, to - from, ...ordered.slice(from, to).reverse());
      from = to;
    }
  }
  return ordered;
}

function mirrorBrackets(text: string): string {
  return [...text].map((sign) => bidi.getMirroredCharacter(sign) ?? sign).join('');
}
