import type { DoorReport, HeadReport, Opening, Report } from '@fielded/core';
import type { Point } from '@fielded/geometry';
import { type Box, type Loop, loopsBox, polygon, rectangle } from '@fielded/geometry';
import type { Figure } from '../dimension/figure.ts';
import type { LinearDimension } from '../dimension/linear.ts';
import type { Sketch } from '../dimension/sketch.ts';
import { stroke } from '../geometry/stroke.ts';
import type { Item } from '../scene.ts';
import { group, path } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { frameParts, jointLines, mitres } from './door-parts.ts';
import { type DrawGrain, drawGrain } from './grain.ts';
import { sectionMark } from './section-mark.ts';
import { radiusLeaders, type ShapedLoops, shapedLoops } from './shaped-panel.ts';
import { tier } from './tier.ts';
import { viewFigure } from './view-figure.ts';

/**
 * A door from the front: frame, panels with their field, and where the joint is drawn in section. `index` counts the job's doors from 0;
 * `grain` draws the grain of its parts.
 *
 * @throws RangeError for a door that the job does not have.
 */
export function sketchDoor(report: Report, scale: number, index: number, grain: DrawGrain = drawGrain): Sketch {
  const door = report.doors?.[index];
  if (!door) throw new RangeError(`door ${index + 1} of ${report.doors?.length ?? 0}`);
  const s = scale;
  const box = (x0: number, y0: number, x1: number, y1: number): Box => ({
    x0: x0 * s,
    y0: y0 * s,
    x1: x1 * s,
    y1: y1 * s,
  });
  const { width, height, openings } = door;
  const shaped = door.head ? shapedUnder({ ...door, head: door.head }, openings[0]!, s) : null;
  const parts = frameParts(door);
  const items: Item[] = [
    path('wood', 'wood', [rectangle(box(0, 0, width, height))]),
    group(
      'grain',
      parts.map(({ key, part, upright }) => grain(key, box(...part), upright)),
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
      openings.map((opening, i) =>
        i === 0 && shaped
          ? drawShapedPanel('panel 1', shaped, grain)
          : drawVisiblePanel(`panel ${i + 1}`, report, { door, opening, s, grain }),
      ),
    ),
  ];
  const mark = sectionMark(report, door, s);
  items.push(mark.item);
  return {
    items,
    outlines: [
      ...rectangle(box(0, 0, width, height)).curves,
      ...(shaped?.sight.curves ?? []),
      ...openings
        .slice(shaped ? 1 : 0)
        .flatMap(({ x, y, ...size }) => rectangle(box(x, y, x + size.width, y + size.height)).curves),
    ],
    woods: [rectangle(box(0, 0, width, height))],
    around: { x0: Math.min(0, mark.left), y0: 0, x1: Math.max(width * s, mark.right), y1: height * s },
    tiers: doorTiers(report, door, index, s),
    interiors: [],
    leaders: shaped ? radiusLeaders(report, index, 'sight', shaped.sight) : [],
  };
}

/** The outlines of the panel under a door's head, where its top opening puts them. */
function shapedUnder(door: DoorReport & { readonly head: HeadReport }, opening: Opening, s: number): ShapedLoops {
  const [across, up] = [(door.panel.width - opening.width) / 2, (door.panel.height - opening.height) / 2];
  return shapedLoops(door, s, (opening.x - across) * s, (opening.y - up) * s);
}

/** What is seen of a panel under a shaped head. */
function drawShapedPanel(key: string, { sight, field, corners, square, edge }: ShapedLoops, grain: DrawGrain): Item {
  const sightCorners = field === null ? [] : corners;
  return group(key, [
    path('ground', 'wood', [sight]),
    grain('grain', square, true),
    path('field', 'outline', field === null ? [] : [field, ...clipTo(sightCorners, edge, sight)]),
    path('sight', 'outline', [sight]),
  ]);
}

/** Lines from a panel's corners to its field's, from where they come out of the frame. */
function clipTo(corners: readonly Loop[], edge: Loop, sight: Loop): Loop[] {
  const [outer, inner] = [loopsBox([edge])!, loopsBox([sight])!];
  return corners.map(({ curves: [c] }) => {
    const { x0, y0, x1, y1 } = c!;
    // By the share of the way in which the frame covers.
    const covered = (inner.x0 - outer.x0) / Math.max(1e-9, Math.abs(x1 - x0));
    const share = Math.min(1, covered);
    return stroke(x0 + share * (x1 - x0), y0 + share * (y1 - y0), x1, y1);
  });
}

