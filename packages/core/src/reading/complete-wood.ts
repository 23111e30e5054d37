import type { Shop } from '../shop/shop.ts';
import type { OwnWood } from '../wood/species.ts';

/** A wood as a file names it: by name, or with its own figures. */
export type FileWood = string | OwnWood;

/** The wood's name, and its own figures where the job or the shop gives them; nothing where no wood is named. */
export function completeWood(
  file: FileWood | undefined,
  shop: Shop | undefined,
): { readonly species?: string; readonly wood?: OwnWood } {
  if (file === undefined) return {};
  if (typeof file !== 'string') return { species: file.name, wood: file };
  const woods = shop?.woods ?? {};
  const own = Object.keys(woods).find((name) => name.toLowerCase() === file.trim().toLowerCase());
  return own === undefined ? { species: file } : { species: file, wood: woods[own]! };
}
