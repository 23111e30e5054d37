import type { Report } from '@fielded/core';
import { type Chain, flipCurve, type Loop, polygon, readLoops } from '@fielded/geometry';
import type { Item } from './scene.ts';
import { safeText } from './text/safe-text.ts';
import { sketchJoint } from './views/joint.ts';
import { sketchPanel } from './views/panel.ts';

/** Outlines under one name for a drawing program: mm at 1:1, x right, y up. */
export interface OutlineLayer {
  readonly name: string;
  readonly chains: readonly Chain[];
}

/** The views that are given as outlines. */
export const OUTLINE_VIEWS: readonly ['section', 'joint', 'cuts', 'panel'] = ['section', 'joint', 'cuts', 'panel'];
export type OutlineView = (typeof OUTLINE_VIEWS)[number];

/**
 * What a view shows, without figures, hatching and machine: layers of lines and true arcs at 1:1.
 *
 * Section and cuts stand about the panel's edge at its front face, x in from the edge: STOCK before any cut, PANEL what is left,
 * CUT 1, CUT 2 … the edge of what each knife sweeps. The joint has PANEL and FRAME as they stand to each other, broken
 * off where they run on. The panel has PANEL, FIELD, SIGHT (what the frame covers) and its two SECTIONs; `door` counts from 0.
 *
 * @throws RangeError for a door that the job does not have.
 */
export function outlineLayers(report: Report, view: OutlineView, door: number = 0): OutlineLayer[] {
  if (view === 'section') return [stockLayer(report), layer('PANEL', readLoops(report.section.outline))];
  if (view === 'cuts') {
    const cuts = report.section.cuts.map(({ name, swept }, i) => layer(`CUT ${i + 1} ${name}`, readLoops(swept)));
    return [...outlineLayers(report, 'section'), ...cuts];
  }
  if (view === 'joint') {
    const { items } = sketchJoint(report, 1);
    return [layer('PANEL', loopsOf(items, 'panel', 'outline')), layer('FRAME', loopsOf(items, 'frame', 'outline'))];
  }
  const { items } = sketchPanel(report, 1, door);
  return [
    layer('PANEL', loopsOf(items, 'front', 'outline')),
    layer('FIELD', loopsOf(items, 'front', 'field')),
    layer('SIGHT', loopsOf(items, 'front', 'sight line')),
    layer('SECTION', [...loopsOf(items, 'section across', 'outline'), ...loopsOf(items, 'section along', 'outline')]),
  ].filter(({ chains }) => chains.length > 0);
}

function stockLayer({ section: { thickness, width } }: Report): OutlineLayer {
  const corners = [
    [width, 0],
    [0, 0],
    [0, thickness],
    [width, thickness],
  ] as const;
  return layer('STOCK', [polygon(corners, false)]);
}

/** The paths of one name within a group of a drawing. */
function loopsOf(items: readonly Item[], within: string, key: string): readonly Loop[] {
  const found = items.find((item) => item.kind === 'group' && item.key === within);
  if (found?.kind !== 'group') return [];
  return found.items.flatMap((item) => (item.kind === 'path' && item.key === key ? item.loops : []));
}

/** Loops as a layer: y turned to run up, a name that every drawing program takes. */
function layer(name: string, loops: readonly Loop[]): OutlineLayer {
  const plain = safeText(name)
    .toUpperCase()
    .replace(/[^\p{L}\p{N}_ -]+/gu, '_')
    .slice(0, 60);
  const chains = loops.map(({ curves }) => curves.map((curve) => flipCurve(curve, 0)));
  return { name: plain, chains: chains.filter(({ length }) => length > 0) };
}
