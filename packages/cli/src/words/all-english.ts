import { type Catalogue, ENGLISH } from '@fielded/core';
import { CLI_ENGLISH } from './english.ts';

/** Every sentence there is: what is said of jobs, what drawings are lettered with, what this command prints. */
export async function allEnglish(): Promise<Catalogue> {
  const { RENDER_ENGLISH } = await import('@fielded/render');
  return { ...ENGLISH, ...RENDER_ENGLISH, ...CLI_ENGLISH };
}
