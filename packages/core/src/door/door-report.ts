import type { Door, Opening, Size } from './door.ts';
import type { HeadReport } from './shaped-head-report.ts';

export type PartName = 'stile' | 'top rail' | 'bottom rail' | 'mid rail' | 'muntin';

/** Equal parts of a door's frame, mm; `quantity` counts all doors and leaves. */
export interface DoorPart {
  readonly part: PartName;
  readonly quantity: number;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** '' where the job names none. */
  readonly wood: string;
}

/** Equal panels of a door; `quantity` counts all doors and leaves. Sizes mm. */
export interface DoorPanel extends Size {
  readonly quantity: number;
  readonly grain: 'up' | 'across';
  /** Under the door's shaped head; width and height are then the blank's, left square. */
  readonly shaped?: true;
  /** The flat between the raises; null where they leave none. */
  readonly field: Size | null;
  /** Of one panel as cut, mm³. */
  readonly volume: number;
  /** Of one panel, kg; null where the wood or its density is not known. */
  readonly weight: number | null;
}

/** A door with what follows from it. */
export interface DoorReport extends Omit<Door, 'head'> {
  /** Its shaped head, with what follows for the panel under it; left out where it has none. */
  readonly head?: HeadReport;
  /** The first opening, and its panel: all are alike unless rows or columns differ. */
  readonly opening: Size;
  readonly panel: Size;
  readonly openings: readonly Opening[];
  readonly parts: readonly DoorPart[];
  readonly panels: readonly DoorPanel[];
}

/** A panel of a blank: the door it is for, or `spare`, and its width across the grain. */
export interface BlankPanel {
  readonly door: string;
  readonly width: number;
}

/** Panels glued up as one blank for their end grain, then ripped. Lengths mm, along the grain and across it. */
export interface Blank {
  readonly length: number;
  readonly width: number;
  readonly panels: readonly BlankPanel[];
  /** Middle of each saw cut, from the blank's left edge. */
  readonly rips: readonly number[];
  /** Made this often. */
  readonly quantity: number;
}

/** A narrow panel that no blank takes, and what is missing to a blank with the others of its length, mm. */
export interface LeftOver extends BlankPanel {
  readonly length: number;
  readonly quantity: number;
  /** Width that a spare or a carrier would have to have. */
  readonly missing: number;
}

/** Rough pieces of one size to saw, mm, glued up from `strips` strips where more than one. */
export interface RoughPiece {
  readonly what: string;
  readonly quantity: number;
  readonly length: number;
  readonly width: number;
  readonly strips: number;
  readonly stripWidth: number;
}

/** Timber of one finished thickness; volumes m³. */
export interface Timber {
  readonly thickness: number;
  /** '' where the job names no wood. */
  readonly wood: string;
  readonly pieces: readonly RoughPiece[];
  readonly finished: number;
  readonly rough: number;
  readonly order: number;
  /** The same in board feet. */
  readonly boardFeet: { readonly finished: number; readonly rough: number; readonly order: number };
}
