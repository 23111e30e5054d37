import type { DoorReport } from '@fielded/core';
import { type Box, type Loop, polygon } from '@fielded/geometry';

/** Where the openings of a door begin, mm from its top left corner, row by row from the top. */
export function openingsOf({ stile, rail, muntin, across, up, opening }: DoorReport): { x: number; y: number }[] {
  const found: { x: number; y: number }[] = [];
  for (let row = 0; row < up; row += 1) {
    for (let column = 0; column < across; column += 1) {
      found.push({ x: stile + column * (opening.width + muntin), y: rail + row * (opening.height + muntin) });
    }
  }
  return found;
}

/** One part of a frame: its corners, mm, and which way its grain runs. */
export interface Part {
  readonly key: string;
  readonly part: readonly [number, number, number, number];
  readonly upright: boolean;
}

/** Stiles run through, rails between them, muntins between rails. */
export function frameParts(door: DoorReport): Part[] {
  const { width, height, stile, rail, muntin, across, up, opening } = door;
  const parts: Part[] = [
    { key: 'left stile', part: [0, 0, stile, height], upright: true },
    { key: 'right stile', part: [width - stile, 0, width, height], upright: true },
    { key: 'top rail', part: [stile, 0, width - stile, rail], upright: false },
    { key: 'bottom rail', part: [stile, height - rail, width - stile, height], upright: false },
  ];
  for (let row = 1; row < up; row += 1) {
    const y = rail + row * opening.height + (row - 1) * muntin;
    parts.push({ key: `rail ${row}`, part: [stile, y, width - stile, y + muntin], upright: false });
  }
  for (let row = 0; row < up; row += 1) {
    const y = rail + row * (opening.height + muntin);
    for (let column = 1; column < across; column += 1) {
      const x = stile + column * opening.width + (column - 1) * muntin;
      parts.push({ key: `muntin ${row} ${column}`, part: [x, y, x + muntin, y + opening.height], upright: true });
    }
  }
  return parts;
}

/** Where rails meet stiles and muntins meet rails. */
export function jointLines(door: DoorReport): [number, number][][] {
  return frameParts(door).flatMap(({ part: [x0, y0, x1, y1], upright, key }): [number, number][][] => {
    if (key.endsWith('stile')) return [];
    return upright
      ? [
          [
            [x0, y0],
            [x1, y0],
          ],
          [
            [x0, y1],
            [x1, y1],
          ],
        ]
      : [
          [
            [x0, y0],
            [x0, y1],
          ],
          [
            [x1, y0],
            [x1, y1],
          ],
        ];
  });
}

/** Lines from corner to corner of two boxes, one within the other. */
export function mitres(outer: Box, inner: Box): Loop[] {
  return [
    polygon(
      [
        [outer.x0, outer.y0],
        [inner.x0, inner.y0],
      ],
      false,
    ),
    polygon(
      [
        [outer.x1, outer.y0],
        [inner.x1, inner.y0],
      ],
      false,
    ),
    polygon(
      [
        [outer.x1, outer.y1],
        [inner.x1, inner.y1],
      ],
      false,
    ),
    polygon(
      [
        [outer.x0, outer.y1],
        [inner.x0, inner.y1],
      ],
      false,
    ),
  ];
}
