import type { SeasonState } from '@fielded/core';
import { group, type Item, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';
import { type InVoice, spokenNumber } from '../words/lengths.ts';
import { type Axis, chartStroke, FIGURE_HEIGHT, inUnit, unitName } from './chart.ts';
import { placeFigures } from './free-place.ts';

/** A state that the job gives, with the key of its mark and what it is called. */
export type NamedState = SeasonState & { readonly key: string; readonly name: string };

/** A small upright stroke at each state, and its figure where it is clear of the lines. */
export function stateMarks(
  states: readonly NamedState[],
  points: readonly (readonly [number, number])[],
  levels: readonly number[],
  { width, height }: { readonly width: number; readonly height: number },
  figure: (state: NamedState) => string,
  beside: readonly Item[] = [],
): Item[] {
  const marks = states.map(({ key }, i) => {
    const [px, py] = points[i]!;
    return { key: `mark ${key}`, from: [px, py - 1.2] as const, to: [px, py + 1.2] as const };
  });
  const lines = [
    ...marks,
    ...levels.map((y) => ({ from: [0, y] as const, to: [width, y] as const })),
    ...points.slice(1).map((to, i) => ({ from: points[i]!, to })),
  ];
  const figures = states.map((state, i) => ({ at: points[i]!, words: figure(state) }));
  return [
    ...marks.map(({ key, from, to }) => chartStroke(key, 'judged', ...from, ...to)),
    ...placeFigures('state', figures, lines, { x0: 0.5, y0: -1, x1: width + 20, y1: height - 0.5 }, beside),
  ];
}

/** A figure in the unit of the axis beside it. */
export function sayFigure(mm: number, voice: InVoice): string {
  const { units } = voice;
  return `${spokenNumber(inUnit(mm, units), units === 'mm' ? 2 : 4, voice)} ${unitName(units)}`;
}

/** The states' names over the places of their moistures; one too near the last to be read is left out. */
export function stateNames(states: readonly NamedState[], x: Axis, y: number): Item {
  let free = Number.NEGATIVE_INFINITY;
  return group(
    'names',
    states.flatMap(({ key, name, moisture }) => {
      const middle = x.scale(moisture);
      const half = textWidth(name, FIGURE_HEIGHT) / 2;
      if (middle - half < free) return [];
      free = middle + half + 2;
      return [text(key, 'text', middle, y, name, FIGURE_HEIGHT, 'middle')];
    }),
  );
}
