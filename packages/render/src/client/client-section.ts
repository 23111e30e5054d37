import type { Report } from '@fielded/core';
import { joinCurves, polygon } from '@fielded/geometry';
import { hatchLoops } from '../geometry/hatch.ts';
import { type Item, path, text } from '../scene.ts';
import { drawFramePart } from '../views/frame-part.ts';
import { drawPanelPart } from '../views/panel-part.ts';
import { standPanel } from '../views/stand.ts';

/** What the parts are called on a client's section. */
export interface SectionWords {
  readonly frame: string;
  readonly raise: string;
  readonly field: string;
  /** Before each figure. */
  readonly frameThickness: string;
  readonly panelThickness: string;
  readonly margin: string;
  /** A size in mm written out. */
  readonly length: (mm: number) => string;
  /** How the field stands to the frame. */
  readonly face: string;
}

const LETTERS = 2;
const AWAY = 5;
/** End grain is hinted at, not hatched. */
const GRAIN_APART = 3.6;

/**
 * The joint as a client reads it: frame and panel as pale wood, their parts named, and the few sizes that one sees in the
 * finished door. No set-up figures. `scale` is paper mm for a mm of wood.
 */
export function drawClientSection(report: Report, scale: number, words: SectionWords): Item[] {
  const part = drawPanelPart(report, { scale, x: 0, y: 0 });
  const stand = standPanel(report, part, 16 / scale, 'middle');
  const frame = drawFramePart(report, scale, stand.sight * scale, stand.front * scale);
  const items: Item[] = [
    path('frame wood', 'tone-3', frame.woods),
    path('panel wood', 'tone-2', part.woods),
    path('grain', 'grain', joinCurves(hatchLoops(part.woods, GRAIN_APART, true))),
    path('frame outline', 'fine', joinCurves(frame.outlines)),
    path('panel outline', 'fine', joinCurves(part.outlines)),
  ];
  return [...items, ...names(report, part.right, frame.left, stand, scale, words)];
}

function names(
  report: Report,
  right: number,
  left: number,
  stand: { readonly sight: number; readonly front: number },
  scale: number,
  words: SectionWords,
): Item[] {
  const { frame, section, fit } = report;
  const say = words.length;
  const front = stand.front * scale;
  const top = Math.min(0, front) - AWAY;
  const sight = stand.sight * scale;
  const reach = sight + (fit.visibleMargin ?? 0) * scale;
  const items: Item[] = [];
  const label = (key: string, x: number, y: number, said: string, anchor: 'start' | 'middle' | 'end' = 'middle') =>
    items.push(text(key, 'text', x, y, said, LETTERS, anchor));
  const bracket = (key: string, from: number, to: number, y: number) =>
    items.push(
      path(key, 'dimension', [
        polygon(
          [
            [from, y + 2],
            [from, y],
            [to, y],
            [to, y + 2],
          ],
          false,
        ),
      ]),
    );
  bracket('frame bracket', left, sight, top);
  label('frame name', (left + sight) / 2, top - 1.5, words.frame);
  if (fit.visibleMargin !== null && reach > sight) {
    bracket('raise bracket', sight + 0.8, reach, top);
    label('raise name', (sight + reach) / 2, top - 1.5, `${words.raise} ${say(fit.visibleMargin)}`);
  }
  if (right > reach) {
    bracket('field bracket', reach + 0.8, right, top);
    label('field name', (reach + right) / 2, top - 1.5, words.field);
  }
  const bottom = Math.max(section.thickness * scale, front + frame.thickness * scale) + AWAY;
  const sizes = [
    `${words.frameThickness} ${say(frame.thickness)}`,
    `${words.panelThickness} ${say(section.thickness)}`,
  ];
  if (fit.frontFace !== null) sizes.push(`${words.field} ${words.face}`);
  sizes.forEach((said, line) => {
    label(`size ${line + 1}`, left, bottom + LETTERS * (1 + 1.8 * line), said, 'start');
  });
  return items;
}
