import { type Catalogue, ENGLISH } from '@fielded/core';
import type { Commands } from '../command.ts';
import { commandTexts } from '../command-texts.ts';
import { CLI_ENGLISH } from './english.ts';

/** Every sentence there is: what is said of jobs, what drawings are lettered with, what this command prints, and its help. */
export async function allEnglish(commands: Commands): Promise<Catalogue> {
  const { RENDER_ENGLISH } = await import('@fielded/render');
  return { ...ENGLISH, ...RENDER_ENGLISH, ...CLI_ENGLISH, ...(await commandTexts(commands)) };
}
