/** Thrown where a part of this package that is loaded on demand could not be loaded, as on a page without a network. */
export class PartMissing extends Error {}

/** Loads a part of this package. Rejects with `PartMissing`, whatever the reason. */
export async function loadPart<T>(load: () => Promise<T>): Promise<T> {
  try {
    return await load();
  } catch (error) {
    throw new PartMissing('a part that draws could not be loaded', { cause: error });
  }
}
