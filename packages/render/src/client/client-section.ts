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
/** Between neighbouring brackets, mm. */
const APART = 0.8;
/** End grain is hinted at, not hatched: its lines stand this far apart, mm. */
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
  return [...items, ...drawNames(report, part.right, frame.left, stand, scale, words)];
}

/** The parts' names over brackets above the section, and the sizes under it. */
function drawNames(
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
  const showsRaise = fit.visibleMargin !== null && reach > sight;
  const bottom = Math.max(section.thickness * scale, front + frame.thickness * scale) + AWAY;
  const sizes = [
    `${words.frameThickness} ${say(frame.thickness)}`,
    `${words.panelThickness} ${say(section.thickness)}`,
    ...(fit.frontFace === null ? [] : [`${words.field} ${words.face}`]),
  ];
  return [
    ...nameSpan('frame', left, sight, top, words.frame),
    ...(showsRaise
      ? nameSpan('raise', sight + APART, reach, top, `${words.raise} ${say(fit.visibleMargin!)}`, sight)
      : []),
    ...(right > reach ? nameSpan('field', reach + APART, right, top, words.field, reach) : []),
    ...sizes.map((said, line) =>
      text(`size ${line + 1}`, 'text', left, bottom + LETTERS * (1 + 1.8 * line), said, LETTERS, 'start'),
    ),
  ];
}

/** A bracket over a part, and its name over the middle from where the part begins. */
function nameSpan(part: string, from: number, to: number, y: number, said: string, begins: number = from): Item[] {
  const bracket = polygon(
    [
      [from, y + 2],
      [from, y],
      [to, y],
      [to, y + 2],
    ],
    false,
  );
  return [
    path(`${part} bracket`, 'dimension', [bracket]),
    text(`${part} name`, 'text', (begins + to) / 2, y - 1.5, said, LETTERS, 'middle'),
  ];
}
