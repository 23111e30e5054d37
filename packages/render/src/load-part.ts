/** A part of this package that is loaded only where it is wanted, and could not be: on a page without a network, say. */
export class PartMissing extends Error {}

/** Loads such a part. Rejects with `PartMissing`, whatever the reason was. */
export async function loadPart<T>(load: () => Promise<T>): Promise<T> {
  try {
    return await load();
  } catch (error) {
    throw new PartMissing('a part that draws could not be loaded', { cause: error });
  }
}
