import type { CutReport, Report } from '@fielded/core';
import { readLoops } from '@fielded/geometry';
import type { Figure, Tone } from '../dimension/figure.ts';
import { safeText } from '../text/safe-text.ts';
import { figureText, otherUnitText, spokenLength } from '../words/lengths.ts';
import type { InBothUnits } from '../words/units-choice.ts';

/** A figure of the report ready to be dimensioned. */
export function figure(
  report: Report & InBothUnits,
  of: string,
  value: number,
  word: string,
  label: string,
  tone: Tone = 'plain',
): Figure {
  const { text, under } = figureText(value, report.units);
  return {
    key: of,
    of,
    value,
    text,
    under: report.bothUnits ? otherUnitText(value, report.units) : under,
    word,
    label: `${label}: ${spokenLength(value, report.units)}`,
    tone,
  };
}

/** The depth that is drawn: the spindle's setting, or what it came to on stock off its nominal thickness. */
export function depthFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  const name = safeText(cut.name);
  if (Math.abs(cut.depthCut - cut.depth) < 1e-9)
    return figure(report, `cuts[${index}].depth`, cut.depth, 'deep', `Depth of ${name}`);
  return figure(report, `section.cuts[${index}].depthCut`, cut.depthCut, 'deep', `Depth cut by ${name} on this stock`);
}

export function reachFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  return figure(report, `cuts[${index}].reach`, cut.reach, 'reach', `Reach of ${safeText(cut.name)}`);
}

export function landFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  return figure(report, `cuts[${index}].profile.land`, cut.land, 'land', `Land of ${safeText(cut.name)}`);
}

export function shoulderFigure(report: Report, index: number): Figure {
  const cut = report.section.cuts[index]!;
  return figure(
    report,
    `cuts[${index}].profile.shoulder`,
    cut.shoulder,
    'shoulder',
    `Shoulder of ${safeText(cut.name)}`,
  );
}

export function stockFigure(report: Report): Figure {
  const { thickness, measured } = report.panel;
  if (Math.abs(thickness - measured) < 1e-9)
    return figure(report, 'panel.thickness', thickness, 'stock', 'Thickness of the stock');
  return figure(report, 'panel.measured', measured, 'stock as measured', 'Thickness of the stock as measured');
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
