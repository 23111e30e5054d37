import type { DoorReport, Report } from '@fielded/core';
import type { Point } from '@fielded/geometry';
import {
  type Box,
  type Curve,
  joinCurves,
  type Loop,
  loopsBox,
  type Pose,
  poseLoops,
  readLoops,
  rectangle,
} from '@fielded/geometry';
import type { LinearDimension } from '../dimension/linear.ts';
import type { Sketch } from '../dimension/sketch.ts';
import { hatchLoops } from '../geometry/hatch.ts';
import type { Item } from '../scene.ts';
import { group, path } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { figure } from './cut-dimensions.ts';
import { mitres } from './door-parts.ts';
import { type DrawGrain, drawGrain } from './grain.ts';
import { cutsEnd, splitBreaks } from './panel-part.ts';
import { fieldLoops, radiusLeaders, shapedLoops } from './shaped-panel.ts';
import { tier } from './tier.ts';
import { viewFigure } from './view-figure.ts';

/** Between the panel's front and its sections, paper mm. */
const APART = 16;
const SMALL_HATCH = 1.2;

/**
 * The whole panel from the front, with the line that the frame covers, the field and the mitres, over its section across and beside
 * its section along. `index` counts the job's doors from 0, `kind` the door's kinds of panels; `grain` draws the front's grain.
 *
 * @throws RangeError for a door that the job does not have.
 */
export function sketchPanel(
  report: Report,
  scale: number,
  index: number,
  kind: number = 0,
  grain: DrawGrain = drawGrain,
): Sketch {
  const panel = findPanel(report, scale, index, kind);
  const { width, height } = panel.shown;
  const edge = panel.shaped?.edge ?? rectangle(inset(panel, 0));
  const below = height * scale + APART;
  const beside = width * scale + APART;
  const thick = report.section.thickness * scale;
  // Looking down, the front is nearest; looking from the left, it is at the right (first-angle projection, ISO 128-3).
  const across = drawWhole('section across', report, width, {
    xx: scale,
    xy: 0,
    yx: 0,
    yy: -scale,
    x0: 0,
    y0: below + thick,
  });
  const along = drawWhole('section along', report, height, {
    xx: 0,
    xy: -scale,
    yx: scale,
    yy: 0,
    x0: beside + thick,
    y0: 0,
  });
  const woods = [edge, ...across.woods, ...along.woods];
  return {
    items: [group('front', drawFront(report, panel, edge, grain)), across.item, along.item],
    outlines: [...edge.curves, ...across.outlines, ...along.outlines],
    woods,
    around: loopsBox(woods)!,
    tiers: frontTiers(report, panel),
    interiors: [],
    leaders: panel.shaped ? radiusLeaders(report, index, 'panelEdge', edge) : [],
  };
}

/** One kind of a door's panels, as it is drawn. */
interface DrawnPanel {
  readonly door: DoorReport;
  readonly shown: DoorReport['panels'][number] | (DoorReport['panel'] & Pick<DoorReport, 'grain'>);
  /** Its place in the report. */
  readonly place: string;
  /** How far in the front's cuts leave the face, mm, and whether they leave a field. */
  readonly fieldStart: number;
  readonly hasField: boolean;
  readonly shaped: ReturnType<typeof shapedLoops> | null;
  readonly scale: number;
}

function findPanel(report: Report, scale: number, index: number, kind: number): DrawnPanel {
  const door = report.doors?.[index];
  if (!door) throw new RangeError(`door ${index + 1} of ${report.doors?.length ?? 0}`);
  const shown = door.panels[kind] ?? { ...door.panel, grain: door.grain };
  const place = kind === 0 ? `doors[${index}].panel` : `doors[${index}].panels[${kind}]`;
  const fieldStart = cutsEnd(report, 'front');
  const hasField = fieldStart > 0 && 2 * fieldStart < Math.min(shown.width, shown.height);
  const { head } = door;
  const shaped = 'shaped' in shown && shown.shaped && head ? shapedLoops({ ...door, head }, scale, 0, 0) : null;
  return { door, shown, place, fieldStart, hasField, shaped, scale };
}

/** The panel's rectangle less `by` mm on every side, on the paper. */
function inset({ shown: { width, height }, scale }: DrawnPanel, by: number): Box {
  return { x0: by * scale, y0: by * scale, x1: (width - by) * scale, y1: (height - by) * scale };
}

