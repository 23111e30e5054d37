import type { DoorReport } from '@fielded/core';
import type { Box, Loop } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';

/** One part of a frame: its corners, mm, and which way its grain runs. */
export interface Part {
  readonly key: string;
  readonly part: readonly [number, number, number, number];
  readonly upright: boolean;
}

/** The parts of a door's frame: stiles run through, rails stand between them, muntins between rails. */
export function frameParts(door: DoorReport): Part[] {
  const { width, height, stile, topRail, bottomRail, openings } = door;
  const parts: Part[] = [
    { key: 'left stile', part: [0, 0, stile, height], upright: true },
    { key: 'right stile', part: [width - stile, 0, width, height], upright: true },
    { key: 'top rail', part: [stile, 0, width - stile, topRail + (door.head?.rise ?? 0)], upright: false },
    { key: 'bottom rail', part: [stile, height - bottomRail, width - stile, height], upright: false },
  ];
  // Each opening but those of the first row lies under a mid rail, each but those of the first column right of a muntin.
  for (const { column, row, y } of openings) {
    if (row === 0 || column > 0) continue;
    const above = openings.find((other) => other.row === row - 1)!;
    parts.push({ key: `rail ${row}`, part: [stile, above.y + above.height, width - stile, y], upright: false });
  }
  for (const opening of openings) {
    const { column, row, x, y } = opening;
    const before = openings.find((other) => other.row === row && other.column === column - 1);
    if (before === undefined) continue;
    const part = [before.x + before.width, y, x, y + opening.height] as const;
    parts.push({ key: `muntin ${row} ${column}`, part, upright: true });
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
    stroke(outer.x0, outer.y0, inner.x0, inner.y0),
    stroke(outer.x1, outer.y0, inner.x1, inner.y0),
    stroke(outer.x1, outer.y1, inner.x1, inner.y1),
    stroke(outer.x0, outer.y1, inner.x0, inner.y1),
  ];
}
