import type { Report } from '@fielded/core';
import { goesTogether } from '@fielded/core';
import { type Curve, joinCurves, type Loop, line } from '@fielded/geometry';
import type { InteriorDimension } from '../dimension/interior.ts';
import type { LeaderDimension } from '../dimension/leader.ts';
import type { Sketch } from '../dimension/sketch.ts';
import type { Item } from '../scene.ts';
import { group, path } from '../scene.ts';
import { cross } from '../words/verdict-mark.ts';
import { depthFigure, figure, fullDepthEnd } from './cut-dimensions.ts';
import type { FramePart } from './frame-part.ts';
import { drawFramePart } from './frame-part.ts';
import { frameTiers, landTiers, panelTiers, reachTiers } from './joint-tiers.ts';
import type { PanelPart } from './panel-part.ts';
import { drawPanelPart, surfacesAt, tongueFaces } from './panel-part.ts';
import { shoulderLeaders } from './section.ts';
import type { Stand } from './stand.ts';
import { standPanel } from './stand.ts';

/** A gap narrower than this, paper mm, holds no arrows: they then stand as far behind the tip. */
const LEAST_GAP = 3;
/** How far in front of the groove a panel that does not enter is drawn, paper mm. */
const IN_FRONT = 16;

/** Which sizes a joint shows: those by which the fit is judged, or also those that the cuts are set by, for working on it. */
export type SizesShown = 'fit' | 'all';

/**
 * The panel in its frame: pushed in as far as it goes and hard against the groove's front wall, or in front of a groove that it does
 * not enter. `only` names the dimensions that will be laid out, null for all: those that take time are left out where they are not.
 */
export function sketchJoint(
  report: Report,
  scale: number,
  sizes: SizesShown = 'fit',
  only: readonly string[] | null = null,
): Sketch {
  const part = drawPanelPart(report, { scale, x: 0, y: 0 });
  const stand = standPanel(report, part, IN_FRONT / scale, 'front wall');
  const frame = drawFramePart(report, scale, stand.sight * scale, stand.front * scale);
  const bottom = report.section.thickness * scale;
  const frontFace = stand.front * scale;
  const backFace = frontFace + report.frame.thickness * scale;
  const items: Item[] = [group('frame', frame.items), group('panel', part.items)];
  const judged = judgedLines(part, frame, stand, scale);
  if (judged.length)
    items.push(path('judged', goesTogether(report.fit.verdict) ? 'judged' : 'trouble', joinCurves(judged)));
  const binding = bindingMarks(report, part, frame, stand, scale);
  // Whether a dimension that begins so is laid out.
  const asks = (...starts: readonly string[]) =>
    only === null || only.some((of) => starts.some((start) => of.startsWith(start)));
  if (binding.length) items.push(path('binding', 'trouble', binding));
  return {
    items,
    outlines: [...part.outlines, ...frame.outlines, ...binding.flatMap((loop) => loop.curves)],
    woods: [...part.woods, ...frame.woods],
    around: { x0: frame.left, x1: part.right, y0: Math.min(0, frontFace), y1: Math.max(bottom, backFace) },
    tiers: [
      ...(asks('frame.') ? frameTiers(report, frame, stand, scale) : []),
      ...(asks('panel.', 'frame.', 'fit.', 'tongue.') ? panelTiers(report, part, stand, scale) : []),
      ...(sizes === 'all' ? reachTiers(report, part, scale, only) : landTiers(report, part, stand, scale)),
    ],
    interiors: [
      ...(asks('tongue.') ? tipInteriors(report, part, stand, scale) : []),
      ...(sizes === 'all' ? depthInteriors(report, stand, scale, only) : []),
    ],
    leaders: [
      ...(asks('fit.') ? clearanceLeaders(report, part, stand, scale) : []),
      ...(sizes === 'all' && asks('cuts[')
        ? shoulderLeaders(report, part, (x, y) => ({ x: x * scale, y: y * scale }))
        : []),
    ],
  };
}

