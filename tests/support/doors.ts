import type { Door } from '@fielded/core';
import { fillOpenings } from '../../packages/core/src/job/fill-openings.ts';

/** A door with what a file would fill in. */
export function completeDoor(given: Partial<Door> & Pick<Door, 'name' | 'width' | 'height' | 'stile' | 'rail'>): Door {
  return { ...given, ...fillOpenings(given) };
}