/** A panel behind an opening of a door, drawn at the scale `s`. */
interface PanelBehind {
  readonly door: DoorReport;
  readonly opening: Opening;
  readonly s: number;
  readonly grain: DrawGrain;
}

/** What is seen of a panel: the sight edge, the field's edge, and the mitres of the raise between them. */
function drawVisiblePanel(key: string, report: Report, { door, opening, s, grain }: PanelBehind): Item {
  const { x, y, width, height } = opening;
  const sight = { x0: x * s, y0: y * s, x1: (x + width) * s, y1: (y + height) * s };
  const { visibleMargin } = report.fit;
  const [across, up] = [(door.panel.width - door.opening.width) / 2, (door.panel.height - door.opening.height) / 2];
  // The margin is that of the edges; ends that go in further show less of the raise.
  const margin = (insertion: number) => Math.max(0, (visibleMargin ?? 0) + report.tongue.insertion - insertion) * s;
  const [beside, above] = visibleMargin === null ? [0, 0] : [margin(across), margin(up)];
  const items: Item[] = [path('ground', 'wood', [rectangle(sight)])];
  const hasField = beside > 0 && 2 * beside < sight.x1 - sight.x0 && above > 0 && 2 * above < sight.y1 - sight.y0;
  const field = hasField
    ? { x0: sight.x0 + beside, y0: sight.y0 + above, x1: sight.x1 - beside, y1: sight.y1 - above }
    : sight;
  items.push(grain('grain', field, door.grain === 'up'));
  if (hasField) items.push(path('field', 'outline', [rectangle(field), ...mitres(sight, field)]));
  items.push(path('sight', 'outline', [rectangle(sight)]));
  return group(key, items);
}

function doorTiers(report: Report, door: DoorReport, index: number, s: number): LinearDimension[] {
  const name = safeText(door.name);
  const at = (x: number, y: number): Point => ({ x: x * s, y: y * s });
  const tiers: LinearDimension[] = [];
  const shown = (of: string, value: number, figure: Parameters<typeof viewFigure>[3]) =>
    viewFigure(report, `doors[${index}].${of}`, value, figure, { door: name });
  const { width, height, stile, topRail, bottomRail } = door;
  const across = (of: Figure, from: number, size: number) =>
    tiers.push(tier('below', of, at(from, height), at(from + size, height)));
  const up = (of: Figure, from: number, size: number) => tiers.push(tier('left', of, at(0, from), at(0, from + size)));
  across(shown('width', width, 'width'), 0, width);
  up(shown('height', height, 'height'), 0, height);
  across(shown('stile', stile, 'stile'), 0, stile);
  if (topRail === bottomRail) up(shown('rail', topRail, 'rail'), height - topRail, topRail);
  else {
    up(shown('topRail', topRail, 'topRail'), 0, topRail);
    up(shown('bottomRail', bottomRail, 'bottomRail'), height - bottomRail, bottomRail);
  }
  if (door.head) up(shown('head.rise', door.head.rise, 'rise'), topRail, door.head.rise);
  const { columns, rows } = { columns: openingsIn(door, 'row'), rows: openingsIn(door, 'column') };
  for (const { opening, path } of differing(columns, 'width', 'first'))
    across(shown(`${path}.width`, opening.width, 'openingWidth'), opening.x, opening.width);
  for (const { opening, path } of differing(rows, 'height', 'last'))
    up(shown(`${path}.height`, opening.height, 'openingHeight'), opening.y, opening.height);
  const [first, second] = columns;
  if (first && second) across(shown('muntin', door.muntin, 'muntin'), first.x + first.width, door.muntin);
  const [top, under] = rows;
  // Muntins of the same width stand for mid rails where there are any.
  if (top && under && (door.midRail !== door.muntin || !second))
    up(shown('midRail', door.midRail, 'midRail'), top.y + top.height, door.midRail);
  return tiers;
}

/** The openings of the first row, or of the first column. */
function openingsIn({ openings }: DoorReport, first: 'row' | 'column'): Opening[] {
  return openings.filter((opening) => opening[first] === 0);
}

/** The openings whose size is to be shown: one where all are alike, else every one. */
function differing(
  openings: readonly Opening[],
  size: 'width' | 'height',
  usual: 'first' | 'last',
): { readonly opening: Opening; readonly path: string }[] {
  const alike = openings.every((opening) => Math.abs(opening[size] - openings[0]![size]) < 1e-6);
  if (alike) return [{ opening: openings.at(usual === 'first' ? 0 : -1)!, path: 'opening' }];
  return openings.map((opening) => ({ opening, path: `openings[${size === 'width' ? opening.column : opening.row}]` }));
}