/** Groove walls and tongue faces where they lie within each other. */
export function judgedLines(part: PanelPart, frame: FramePart, stand: Stand, scale: number): Curve[] {
  if (stand.inserted === null || stand.inserted <= 0) return [];
  const mouth = stand.inserted * scale;
  return [
    line(0, frame.grooveTop, mouth, frame.grooveTop),
    line(0, frame.grooveFloor, mouth, frame.grooveFloor),
    ...tongueFaces(part, { scale, x: 0, y: 0 }, stand.inserted),
  ];
}

/** Crosses where a tongue that stops short wedges: on each wall that it meets at the mouth and not yet before. */
export function bindingMarks(report: Report, part: PanelPart, frame: FramePart, stand: Stand, scale: number): Loop[] {
  if (report.fit.verdict !== 'stops-short' || stand.inserted === null) return [];
  const mouth = surfacesAt(part, stand.inserted);
  const before = surfacesAt(part, stand.inserted * 0.9);
  if (!mouth || !before) return [];
  const x = stand.inserted * scale;
  const marks: Loop[] = [];
  if (before.top - mouth.top > 1e-4) marks.push(...cross(x, frame.grooveTop, 1.8));
  if (mouth.bottom - before.bottom > 1e-4) marks.push(...cross(x, frame.grooveFloor, 1.8));
  return marks;
}

/** The depth of each cut, dimensioned in the open between frame and field. */
function depthInteriors(
  report: Report,
  stand: Stand,
  scale: number,
  only: readonly string[] | null,
): InteriorDimension[] {
  const { section } = report;
  return section.cuts.flatMap((cut, index) => {
    if (only !== null && !only.some((of) => of.includes(`cuts[${index}].depth`))) return [];
    const shown = depthFigure(report, index);
    const front = cut.side === 'front';
    const face = front ? 0 : section.thickness;
    const floor = front ? cut.depthCut : section.thickness - cut.depthCut;
    const start = Math.max(0, stand.sight);
    const level = (start + 4 / scale) * scale + 3;
    const floorX = Math.min(fullDepthEnd(cut, section.thickness) * scale, level);
    return {
      ...shown,
      side: 'left',
      from: { x: cut.reach * scale, y: face * scale },
      to: { x: floorX, y: floor * scale },
      levels: [0, 3, 6, 9, 12, 15, 18, 22, 26, 30].map((on) => level + on),
    };
  });
}

/** The tongue at its tip: in the gap that is left at the bottom of the groove, or in front of a groove that it does not enter. */
function tipInteriors(report: Report, part: PanelPart, stand: Stand, scale: number): InteriorDimension[] {
  const { thicknessAtTip } = report.tongue;
  const tip = surfacesAt(part, 0);
  if (thicknessAtTip === null || !tip) return [];
  const outside = stand.inserted === null;
  const tone = outside ? 'trouble' : 'judged';
  const shown = figure(report, 'tongue.thicknessAtTip', thicknessAtTip, 'tongue', { tone });
  const from = { x: 0, y: tip.top * scale };
  const gap = (report.fit.bottomGap ?? 0) * scale;
  const levels = outside ? [-6] : [gap < LEAST_GAP ? LEAST_GAP : -gap / 2];
  return [{ ...shown, side: 'left', from, to: { x: 0, y: tip.bottom * scale }, levels }];
}

const DOWNWARDS: readonly number[] = [120, 105, 60, 75, 150, 30].map((degrees) => (degrees * Math.PI) / 180);

/** The clearance, led across it to the tongue's back face, since the panel is drawn against the groove's front wall. */
function clearanceLeaders(report: Report, part: PanelPart, stand: Stand, scale: number): LeaderDimension[] {
  const { clearance, verdict } = report.fit;
  const { inserted } = stand;
  if (clearance === null || inserted === null || !goesTogether(verdict)) return [];
  const shown = figure(report, 'fit.clearance', clearance, 'clearance', { tone: 'judged' });
  const targetsAt = (shares: readonly number[]) =>
    shares.flatMap((share) => {
      const surfaces = surfacesAt(part, inserted * share);
      if (surfaces === null) return [];
      return [{ x: inserted * scale * share, y: surfaces.bottom * scale, directions: DOWNWARDS }];
    });
  const targets = targetsAt([0.3, 0.5, 0.7]);
  if (targets.length === 0) return [];
  return [{ ...shown, targets, spare: targetsAt([0.85, 0.95]), arrow: true }];
}
