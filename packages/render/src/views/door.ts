import type { DoorReport, Report } from '@fielded/core';
import { type Box, polygon, rectangle } from '@fielded/geometry';
import type { Figure } from '../dimension/figure.ts';
import type { LinearDimension, Point, Side } from '../dimension/linear.ts';
import type { Sketch } from '../dimension/sketch.ts';
import type { Item } from '../scene.ts';
import { group, path } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { figure } from './cut-dimensions.ts';
import { frameParts, jointLines, mitres, openingsOf } from './door-parts.ts';
import { drawGrain } from './grain.ts';
import { sectionMark } from './section-mark.ts';

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
      'outline',
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
  if (hasField) items.push(path('field', 'outline', [rectangle(field), ...mitres(sight, field)]));
  items.push(path('sight', 'outline', [rectangle(sight)]));
  return group(key, items);
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
