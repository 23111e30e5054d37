import { type Catalogue, ENGLISH } from '@fielded/core';
import type { Commands } from '../command.ts';
import { commandTexts } from '../command-texts.ts';
import { CLI_ENGLISH } from './english.ts';

/**
 * Every sentence there is: what is said of jobs, what drawings are lettered with, what this command prints, and the help of the
 * commands given. What draws stays unloaded.
 */
export async function allEnglish(commands: Commands): Promise<Catalogue> {
  const { RENDER_ENGLISH } = await import('@fielded/render/words');
  return { ...ENGLISH, ...RENDER_ENGLISH, ...CLI_ENGLISH, ...(await commandTexts(commands)) };
}
