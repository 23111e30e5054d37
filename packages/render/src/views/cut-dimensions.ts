import type { CutReport, Report, Speaker } from '@fielded/core';
import { readLoops } from '@fielded/geometry';
import type { Figure, Tone } from '../dimension/figure.ts';
import { safeText } from '../text/safe-text.ts';
import { EDGE_WORDS, sayEdge } from '../words/english/edge.ts';
import { figureText, otherUnitText } from '../words/lengths.ts';
import type { InBothUnits } from '../words/units-choice.ts';

/** The names of the figures that a room has words for. */
type NameIn<S> = { [K in keyof S]: K extends `label.${infer N}` ? N : never }[keyof S];

/** What a figure's label names beside its length, and how much attention it asks for. */
interface FigureOptions {
  readonly cut?: string;
  readonly door?: string;
  readonly slope?: number;
  readonly tone?: Tone;
}

/** Makes a figure of the report, `of` a value of it in mm, ready to be dimensioned, with the word and the label of a name. */
export type MakeFigure<S> = (
  report: Report & InBothUnits,
  of: string,
  value: number,
  name: NameIn<S>,
  options?: FigureOptions,
) => Figure;

/** Makes figures with the words of a room: `mark.NAME` beside the figure, if there is one, and the whole of it as `label.NAME`. */
export function createFigures<S extends Readonly<Record<string, string>>>(
  english: S,
  say: Speaker<S>['say'],
): MakeFigure<S> {
  // A name's figures are not seen by the types; a sentence says which it lacks.
  const speak = say as (key: string, figures: object, voice: Report) => string;
  return (report, of, value, name, { tone = 'plain', ...named } = {}) => {
    const { text, under } = figureText(value, report);
    return {
      key: of,
      of,
      value,
      text,
      under: report.bothUnits ? otherUnitText(value, report) : under,
      word: Object.hasOwn(english, `mark.${name}`) ? speak(`mark.${name}`, {}, report) : '',
      label: speak(`label.${name}`, { ...named, mm: value }, report),
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

export function reachFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  return figure(report, `cuts[${index}].reach`, cut.reach, 'reach', { cut: safeText(cut.name) });
}

export function landFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  return figure(report, `cuts[${index}].profile.land`, cut.land, 'land', { cut: safeText(cut.name) });
}

export function shoulderFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  return figure(report, `cuts[${index}].profile.shoulder`, cut.shoulder, 'shoulder', { cut: safeText(cut.name) });
}

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
