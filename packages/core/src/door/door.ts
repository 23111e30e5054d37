/** A door as ordered: its own size and the widths of its parts, mm; `across` × `up` panels, parted by muntins. */
export interface Door {
  readonly name: string;
  readonly quantity: number;
  readonly width: number;
  readonly height: number;
  readonly stile: number;
  readonly rail: number;
  readonly across: number;
  readonly up: number;
  readonly muntin: number;
}

/** Width across and height up, mm. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A door with what follows from it. */
export interface DoorReport extends Door {
  /** Each opening between the sight edges of the frame's parts. */
  readonly opening: Size;
  /** Each panel, finished: the opening and the tongue on both sides. */
  readonly panel: Size;
}

/**
 * Sizes the openings and the panels of a door whose tongues go `insertion` mm into the frame.
 *
 * All openings are equal; parting rails are as wide as muntins (formula S6).
 *
 * @example sizeDoor({ width: 396, height: 716, stile: 60, rail: 60, across: 1, up: 1, … }, 9).panel // { width: 294, height: 614 }
 */
export function sizeDoor(door: Door, insertion: number): DoorReport {
  const share = (whole: number, sides: number, count: number) =>
    (whole - 2 * sides - (count - 1) * door.muntin) / count;
  const opening = { width: share(door.width, door.stile, door.across), height: share(door.height, door.rail, door.up) };
  const panel = { width: opening.width + 2 * insertion, height: opening.height + 2 * insertion };
  return { ...door, opening, panel };
}
