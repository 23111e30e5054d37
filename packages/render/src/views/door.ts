import type { DoorReport, Report } from '@fielded/core';
import { arrowhead } from '../dimension/arrow.ts';
import type { Figure } from '../dimension/figure.ts';
import type { Sketch } from '../dimension/lay-dimensions.ts';
import type { LinearDimension, Point, Side } from '../dimension/linear.ts';
import type { Box } from '../geometry/box.ts';
import type { Loop } from '../geometry/path.ts';
import { polygon } from '../geometry/path.ts';
import type { Item } from '../scene.ts';
import { group, path, text } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { figure } from './cut-dimensions.ts';
import { drawGrain } from './grain.ts';

/** A door from the front: frame, panels with their field, and where the joint is drawn in section. `index` counts the job's doors from 0. */
export function sketchDoor(report: Report, scale: number, index: number): Sketch {
  const door = report.doors?.[index];
  if (!door) throw new RangeError(`door ${index + 1} of ${report.doors?.length ?? 0}`);
  const s = scale;
  const box = (x0: number, y0: number, x1: number, y1: number): Box => ({
    x0: x0 * s,
    y0: y0 * s,
    x1: x1 * s,
    y1: y1 * s,
  });
  const { width, height, stile, rail } = door;
  const openings = openingsOf(door);
  const parts = frameParts(door);
  const items: Item[] = [
    path('wood', 'wood', [rectangle(box(0, 0, width, height))]),
    group(
      'grain',
      parts.map(({ key, part, upright }) => drawGrain(key, box(...part), upright)),
    ),
    path(
      'joints',
      'thin',
      jointLines(door).map((corners) =>
        polygon(
          corners.map(([x, y]) => [x * s, y * s] as const),
          false,
        ),
      ),
    ),
    path('outline', 'outline', [rectangle(box(0, 0, width, height))]),
    group(
      'panels',
      openings.map(({ x, y }, i) => drawVisiblePanel(`panel ${i + 1}`, report, door, x, y, s)),
    ),
  ];
  const mark = sectionMark(report, door, s);
  items.push(mark.item);
  return {
    items,
    outlines: [
      ...rectangle(box(0, 0, width, height)).curves,
      ...openings.flatMap(({ x, y }) => rectangle(box(x, y, x + door.opening.width, y + door.opening.height)).curves),
    ],
    woods: [rectangle(box(0, 0, width, height))],
    around: { x0: Math.min(0, mark.left), y0: 0, x1: Math.max(width * s, mark.right), y1: height * s },
    tiers: doorTiers(report, door, index, s, openings, stile, rail),
    interiors: [],
    leaders: [],
  };
}

export function rectangle({ x0, y0, x1, y1 }: Box): Loop {
  return polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
}

function openingsOf({ stile, rail, muntin, across, up, opening }: DoorReport): { x: number; y: number }[] {
  const found: { x: number; y: number }[] = [];
  for (let row = 0; row < up; row += 1) {
    for (let column = 0; column < across; column += 1) {
      found.push({ x: stile + column * (opening.width + muntin), y: rail + row * (opening.height + muntin) });
    }
  }
  return found;
}

type Part = { key: string; part: [number, number, number, number]; upright: boolean };

/** Stiles run through, rails between them, muntins between rails. */
function frameParts(door: DoorReport): Part[] {
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
function jointLines(door: DoorReport): [number, number][][] {
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

/** What is seen of a panel: the sight edge, the field's edge, and the mitres of the raise between them. */
function drawVisiblePanel(key: string, report: Report, door: DoorReport, x: number, y: number, s: number): Item {
  const { width, height } = door.opening;
  const sight = { x0: x * s, y0: y * s, x1: (x + width) * s, y1: (y + height) * s };
  const margin = (report.fit.visibleMargin ?? 0) * s;
  const items: Item[] = [path('ground', 'wood', [rectangle(sight)])];
  const hasField = margin > 0 && 2 * margin < Math.min(sight.x1 - sight.x0, sight.y1 - sight.y0);
  const field = hasField
    ? { x0: sight.x0 + margin, y0: sight.y0 + margin, x1: sight.x1 - margin, y1: sight.y1 - margin }
    : sight;
  items.push(drawGrain('grain', field, true));
  if (hasField) items.push(path('field', 'thin', [rectangle(field), ...mitres(sight, field)]));
  items.push(path('sight', 'outline', [rectangle(sight)]));
  return group(key, items);
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

/** The section line A–A across a stile and the panel's edge: a chain line with thick ends, arrows the way one looks, and its letter. */
function sectionMark(report: Report, door: DoorReport, s: number): { item: Item; left: number; right: number } {
  const y = (door.rail + door.opening.height * 0.62) * s;
  const left = -7;
  // Short, across the stile and the raise, where there is room for its letter within the panel; else across the whole door.
  const sight = door.stile * s;
  const short = sight + ((report.fit.visibleMargin ?? 10) + 12) * s + 4;
  const fits = short - 8 > sight && short + 6 < sight + door.opening.width * s;
  const right = fits ? short : door.width * s + 7;
  const end = (key: string, x: number, way: number): Item =>
    group(key, [
      path('end', 'outline', [
        polygon(
          [
            [x, y],
            [x + way * 4, y],
          ],
          false,
        ),
      ]),
      path('look', 'arrow', [arrowhead({ x, y: y + 5.5, dx: 0, dy: 1 })]),
      path('stem', 'thin', [
        polygon(
          [
            [x, y],
            [x, y + 2.2],
          ],
          false,
        ),
      ]),
      text('letter', 'text', x - way * 1.6, y + 4.6, 'A', 3.5, way > 0 ? 'end' : 'start'),
    ]);
  const line = path('line', 'cutter', [
    polygon(
      [
        [left + 4, y],
        [right - 4, y],
      ],
      false,
    ),
  ]);
  return { item: group('section A', [line, end('left', left, 1), end('right', right, -1)]), left: left - 5, right };
}

function doorTiers(
  report: Report,
  door: DoorReport,
  index: number,
  s: number,
  openings: readonly { x: number; y: number }[],
  stile: number,
  rail: number,
): LinearDimension[] {
  const name = safeText(door.name);
  const at = (x: number, y: number): Point => ({ x: x * s, y: y * s });
  const tiers: LinearDimension[] = [];
  const tier = (side: Side, of: Figure, from: Point, to: Point) => tiers.push({ ...of, side, from, to });
  const shown = (of: string, value: number, word: string, label: string) =>
    figure(report, `doors[${index}].${of}`, value, word, `${label} of door ${name}`);
  const { width, height, opening } = door;
  tier('below', shown('width', width, 'door', 'Width'), at(0, height), at(width, height));
  tier('left', shown('height', height, 'door', 'Height'), at(0, 0), at(0, height));
  tier('below', shown('stile', stile, 'stile', 'Stile'), at(0, height), at(stile, height));
  tier('left', shown('rail', rail, 'rail', 'Rail'), at(0, height - rail), at(0, height));
  const first = openings[0]!;
  const last = openings[openings.length - 1]!;
  tier(
    'below',
    shown('opening.width', opening.width, 'opening', 'Width of an opening'),
    at(first.x, height),
    at(first.x + opening.width, height),
  );
  tier(
    'left',
    shown('opening.height', opening.height, 'opening', 'Height of an opening'),
    at(0, last.y),
    at(0, last.y + opening.height),
  );
  if (door.across > 1) {
    const from = first.x + opening.width;
    tier('below', shown('muntin', door.muntin, 'muntin', 'Muntin'), at(from, height), at(from + door.muntin, height));
  }
  return tiers;
}
