import type { Report } from '@fielded/core';
import { goesTogether } from '@fielded/core';
import type { Point } from '@fielded/geometry';
import { type Box, type Curve, cropLoops, joinCurves, type Loop } from '@fielded/geometry';
import type { InteriorDimension } from '../dimension/interior.ts';
import type { LinearDimension } from '../dimension/linear.ts';
import type { Sketch } from '../dimension/sketch.ts';
import { hatchLoops } from '../geometry/hatch.ts';
import type { Item, Role } from '../scene.ts';
import { group, path } from '../scene.ts';
import { figure } from './cut-dimensions.ts';
import { drawFramePart, FRAME_HATCH } from './frame-part.ts';
import { bindingMarks, judgedLines } from './joint.ts';
import { drawPanelPart, PANEL_HATCH, surfacesAt } from './panel-part.ts';
import type { Stand } from './stand.ts';
import { standPanel } from './stand.ts';
import { tier } from './tier.ts';
import { viewFigure } from './view-figure.ts';

/** Wood shown round the groove, paper mm. */
const BEYOND = 24;
const IN_FRONT = 3;

/** The tongue in its groove, large, standing as the joint has it: hard against the groove's front wall, with what is left free behind it. */
export function sketchDetail(report: Report, scale: number): Sketch {
  const part = drawPanelPart(report, { scale, x: 0, y: 0 });
  const stand = standPanel(report, part, IN_FRONT, 'front wall');
  const frame = drawFramePart(report, scale, stand.sight * scale, stand.front * scale);
  const { grooveBottom, grooveTop, grooveFloor } = frame;
  const mouth = Math.max(stand.sight, 0) * scale;
  const tip = surfacesAt(part, 0);
  const box: Box = {
    x0: grooveBottom - BEYOND / 2,
    x1: mouth + BEYOND + (stand.inserted === null ? BEYOND : 0),
    y0: Math.min(grooveTop, (tip?.top ?? 0) * scale) - BEYOND,
    y1: Math.max(grooveFloor, (tip?.bottom ?? 0) * scale) + BEYOND,
  };
  const frameCrop = crop('frame', frame.woods, box, 'hatch-frame', FRAME_HATCH, false);
  const panelCrop = crop('panel', part.woods, box, 'hatch', PANEL_HATCH, true);
  const judged = judgedLines(part, frame, stand, scale);
  const binding = bindingMarks(report, part, frame, stand, scale);
  const items: Item[] = [frameCrop.item, panelCrop.item];
  if (judged.length) {
    items.push(path('judged', goesTogether(report.fit.verdict) ? 'judged' : 'trouble', joinCurves(judged)));
  }
  if (binding.length) items.push(path('binding', 'trouble', binding));
  return {
    items,
    outlines: [...frameCrop.outlines, ...panelCrop.outlines, ...binding.flatMap(({ curves }) => curves)],
    woods: [...frameCrop.wood, ...panelCrop.wood],
    around: box,
    tiers: tiersOf(report, stand, scale, { grooveBottom, grooveTop, grooveFloor, box }),
    interiors: [
      ...gapInteriors(report, stand, scale, surfacesAt(part, stand.inserted ?? 0), frame),
      ...tipInterior(report, stand, scale, tip),
    ],
    leaders: [],
  };
}

/** Wood cropped to a box: hatched, outlined, and a thin line where it runs on. */
function crop(key: string, loops: readonly Loop[], box: Box, role: Role, spacing: number, rising: boolean) {
  const { outline, cuts } = cropLoops(loops, box);
  const wood: Loop[] = [{ curves: [...outline, ...cuts], closed: true }];
  const item = group(key, [
    path('hatch', role, joinCurves(hatchLoops(wood, spacing, rising))),
    path('break', 'break', joinCurves(cuts)),
    path('outline', 'outline', joinCurves(outline)),
  ]);
  return { item, wood, outlines: [...outline, ...cuts] as readonly Curve[] };
}

interface GrooveOnPaper {
  readonly grooveBottom: number;
  readonly grooveTop: number;
  readonly grooveFloor: number;
}

function tiersOf(report: Report, stand: Stand, scale: number, at: GrooveOnPaper & { box: Box }): LinearDimension[] {
  const { groove } = report.frame;
  const { grooveBottom, grooveTop, grooveFloor, box } = at;
  const tiers: LinearDimension[] = [];
  const sight = stand.sight * scale;
  const corner = (x: number, y: number): Point => ({ x, y });
  const width = figure(report, 'frame.groove.width', groove.width, 'groove', { tone: 'judged' });
  tiers.push(tier('left', width, corner(grooveBottom, grooveTop), corner(grooveBottom, grooveFloor)));
  const depth = figure(report, 'frame.groove.depth', groove.depth, 'grooveDepth');
  tiers.push(tier('below', depth, corner(grooveBottom, grooveFloor), corner(sight, box.y1)));
  if (stand.inserted !== null && stand.inserted > 0) {
    const full = stand.inserted === report.tongue.insertion;
    const of = full ? 'tongue.insertion' : 'fit.deepestInsertion';
    const enters = figure(report, of, stand.inserted, full ? 'insertion' : 'inserted', { tone: 'judged' });
    tiers.push(tier('below', enters, corner(0, grooveFloor), corner(sight, box.y1)));
  }
  return tiers;
}

/** The gap at the groove's bottom, and the clearance behind the tongue, measured at the mouth. */
function gapInteriors(
  report: Report,
  stand: Stand,
  scale: number,
  mouth: { top: number; bottom: number } | null,
  { grooveBottom, grooveTop, grooveFloor }: GrooveOnPaper,
): InteriorDimension[] {
  const { fit, frame } = report;
  if (stand.inserted === null || !mouth) return [];
  const found: InteriorDimension[] = [];
  const middle = (grooveTop + grooveFloor) / 2;
  if (fit.bottomGap !== null && fit.bottomGap > 0) {
    const asDesigned = Math.abs(fit.bottomGap - frame.swellGap) < 1e-9;
    const of = asDesigned ? 'frame.swellGap' : 'fit.bottomGap';
    const gap = figure(report, of, fit.bottomGap, 'gap');
    const levels = [0, 6, -6, 12, -12].map((on) => middle + on);
    found.push({ ...gap, side: 'above', from: { x: grooveBottom, y: middle }, to: { x: 0, y: middle }, levels });
  }
  if (fit.clearance === null || !goesTogether(fit.verdict)) return found;
  const sight = stand.inserted * scale;
  const clear = viewFigure(report, 'fit.clearance', fit.clearance, 'clear', { tone: 'judged' });
  const levels = [-8, -12, -16, -20].map((on) => sight + on);
  const back = mouth.bottom * scale;
  found.push({ ...clear, side: 'left', from: { x: sight, y: grooveFloor }, to: { x: sight, y: back }, levels });
  return found;
}

/** The tip of a tongue that does not enter. */
function tipInterior(
  report: Report,
  stand: Stand,
  scale: number,
  tip: { top: number; bottom: number } | null,
): InteriorDimension[] {
  const { thicknessAtTip } = report.tongue;
  if (stand.inserted !== null || thicknessAtTip === null || !tip) return [];
  const shown = viewFigure(report, 'tongue.thicknessAtTip', thicknessAtTip, 'tipFree', { tone: 'trouble' });
  const from = { x: 0, y: tip.top * scale };
  return [{ ...shown, side: 'left', from, to: { x: 0, y: tip.bottom * scale }, levels: [-8] }];
}