/** The panel from the front. */
function drawFront(report: Report, panel: DrawnPanel, edgeLoop: Loop, grain: DrawGrain): Item[] {
  const { door, shown, fieldStart, hasField, shaped, scale } = panel;
  const edge = inset(panel, 0);
  const field = inset(panel, hasField ? fieldStart : 0);
  const covered = [(door.panel.width - door.opening.width) / 2, (door.panel.height - door.opening.height) / 2] as const;
  const sightBox = {
    x0: covered[0] * scale,
    y0: covered[1] * scale,
    x1: (shown.width - covered[0]) * scale,
    y1: (shown.height - covered[1]) * scale,
  };
  // Lines closer than 0.8 mm run together on paper (ISO 128: no less than 0.7 mm apart).
  const sightIsSeen = report.tongue.insertion * scale >= 0.8;
  return [
    // What is left square of the blank is sawn off.
    path('blank', 'hidden', shaped ? [rectangle(edge)] : []),
    path('wood', 'wood', [edgeLoop]),
    grain('grain', shaped?.square ?? field, shown.grain === 'up'),
    path('sight line', 'cutter', sightIsSeen ? [shaped?.sight ?? rectangle(sightBox)] : []),
    path('field', 'outline', fieldLoops(shaped, hasField ? [rectangle(field), ...mitres(edge, field)] : [])),
    path('outline', 'outline', [edgeLoop]),
  ];
}

/** The sizes of the panel's front: its width and height, and the margin that shows of the raise. */
function frontTiers(report: Report, { door, shown, place, fieldStart, hasField, shaped, scale }: DrawnPanel) {
  const { width, height } = shown;
  const at = (x: number, y: number): Point => ({ x: x * scale, y: y * scale });
  const tiers: LinearDimension[] = [];
  const named = safeText(door.name);
  const size = (of: 'width' | 'height') =>
    viewFigure(report, `${place}.${of}`, shown[of], of === 'width' ? 'panelWidth' : 'panelHeight', { door: named });
  // Above a shaped head stand its radii.
  tiers.push(
    tier(shaped ? 'below' : 'above', size('width'), at(0, shaped ? height : 0), at(width, shaped ? height : 0)),
  );
  tiers.push(tier('left', size('height'), at(0, 0), at(0, height)));
  const { visibleMargin } = report.fit;
  if (hasField && visibleMargin !== null && visibleMargin > 0) {
    const margin = figure(report, 'fit.visibleMargin', visibleMargin, 'margin');
    const sight = report.tongue.insertion;
    // The report's margin is that of the edges along the grain: less shows at the ends where they go in less, and more where further.
    const upright = shown.grain === 'up' && Math.abs(door.panel.height - door.opening.height - 2 * sight) > 1e-6;
    const [side, level] = shaped ? (['below', height] as const) : (['above', 0] as const);
    tiers.push(
      upright
        ? tier(side, margin, at(sight, level), at(sight + visibleMargin, level))
        : tier('left', margin, at(sight, sight), at(fieldStart, sight + visibleMargin)),
    );
  }
  return tiers;
}

/** The panel's section from edge to edge, `length` mm of wood. */
function drawWhole(
  key: string,
  report: Report,
  length: number,
  pose: Pose,
): { item: Item; woods: Loop[]; outlines: Curve[] } {
  const { outline, width } = report.section;
  const middle = length / 2;
  const half = readLoops(outline).map((loop) => ({
    ...loop,
    curves: loop.curves.map((c) => ({
      ...c,
      x0: c.x0 > width - 1e-6 ? middle : c.x0,
      x1: c.x1 > width - 1e-6 ? middle : c.x1,
    })),
  }));
  const far: Pose = {
    ...pose,
    xx: -pose.xx,
    yx: -pose.yx,
    x0: pose.x0 + pose.xx * length,
    y0: pose.y0 + pose.yx * length,
  };
  const woods = [...poseLoops(pose, half), ...poseLoops(far, half)];
  const level = pose.xx === 0;
  const at = { x: pose.x0 + pose.xx * middle, y: pose.y0 + pose.yx * middle };
  const { edges } = splitBreaks(woods, at, level);
  const item = group(key, [
    path('wood', 'wood', woods),
    path('hatch', 'hatch', joinCurves(hatchLoops(woods, SMALL_HATCH, true))),
    path('outline', 'outline', joinCurves(edges)),
  ]);
  return { item, woods, outlines: edges };
}
