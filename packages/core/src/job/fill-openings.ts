import type { Door } from '../door/door.ts';
import { DEFAULTS } from './defaults.ts';

/** What a door leaves out, filled in: equal openings, rails and mid rails as wide as `rail` and `muntin`, one leaf. */
export function fillOpenings(
  given: Partial<Omit<Door, 'head'>> & Pick<Door, 'rail'>,
): Omit<Door, 'name' | 'width' | 'height' | 'stile' | 'rail'> {
  const across = given.columns?.length ?? given.across ?? DEFAULTS.across;
  const up = given.rows?.length ?? given.up ?? DEFAULTS.up;
  const muntin = given.muntin ?? DEFAULTS.muntin;
  return {
    quantity: given.quantity ?? DEFAULTS.quantity,
    across,
    up,
    muntin,
    grain: given.grain ?? DEFAULTS.grain,
    topRail: given.topRail ?? given.rail,
    bottomRail: given.bottomRail ?? given.rail,
    midRail: given.midRail ?? muntin,
    columns: given.columns ?? equalOpenings(across),
    rows: given.rows ?? equalOpenings(up),
    leaves: given.leaves ?? DEFAULTS.leaves,
  };
}

/** So many openings that share equally; none for a number that cannot be, which is refused elsewhere. */
function equalOpenings(count: number): 'rest'[] {
  return count > 0 && count <= MOST_OPENINGS ? new Array<'rest'>(Math.floor(count)).fill('rest') : [];
}

/** As many rows or columns as a file may give. */
const MOST_OPENINGS = 100;
