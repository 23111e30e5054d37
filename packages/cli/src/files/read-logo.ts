import { readFileSync, realpathSync, statSync } from 'node:fs';
import { dirname, relative, resolve, sep } from 'node:path';
import type { Refusal } from '@fielded/core';
import { explainFailure } from './read-text.ts';

/** A logo is no photograph. */
const MOST_BYTES = 2_000_000;

/** The bytes of the shop's logo, which must lie beside the shop file at `shopPath` or below. */
export function readLogo(shopPath: string, name: string): Uint8Array | Refusal {
  const folder = dirname(resolve(shopPath));
  const file = resolve(folder, name);
  const way = relative(folder, file);
  if (way === '' || way === '..' || way.startsWith(`..${sep}`))
    return { refused: "the logo lies outside the shop file's folder", instead: 'Move it beside the shop file' };
  try {
    // A link is followed: what counts is where the picture really lies, and that it is a file that ends.
    if (relative(realpathSync(folder), realpathSync(file)).startsWith('..'))
      return { refused: "the logo is a link out of the shop file's folder", instead: 'Put the picture itself there' };
    if (!statSync(file).isFile()) return { refused: 'the logo is no plain file', instead: 'Name a .png, .jpg or .svg' };
    if (statSync(file).size > MOST_BYTES)
      return { refused: 'the logo is larger than 2 MB', instead: 'Save it smaller, 1000 pixels wide or so' };
    return readFileSync(file);
  } catch (error) {
    return explainFailure(error);
  }
}
