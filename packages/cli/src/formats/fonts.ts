import { readFileSync } from 'node:fs';
import type { Voice } from '@fielded/core';
import { findMissingLetters, openTypefaces, type Scene, type Typeface } from '@fielded/render';
import { listSystemFonts } from '../files/system-fonts.ts';
import { say } from '../words/say.ts';
import { FONT_FILE } from './font-file.ts';

/** The most system fonts that are opened in search of one character. */
const MOST_TRIED = 60;

/** Fonts for drawings in the order they are tried, the files they were read from, and the signs that none of them has. */
export interface Fonts {
  readonly typefaces: readonly Typeface[];
  readonly files: readonly string[];
  readonly missing: readonly string[];
}

/** The shipped font, opened once: it knows the lengths of the words it has laid out. */
let shipped: Promise<Typeface[]> | undefined;

/**
 * The fonts that drawings need: the shipped one, `given` for what it lacks, then the system's own.
 *
 * @throws RangeError where the file given is no font, and what reading it throws.
 */
export async function openFonts(scenes: readonly Scene[], given?: string): Promise<Fonts> {
  const files = given === undefined ? [FONT_FILE] : [FONT_FILE, given];
  shipped ??= openTypefaces([readFileSync(FONT_FILE)]);
  const typefaces = [...(await shipped), ...(await openTypefaces(files.slice(1).map((file) => readFileSync(file))))];
  let missing = findMissingLetters(scenes, typefaces);
  const hopeless: string[] = [];
  while (missing[0] !== undefined) {
    const font = await findFont(missing[0]);
    if (font === null) hopeless.push(missing[0]);
    else {
      files.push(font.file);
      typefaces.push(font.typeface);
    }
    missing = findMissingLetters(scenes, typefaces).filter((sign) => !hopeless.includes(sign));
  }
  return { typefaces, files, missing: hopeless };
}

/** A font of the system, with the file that it was read from. */
interface SystemFont {
  readonly file: string;
  readonly typeface: Typeface;
}

/**
 * What was found for each sign that was looked for, null where no font has it: to look takes a fifth of a second, some fonts are as
 * large as 20 MB, and the drawings of a job have the same signs.
 */
const found = new Map<string, SystemFont | null>();

/** The first of the system's fonts that has a sign, once found for as long as the command runs. */
async function findFont(sign: string): Promise<SystemFont | null> {
  const known = found.get(sign);
  if (known !== undefined) return known;
  const font = await searchFont(sign);
  found.set(sign, font);
  return font;
}

async function searchFont(sign: string): Promise<SystemFont | null> {
  const code = sign.codePointAt(0)!;
  const opened = new Map([...found.values()].flatMap((font) => (font ? [[font.file, font.typeface]] : [])));
  for (const file of listSystemFonts(sign).slice(0, MOST_TRIED)) {
    try {
      const typeface = opened.get(file) ?? (await openTypefaces([readFileSync(file)]))[0]!;
      if (typeface.has(code)) return { file, typeface };
    } catch {
      // A file that cannot be read, or is no font after all, holds no sign.
    }
  }
  return null;
}

/** What to say of letters that no font has, in one line; null where there are none. */
export function sayMissingLetters({ missing }: Fonts, voice: Voice): string | null {
  if (missing.length === 0) return null;
  const letters = missing.slice(0, 12).join(' ');
  const count = missing.length - 12;
  return count > 0
    ? say('print.letters-missing.more', { letters, count }, voice)
    : say('print.letters-missing', { letters }, voice);
}
