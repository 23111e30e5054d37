import type { Report } from '@fielded/core';
import type { Point } from '@fielded/geometry';
import type { LinearDimension } from '../dimension/linear.ts';
import { figure, landFigure, reachFigure, reachOf, stockFigure } from './cut-dimensions.ts';
import type { FramePart } from './frame-part.ts';
import type { PanelPart } from './panel-part.ts';
import { liesOnOutline, surfacesAt } from './panel-part.ts';
import type { Stand } from './stand.ts';
import { tier } from './tier.ts';

/** The frame's sizes: the groove, its walls and what is worked on the back. */
export function frameTiers(report: Report, part: FramePart, stand: Stand, scale: number): LinearDimension[] {
  const { groove, thickness } = report.frame;
  const front = stand.front * scale;
  const sight = stand.sight * scale;
  const tiers: LinearDimension[] = [];
  const { left, grooveBottom, grooveTop, grooveFloor } = part;
  const corner = { x: grooveBottom, y: grooveTop };
  const floor = { x: grooveBottom, y: grooveFloor };
  const back = front + thickness * scale;
  tiers.push(
    tier('left', figure(report, 'frame.groove.setback', groove.setback, 'setback'), { x: left, y: front }, corner),
  );
  tiers.push(
    tier('left', figure(report, 'frame.groove.width', groove.width, 'groove', { tone: 'judged' }), corner, floor),
  );
  tiers.push(
    tier('left', figure(report, 'frame.thickness', thickness, 'frame'), { x: left, y: front }, { x: left, y: back }),
  );
  const mouth = { x: sight, y: back };
  tiers.push(tier('below', figure(report, 'frame.groove.depth', groove.depth, 'grooveDepth'), floor, mouth));
  return [...tiers, ...backEdgeTiers(report, stand, left, scale)];
}

/** What is worked on the back's inside arris: in from the sight edge, and up from the back. */
function backEdgeTiers(report: Report, stand: Stand, left: number, scale: number): LinearDimension[] {
  const { backEdge, thickness } = report.frame;
  if (backEdge === undefined) return [];
  const at = (x: number, y: number): Point => ({ x: (stand.sight - x) * scale, y: (stand.front + y) * scale });
  const reach = figure(report, 'frame.backEdge.reach', backEdge.reach, 'backReach');
  const depth = figure(report, 'frame.backEdge.depth', backEdge.depth, 'backDepth');
  return [
    { ...reach, side: 'below', from: at(backEdge.reach, thickness), to: at(0, thickness - backEdge.depth) },
    {
      ...depth,
      side: 'left',
      from: { x: left, y: (stand.front + thickness) * scale },
      to: at(0, thickness - backEdge.depth),
    },
  ];
}

/** The panel's sizes: its thickness, the gap at the groove's bottom, how far it goes in, and the margin. */
export function panelTiers(report: Report, part: PanelPart, stand: Stand, scale: number): LinearDimension[] {
  const { section, tongue, fit, frame } = report;
  const tiers: LinearDimension[] = [];
  const at = (x: number, y: number): Point => ({ x: x * scale, y: y * scale });
  const right = part.right / scale;
  const bottom = section.thickness;
  tiers.push(tier('right', stockFigure(report), at(right, 0), at(right, bottom)));
  const tip = surfacesAt(part, 0) ?? { top: 0, bottom };
  if (stand.inserted === null) return tiers;
  const lip = stand.front;
  const under = lip + frame.thickness;
  if (fit.bottomGap !== null && fit.bottomGap > 0) {
    const asDesigned = Math.abs(fit.bottomGap - frame.swellGap) < 1e-9;
    const gap = figure(report, asDesigned ? 'frame.swellGap' : 'fit.bottomGap', fit.bottomGap, 'gap');
    tiers.push(
      tier('below', gap, at(-fit.bottomGap, lip + frame.groove.setback + frame.groove.width), at(0, tip.bottom)),
    );
  }
  if (stand.inserted > 0) {
    const full = stand.inserted === tongue.insertion;
    const inserted = full
      ? figure(report, 'tongue.insertion', tongue.insertion, 'insertion', { tone: 'judged' })
      : figure(report, 'fit.deepestInsertion', stand.inserted, 'inserted', { tone: 'judged' });
    tiers.push(tier('below', inserted, at(0, tip.bottom), at(stand.inserted, under)));
  }
  if (fit.visibleMargin !== null && stand.inserted === tongue.insertion && fit.visibleMargin > 0) {
    const margin = figure(report, 'fit.visibleMargin', fit.visibleMargin, 'margin');
    tiers.push(tier('above', margin, at(stand.inserted, lip), at(stand.inserted + fit.visibleMargin, 0)));
  }
  return tiers;
}

/** How far in each cut reaches; `only` names the dimensions that will be laid out, null for all. */
export function reachTiers(
  report: Report,
  part: PanelPart,
  scale: number,
  only: readonly string[] | null,
): LinearDimension[] {
  const { section } = report;
  const tip = surfacesAt(part, 0) ?? { top: 0, bottom: section.thickness };
  return section.cuts.flatMap((cut, index) => {
    if (only !== null && !only.includes(reachOf(index))) return [];
    const front = cut.side === 'front';
    return {
      ...reachFigure(report, index),
      side: front ? 'above' : 'below',
      from: { x: 0, y: (front ? tip.top : tip.bottom) * scale },
      to: { x: cut.reach * scale, y: front ? 0 : section.thickness * scale },
    };
  });
}

/** The flat that each front cut leaves from the edge, where it is still there, and how the faces stand to each other. */
export function landTiers(report: Report, part: PanelPart, stand: Stand, scale: number): LinearDimension[] {
  const { section, fit } = report;
  const tiers: LinearDimension[] = [];
  const lands = section.cuts.flatMap((cut, index) => {
    const level = cut.side === 'front' ? cut.depthCut : section.thickness - cut.depthCut;
    const kept = cut.land > 0 && liesOnOutline(part, cut.land, level) && liesOnOutline(part, 0, level);
    return kept ? [{ cut, index, level }] : [];
  });
  for (const { cut, index, level } of lands) {
    const from = { x: 0, y: level * scale };
    const to = { x: cut.land * scale, y: level * scale };
    tiers.push({ ...landFigure(report, index), side: cut.side === 'front' ? 'above' : 'below', from, to });
  }
  const proud = stand.inserted === null || fit.frontFace === null ? 0 : stand.front;
  if (Math.abs(proud) < 0.005) return tiers;
  const face = figure(report, 'fit.frontFace.most', Math.abs(proud), proud > 0 ? 'proud' : 'recessed');
  const from = { x: stand.sight * scale, y: stand.front * scale };
  return [...tiers, { ...face, side: 'right', from, to: { x: part.right, y: 0 } }];
}
