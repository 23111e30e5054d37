import { type Box, boxesOverlap, lineMeetsBox } from '@fielded/geometry';
import { type Item, text, textBox } from '../scene.ts';
import { FIGURE_HEIGHT } from './chart.ts';

type Point = readonly [x: number, y: number];

/** A straight line that words must not lie over. */
export interface Stroke {
  readonly from: Point;
  readonly to: Point;
}

/** From a point to the words about it, paper mm. */
const ASIDE = 1.8;
const CLEAR = 2.4;

/**
 * Puts figures by their points so that each is clear of every line and of each other: below, above, or to a side of its
 * point, whichever is free first. A figure that is clear nowhere is left out: the sentences under a chart say it.
 *
 * `within` bounds them, paper mm; words among the items `beside` them are kept clear of too. Keys are made of `key` and the figure's place in the list.
 */
export function placeFigures(
  key: string,
  figures: readonly { readonly at: Point; readonly words: string }[],
  lines: readonly Stroke[],
  within: Box,
  beside: readonly Item[] = [],
): Item[] {
  const taken: Box[] = beside.flatMap((item) => (item.kind === 'text' ? [textBox(item)] : []));
  return figures.flatMap(({ at, words }, i) => {
    for (const [x, y, anchor] of placesAbout(at)) {
      const item = text(`${key} ${i}`, 'judged-text', x, y, words, FIGURE_HEIGHT, anchor);
      const box = textBox(item);
      const inside = box.x0 >= within.x0 && box.x1 <= within.x1 && box.y0 >= within.y0 && box.y1 <= within.y1;
      if (!inside || taken.some((other) => boxesOverlap(box, other))) continue;
      if (lines.some(({ from, to }) => lineMeetsBox(...from, ...to, box))) continue;
      taken.push(box);
      return [item];
    }
    return [];
  });
}

function placesAbout([x, y]: Point): (readonly [number, number, 'start' | 'middle' | 'end'])[] {
  const below = y + CLEAR + FIGURE_HEIGHT;
  const above = y - CLEAR;
  const level = y + FIGURE_HEIGHT / 2;
  return [
    [x, below, 'middle'],
    [x, above, 'middle'],
    [x + ASIDE, below, 'start'],
    [x - ASIDE, above, 'end'],
    [x + ASIDE, above, 'start'],
    [x - ASIDE, below, 'end'],
    [x + ASIDE, level, 'start'],
    [x - ASIDE, level, 'end'],
  ];
}
