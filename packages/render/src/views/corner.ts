import type { Report } from '@fielded/core';
import {
  type Curve,
  cropLoops,
  joinCurves,
  type Loop,
  line,
  loopsBox,
  placeLoops,
  readLoops,
  reverseCurves,
} from '@fielded/geometry';
import type { LeaderDimension } from '../dimension/leader.ts';
import type { LinearDimension } from '../dimension/linear.ts';
import type { Sketch } from '../dimension/sketch.ts';
import { breakLine } from '../geometry/break-line.ts';
import { hatchLoops } from '../geometry/hatch.ts';
import { group, type Item, path } from '../scene.ts';
import { figure } from './cut-dimensions.ts';
import { drawFramePart, FRAME_HATCH, type FramePart } from './frame-part.ts';
import { drawPanelPart } from './panel-part.ts';
import { standPanel } from './stand.ts';
import { tier } from './tier.ts';
import { viewFigure } from './view-figure.ts';

type Cope = NonNullable<Report['frame']['cope']>;

/** Rail shown beyond the stile's sight edge, paper mm. */
const RAIL_SHOWN = 34;

/**
 * A stile and the rail's end that meets it, closed, in a section along the rail: sticking with groove, cope with stub tenon, and the
 * panel behind them, dashed. The sight edge is at x = 0.
 *
 * @throws RangeError for a frame whose rails are not coped.
 */
export function sketchCorner(report: Report, scale: number): Sketch {
  const { cope } = report.frame;
  if (cope === undefined) throw new RangeError('the rails are not coped to a sticking');
  const stile = drawFramePart(report, scale, 0, 0, true);
  const rail = drawRail(report, cope, scale);
  const behind = panelBehind(report, scale);
  const back = report.frame.thickness * scale;
  const items: Item[] = [
    group('rail', rail.items),
    group('stile', stile.items),
    ...(behind.length > 0 ? [path('panel behind', 'hidden', joinCurves(behind))] : []),
  ];
  return {
    items,
    outlines: [...stile.outlines, ...rail.outlines, ...behind],
    woods: [...stile.woods, ...rail.woods],
    around: { x0: stile.left, x1: RAIL_SHOWN, y0: 0, y1: back },
    tiers: [
      ...stileTiers(report, stile, scale),
      ...stickingTiers(report, cope, scale),
      ...tenonTiers(report, cope, scale),
    ],
    interiors: [],
    leaders: gapLeader(report, cope, scale),
  };
}

/** The rail's end from its front face round the cope and the tenon to the square shoulder behind it, broken off on the right. */
function drawRail({ frame }: Report, cope: Cope, scale: number): Pick<FramePart, 'items' | 'outlines' | 'woods'> {
  const { groove, thickness } = frame;
  const tip = -cope.tenon.length * scale;
  const [front, back] = [0, thickness * scale];
  const floor = (groove.setback + groove.width) * scale;
  // From the tip along the tenon's front and up the cope to the face.
  const [loop] = placeLoops(readLoops(cope.outline), { scale, x: tip, y: 0 });
  const curves = reverseCurves(loop?.curves ?? []);
  const first = curves[0]!;
  const edge: Curve[] = [
    line(RAIL_SHOWN, front, first.x0, front),
    ...curves,
    line(tip, groove.setback * scale, tip, floor),
    line(tip, floor, 0, floor),
    line(0, floor, 0, back),
    line(0, back, RAIL_SHOWN, back),
  ].filter((c) => c.x0 !== c.x1 || c.y0 !== c.y1);
  const wood: Loop = { curves: [...edge, line(RAIL_SHOWN, back, RAIL_SHOWN, front)], closed: true };
  const broken = breakLine(RAIL_SHOWN, front, back);
  return {
    items: [
      path('wood', 'wood', [wood]),
      path('hatch', 'hatch', joinCurves(hatchLoops([wood], FRAME_HATCH, true))),
      path('break', 'break', [broken]),
      path('outline', 'outline', joinCurves(edge)),
    ],
    outlines: [...edge, ...broken.curves],
    woods: [wood],
  };
}

/** The panel as it stands in the stile's groove beyond the rail; none where it does not go in. */
function panelBehind(report: Report, scale: number): readonly Curve[] {
  const part = drawPanelPart(report, { scale, x: 0, y: 0 });
  const stand = standPanel(report, part, 0, 'front wall');
  if (stand.inserted === null) return [];
  const loops = placeLoops(part.section, { scale, x: -stand.sight * scale, y: -stand.front * scale });
  const { y0, y1, x0 } = loopsBox(loops)!;
  return cropLoops(loops, { x0: x0 - 1, x1: RAIL_SHOWN - 2, y0: y0 - 1, y1: y1 + 1 }).outline;
}

function stileTiers(report: Report, stile: FramePart, scale: number): LinearDimension[] {
  const { groove, thickness } = report.frame;
  const { left, grooveBottom, grooveTop, grooveFloor } = stile;
  const corner = { x: grooveBottom, y: grooveTop };
  const floor = { x: grooveBottom, y: grooveFloor };
  const [front, back] = [
    { x: left, y: 0 },
    { x: left, y: thickness * scale },
  ];
  const setback = figure(report, 'frame.groove.setback', groove.setback, 'setback');
  const width = viewFigure(report, 'frame.groove.width', groove.width, 'tenonWidth');
  const depth = figure(report, 'frame.groove.depth', groove.depth, 'grooveDepth');
  const whole = figure(report, 'frame.thickness', thickness, 'frame');
  return [
    tier('left', setback, front, corner),
    tier('left', width, corner, floor),
    tier('left', whole, front, back),
    tier('below', depth, floor, { x: 0, y: back.y }),
  ];
}

/** The sticking from the sight edge in, and down from the front face. */
function stickingTiers(report: Report, { sticking }: Cope, scale: number): LinearDimension[] {
  const reach = viewFigure(report, 'frame.cope.sticking.reach', sticking.reach, 'stickingReach');
  const depth = viewFigure(report, 'frame.cope.sticking.depth', sticking.depth, 'stickingDepth');
  const sight = { x: 0, y: sticking.depth * scale };
  return [
    tier('above', reach, { x: -sticking.reach * scale, y: 0 }, sight),
    tier('right', depth, { x: RAIL_SHOWN, y: 0 }, sight),
  ];
}

function tenonTiers(report: Report, cope: Cope, scale: number): LinearDimension[] {
  const { groove, thickness } = report.frame;
  const floor = (groove.setback + groove.width) * scale;
  const long = viewFigure(report, 'frame.cope.tenon.length', cope.tenon.length, 'tenon');
  return [tier('below', long, { x: -cope.tenon.length * scale, y: floor }, { x: 0, y: thickness * scale })];
}

/** A gap that could be seen between cope and sticking, led to the middle of the line. */
function gapLeader(report: Report, cope: Cope, scale: number): LeaderDimension[] {
  if (cope.gap < SEEN) return [];
  const shown = viewFigure(report, 'frame.cope.gap', cope.gap, 'copeGap', { tone: 'trouble' });
  const target = { x: (-cope.sticking.reach * scale) / 2, y: (cope.sticking.depth * scale) / 2, directions: UPWARDS };
  return [{ ...shown, targets: [target], arrow: true }];
}

/** A gap narrower than this, mm, is none. */
const SEEN = 0.005;
const UPWARDS: readonly number[] = [-60, -120, -75, -105].map((degrees) => (degrees * Math.PI) / 180);
