import { endGapOf, type Frame } from '../joint/frame.ts';
import type { ShapedHead } from './shaped-head.ts';

/** An opening's size in a door's row or column, mm, or the part of what is left that it shares with others. */
export type OpeningSize = number | 'rest';

/**
 * A door as ordered: one leaf's size and the widths of its parts, mm. `across` × `up` panels; their openings are parted by
 * muntins and, between rows, by mid rails.
 */
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
  /** Which way the panels' grain runs: `across` for drawer fronts. */
  readonly grain: 'up' | 'across';
  readonly topRail: number;
  readonly bottomRail: number;
  readonly midRail: number;
  /** Widths of the openings from the left, heights from the top; all `rest` where they are equal. */
  readonly columns: readonly OpeningSize[];
  readonly rows: readonly OpeningSize[];
  /** Leaves that fill one opening of the carcase together; 1 for a door given by its own size. */
  readonly leaves: number;
  /** The carcase's opening that its size was worked out from; left out where it was given. */
  readonly hungIn?: HungIn;
  /** A shaped head of the top row's only opening; `topRail` is then its width over the apex. */
  readonly head?: ShapedHead;
}

/** The opening of a carcase and how the leaves hang in it or before it, mm. */
export interface HungIn {
  readonly width: number;
  readonly height: number;
  readonly hung: 'inset' | 'overlay';
  /** Inset: between carcase and leaf on every side. */
  readonly gap: number;
  /** Overlay: how far the leaf laps over the carcase on every side. */
  readonly overlay: number;
  /** Between two leaves. */
  readonly between: number;
  /** Which of these were not given and took their defaults; left out where all were given. */
  readonly assumed?: readonly ('gap' | 'between')[];
}

/** Width across and height up, mm. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * The size of one of `leaves` equal leaves (formula D1): inset (O − 2·gap − (n − 1)·between)/n wide and O − 2·gap high;
 * overlay (O + 2·overlay − (n − 1)·between)/n wide and O + 2·overlay high.
 *
 * @example leafSize({ width: 900, height: 700, hung: 'inset', gap: 2, overlay: 0, between: 3 }, 2).width // 446.5
 */
export function leafSize({ width, height, hung, gap, overlay, between }: HungIn, leaves: number): Size {
  const outside = hung === 'inset' ? -2 * gap : 2 * overlay;
  return { width: (width + outside - (leaves - 1) * between) / leaves, height: height + outside };
}

/** One opening of a door's frame between sight edges: its top left corner from the door's, and its size, mm. */
export interface Opening extends Size {
  readonly x: number;
  readonly y: number;
  /** Counted from the left and from the top, from 0. */
  readonly column: number;
  readonly row: number;
}

/**
 * The openings of a door, row by row from the top left (formula D2): what the given sizes and the parts between them leave
 * is shared equally by those that are `rest`. A negative size says that the sizes overrun the door.
 */
export function layOpenings(door: Door): Opening[] {
  const { width, height, stile, topRail, bottomRail, muntin, midRail, columns, rows } = door;
  const across = shareOut(width - 2 * stile, muntin, columns);
  const up = shareOut(height - topRail - bottomRail, midRail, rows);
  let y = topRail;
  return up.flatMap((tall, row) => {
    let x = stile;
    const found = across.map((wide, column) => {
      const opening = { x, y, width: wide, height: tall, column, row };
      x += wide + muntin;
      return opening;
    });
    y += tall + midRail;
    return found;
  });
}

/** Sizes in a length that `parting` parts stand between; `rest` shares equally what the given ones leave. */
export function shareOut(length: number, parting: number, sizes: readonly OpeningSize[]): number[] {
  const given = sizes.filter((size) => size !== 'rest');
  const left = length - (sizes.length - 1) * parting - given.reduce((sum, size) => sum + size, 0);
  const rest = left / (sizes.length - given.length);
  return sizes.map((size) => (size === 'rest' ? rest : size));
}

/** How far a panel goes into the frame on each side, mm: at its left and right, at its top and bottom. */
export interface Insertion {
  readonly across: number;
  readonly up: number;
}

/**
 * Insertion by the way the grain runs: groove depth less the gap of that direction, the swell gap across the grain and the
 * end gap along it.
 */
export function doorInsertion({ frame }: { readonly frame: Frame }, { grain }: Pick<Door, 'grain'>): Insertion {
  const acrossGrain = frame.groove.depth - frame.swellGap;
  const alongGrain = frame.groove.depth - endGapOf(frame);
  return grain === 'up' ? { across: acrossGrain, up: alongGrain } : { across: alongGrain, up: acrossGrain };
}

/** A panel's size across its grain. */
export function acrossGrain({ grain }: Pick<Door, 'grain'>, { width, height }: Size): number {
  return grain === 'up' ? width : height;
}

/** The panel that fills an opening: its size and what goes into the frame on both sides. */
export function panelSize(opening: Size, insertion: Insertion): Size {
  return { width: opening.width + 2 * insertion.across, height: opening.height + 2 * insertion.up };
}

/** Least width and least height among a door's panels, mm. */
export function smallestPanel(job: { readonly frame: Frame }, door: Door): Size {
  const insertion = doorInsertion(job, door);
  return layOpenings(door)
    .map((opening) => panelSize(opening, insertion))
    .reduce((least, { width, height }) => ({
      width: Math.min(least.width, width),
      height: Math.min(least.height, height),
    }));
}
