import { readFileSync } from 'node:fs';
import { type Letters, openLetters, openTypefaces } from '@fielded/render';
import { FONT_FILE } from '../../packages/cli/src/formats/font-file.ts';

/** Writes texts as outlines of the font that is shipped. */
export const shippedLetters: Letters = await openLetters(await openTypefaces([readFileSync(FONT_FILE)]));
