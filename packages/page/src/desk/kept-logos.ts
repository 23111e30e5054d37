import { digestOf } from './digest.ts';

/** A shop's logo as drawn: a PNG as a data address, and its size in pixels. */
export interface KeptLogo {
  readonly png: string;
  readonly width: number;
  readonly height: number;
}

const PREFIX = 'fielded.logo.';

/** Logos of this visit, where the browser could store none. */
const here = new Map<string, KeptLogo>();

/** Keeps a logo in this browser and returns its id, which is the same for the same picture. */
export function keepLogo(logo: KeptLogo): string {
  const id = digestOf(logo.png);
  here.set(id, logo);
  try {
    forgetUnused();
    localStorage.setItem(PREFIX + id, JSON.stringify(logo));
  } catch {
    // A full store keeps the jobs; the logo is here until the page is closed.
  }
  return id;
}

/** The logo of an id; null where this browser has none. */
export function keptLogo(id: string | undefined): KeptLogo | null {
  if (id === undefined) return null;
  const known = here.get(id);
  if (known !== undefined) return known;
  try {
    const held = JSON.parse(localStorage.getItem(PREFIX + id) ?? 'null') as Partial<KeptLogo> | null;
    const sound = held?.png?.startsWith('data:image/png;base64,') && held.width! > 0 && held.height! > 0;
    return sound ? (held as KeptLogo) : null;
  } catch {
    return null;
  }
}

/** Removes the logos whose id no job, step of undo or shop kept here holds. */
function forgetUnused(): void {
  const keys = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? '');
  const texts = keys
    .filter((key) => key.startsWith('fielded.') && !key.startsWith(PREFIX))
    .map((key) => localStorage.getItem(key) ?? '');
  for (const key of keys.filter((each) => each.startsWith(PREFIX)))
    if (!texts.some((text) => text.includes(key.slice(PREFIX.length)))) localStorage.removeItem(key);
}
