import { loadPart } from '../load-part.ts';
import type { Item, Scene } from '../scene.ts';
import type { Letters } from '../svg.ts';
import type { Typeface } from './typefaces.ts';

// Reading fonts is loaded only where letters are drawn here: most drawings leave them to the reader's own.

/** Fonts from the bytes of their files, in the order they are tried. Throws RangeError where one is no font. */
export async function openTypefaces(files: readonly Uint8Array[]): Promise<Typeface[]> {
  const { readTypeface } = await loadPart(() => import('./typefaces.ts'));
  return files.map(readTypeface);
}

/** Writes texts as outlines of the fonts, for programs that would put another font in their place. At least one font. */
export async function openLetters(typefaces: readonly Typeface[]): Promise<Letters> {
  const [first, ...more] = typefaces;
  if (first === undefined) throw new RangeError('no font to draw letters with');
  const { outlineLetters } = await loadPart(() => import('./outline-letters.ts'));
  return outlineLetters([first, ...more]);
}

/** All texts that stand in a drawing. */
export function textsOf({ items }: Pick<Scene, 'items'>): string[] {
  return items.flatMap((item: Item) =>
    item.kind === 'group' ? textsOf(item) : item.kind === 'text' ? [item.text] : [],
  );
}

/** The signs in drawings that none of the fonts has, each once. */
export function findMissingLetters(scenes: readonly Scene[], typefaces: readonly Typeface[]): string[] {
  const missing = new Set<string>();
  for (const text of scenes.flatMap(textsOf))
    for (const sign of text.replace(/\p{Cf}/gu, ''))
      if (!typefaces.some((face) => face.has(sign.codePointAt(0)!))) missing.add(sign);
  return [...missing];
}
