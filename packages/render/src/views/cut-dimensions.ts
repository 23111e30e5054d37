import type { CutReport, Report, Speaker } from '@fielded/core';
import { readLoops } from '@fielded/geometry';
import type { Figure, Tone } from '../dimension/figure.ts';
import { safeText } from '../text/safe-text.ts';
import { EDGE_WORDS, sayEdge } from '../words/english/edge.ts';
import { figureText, type InVoice, otherUnitText } from '../words/lengths.ts';
import type { InBothUnits } from '../words/units-choice.ts';

/** The names of the figures that a list of words has a label for. */
type NameIn<S> = { [K in keyof S]: K extends `label.${infer N}` ? N : never }[keyof S];

/** What a figure's label names beside its length, and how much attention it asks for. */
interface FigureOptions {
  readonly cut?: string;
  readonly door?: string;
  readonly slope?: number;
  readonly tone?: Tone;
}

/** Makes the figure of a value in mm, `of` a place of the report, ready to be dimensioned, with the word and the label of a name. */
export type MakeFigure<S> = (
  voice: InVoice & InBothUnits,
  of: string,
  value: number,
  name: NameIn<S>,
  options?: FigureOptions,
) => Figure;

/** Makes figures with the words of a list: `mark.NAME` beside the figure, if there is one, and the whole of it as `label.NAME`. */
export function createFigures<S extends Readonly<Record<string, string>>>(
  english: S,
  say: Speaker<S>['say'],
): MakeFigure<S> {
  // A name's figures are not seen by the types; a sentence says which it lacks.
  const speak = say as (key: string, figures: object, voice: InVoice) => string;
  return (voice, of, value, name, { tone = 'plain', ...named } = {}) => {
    const { text, under } = figureText(value, voice);
    return {
      key: of,
      of,
      value,
      text,
      under: voice.bothUnits ? otherUnitText(value, voice) : under,
      word: Object.hasOwn(english, `mark.${name}`) ? speak(`mark.${name}`, {}, voice) : '',
      label: speak(`label.${name}`, { ...named, mm: value }, voice),
      tone,
    };
  };
}

/** A figure of a section or a joint. */
export const figure: MakeFigure<typeof EDGE_WORDS> = createFigures(EDGE_WORDS, sayEdge);

/** The depth that is drawn: the spindle's setting, or what it came to on stock off its nominal thickness. */
export function depthFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  const named = { cut: safeText(cut.name) };
  if (Math.abs(cut.depthCut - cut.depth) < 1e-9)
    return figure(report, `cuts[${index}].depth`, cut.depth, 'depth', named);
  return figure(report, `section.cuts[${index}].depthCut`, cut.depthCut, 'depthCut', named);
}

/** The place of the size that says how far in a cut reaches. */
export function reachOf(index: number): string {
  return `cuts[${index}].reach`;
}

/** How far in a cut reaches. */
export function reachFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  return figure(report, reachOf(index), cut.reach, 'reach', { cut: safeText(cut.name) });
}

/** The flat that a cut has at its full depth. */
export function landFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  return figure(report, `cuts[${index}].profile.land`, cut.land, 'land', { cut: safeText(cut.name) });
}

/** The upright step that a cut has at the field. */
export function shoulderFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  return figure(report, `cuts[${index}].profile.shoulder`, cut.shoulder, 'shoulder', { cut: safeText(cut.name) });
}

/** The stock's thickness: nominal, or as measured where that differs. */
export function stockFigure(report: Report): Figure {
  const { thickness, measured } = report.panel;
  if (Math.abs(thickness - measured) < 1e-9) return figure(report, 'panel.thickness', thickness, 'stock');
  return figure(report, 'panel.measured', measured, 'measured');
}

/** How far in, wood mm, a drawn profile still lies at its full depth. */
export function fullDepthEnd(cut: CutReport, thickness: number): number {
  const level = cut.side === 'front' ? cut.depthCut : thickness - cut.depthCut;
  let end = 0;
  for (const loop of readLoops(cut.drawn)) {
    for (const curve of loop.curves) {
      if (Math.abs(curve.y0 - level) < 1e-6) end = Math.max(end, curve.x0);
      if (Math.abs(curve.y1 - level) < 1e-6) end = Math.max(end, curve.x1);
    }
  }
  return end;
}
