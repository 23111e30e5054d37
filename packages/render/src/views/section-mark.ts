import type { DoorReport, Report } from '@fielded/core';
import { arrowhead } from '../dimension/arrow.ts';
import { stroke } from '../geometry/stroke.ts';
import type { Item } from '../scene.ts';
import { group, path, text } from '../scene.ts';

/** How far the letter and its arrow stand above the line, mm. */
const LETTER_ABOVE = 7;

/**
 * The section line A–A across a stile and the panel's edge: a chain line with thick ends, arrows the way one looks, and its
 * letter. One looks up: then the front face lies above and the stile at the left, as the joint is drawn.
 */
export function sectionMark(report: Report, door: DoorReport, s: number): { item: Item; left: number; right: number } {
  const y = (door.topRail + door.opening.height * 0.62) * s;
  const left = -7;
  // Short, across the stile and the raise, where there is room for its letter within the panel; else across the whole door.
  const sight = door.stile * s;
  const margin = report.fit.visibleMargin ?? 10;
  const short = sight + (margin + 12) * s + 4;
  const wide = short - 8 > sight && short + 6 < sight + (door.opening.width - Math.max(0, margin)) * s;
  const tall = (door.opening.height * 0.62 - Math.max(0, margin)) * s > LETTER_ABOVE;
  const fits = wide && tall;
  const right = fits ? short : door.width * s + 7;
  const end = (key: string, x: number, way: number): Item =>
    group(key, [
      path('end', 'outline', [stroke(x, y, x + way * 4, y)]),
      path('look', 'arrow', [arrowhead({ x, y: y - 5.5, dx: 0, dy: -1 })]),
      path('stem', 'thin', [stroke(x, y, x, y - 2.2)]),
      text('letter', 'text', x - way * 1.6, y - 1.4, 'A', 3.5, way > 0 ? 'end' : 'start'),
    ]);
  const line = path('line', 'cutter', [stroke(left + 4, y, right - 4, y)]);
  return { item: group('section A', [line, end('left', left, 1), end('right', right, -1)]), left: left - 5, right };
}
