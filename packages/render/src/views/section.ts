import type { Report } from '@fielded/core';
import type { Point } from '@fielded/geometry';
import { joinCurves } from '@fielded/geometry';
import type { LeaderDimension } from '../dimension/leader.ts';
import type { LinearDimension } from '../dimension/linear.ts';
import type { Sketch } from '../dimension/sketch.ts';
import { stroke } from '../geometry/stroke.ts';
import type { Item } from '../scene.ts';
import { group, path } from '../scene.ts';
import { depthFigure, figure, landFigure, reachFigure, shoulderFigure, stockFigure } from './cut-dimensions.ts';
import type { PanelPart } from './panel-part.ts';
import { drawPanelPart, drawRemoved, liesOnOutline, surfacesAt, tongueFaces } from './panel-part.ts';
import { tier } from './tier.ts';

/** Degrees that a leader to a step leaves at, none of them near the hatching's 45°. */
const STEP_DIRECTIONS = [150, 120, 105, 75, 60, 30, 165, 15];
const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** The panel's edge alone: what is left and what was taken, with every size that a cut is set by. */
export function sketchSection(report: Report, scale: number): Sketch {
  const placing = { scale, x: 0, y: 0 };
  const part = drawPanelPart(report, placing);
  const { section, tongue } = report;
  const at = (x: number, y: number): Point => ({ x: x * scale, y: y * scale });
  const tiers: LinearDimension[] = [];
  const bottom = section.thickness;

  tiers.push(tier('left', stockFigure(report), at(0, 0), at(0, bottom)));
  section.cuts.forEach((cut, index) => {
    const front = cut.side === 'front';
    const side = front ? 'above' : 'below';
    const face = front ? 0 : bottom;
    const floor = front ? cut.depthCut : bottom - cut.depthCut;
    tiers.push(tier('left', depthFigure(report, index), at(0, face), at(0, floor)));
    tiers.push(tier(side, reachFigure(report, index), at(0, face), at(cut.reach, face)));
    if (cut.land > 0) tiers.push(tier(side, landFigure(report, index), at(0, face), at(cut.land, face)));
  });

  const tip = surfacesAt(part, 0);
  const mouth = surfacesAt(part, tongue.insertion);
  const { thicknessAtTip, thicknessAtMouth } = tongue;
  const removed = drawRemoved(report, placing, part.right);
  const items: Item[] = [group('removed', removed.items), group('panel', part.items)];
  if (tip && mouth && thicknessAtTip !== null && thicknessAtMouth !== null) {
    const even = Math.abs(thicknessAtTip - thicknessAtMouth) < 0.005;
    const tipFigure = figure(report, 'tongue.thicknessAtTip', thicknessAtTip, even ? 'tongue' : 'tip', {
      tone: 'judged',
    });
    const mouthFigure = figure(report, 'tongue.thicknessAtMouth', thicknessAtMouth, 'mouth', { tone: 'judged' });
    tiers.push(tier('left', tipFigure, at(0, tip.top), at(0, tip.bottom)));
    if (!even)
      tiers.push(tier('left', mouthFigure, at(tongue.insertion, mouth.top), at(tongue.insertion, mouth.bottom)));
    items.push(path('tongue', 'judged', joinCurves(tongueFaces(part, placing, tongue.insertion))));
  }
  if (tongue.insertion > 0) {
    const inGroove = figure(report, 'tongue.insertion', tongue.insertion, 'inGroove');
    tiers.push(tier('below', inGroove, at(0, bottom), at(tongue.insertion, bottom)));
    const x = tongue.insertion * scale;
    items.push(path('sight line', 'cutter', [stroke(x, -4, x, bottom * scale + 4)]));
  }
  return {
    items,
    outlines: [...part.outlines, ...removed.outlines],
    woods: part.woods,
    around: { x0: 0, y0: 0, x1: part.right, y1: bottom * scale },
    tiers,
    interiors: [],
    leaders: shoulderLeaders(report, part, at),
  };
}

/** Leaders to the upright steps at the field, where another cut has not taken them away. */
export function shoulderLeaders(
  report: Report,
  part: PanelPart,
  at: (x: number, y: number) => Point,
): LeaderDimension[] {
  return report.section.cuts.flatMap((cut, index) => {
    const front = cut.side === 'front';
    const middle = front ? cut.shoulder / 2 : report.section.thickness - cut.shoulder / 2;
    if (!(cut.shoulder > 0) || !liesOnOutline(part, cut.reach, middle)) return [];
    const directions = STEP_DIRECTIONS.map((degrees) => radians(front ? -degrees : degrees));
    return [{ ...shoulderFigure(report, index), targets: [{ ...at(cut.reach, middle), directions }], arrow: true }];
  });
}
