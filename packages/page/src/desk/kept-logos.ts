import { digestOf } from './digest.ts';

/** A shop's logo as drawn: a PNG as a data address, and its size in pixels. */
export interface KeptLogo {
  readonly png: string;
  readonly width: number;
  readonly height: number;
}

const PREFIX = 'fielded.logo.';

/** Those of this visit, where the browser keeps none. */
const here = new Map<string, KeptLogo>();

/** Keeps a logo in this browser, once however many jobs use it; the id that a shop has it by. */
export function keepLogo(logo: KeptLogo): string {
  const id = digestOf(logo.png);
  here.set(id, logo);
  try {
    forgetUnused();
    localStorage.setItem(PREFIX + id, JSON.stringify(logo));
  } catch {
    // Without room it is there until the page is closed; what was typed goes before.
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

/** Takes away the logos that no job, no step of undo and no shop kept here speaks of. */
function forgetUnused(): void {
  const keys = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? '');
  const texts = keys
    .filter((key) => key.startsWith('fielded.') && !key.startsWith(PREFIX))
    .map((key) => localStorage.getItem(key) ?? '');
  for (const key of keys.filter((each) => each.startsWith(PREFIX)))
    if (!texts.some((text) => text.includes(key.slice(PREFIX.length)))) localStorage.removeItem(key);
}
