import { sayNote } from './english/note.ts';
import type { InVoice } from './lengths.ts';

/** How the drawing states its units. */
export function unitsNote(voice: InVoice, both: boolean = false): string {
  const { units } = voice;
  if (both) return sayNote(units === 'mm' ? 'units.both.mm' : 'units.both.in', {}, voice);
  return sayNote(units === 'mm' ? 'units.mm' : 'units.in', {}, voice);
}
