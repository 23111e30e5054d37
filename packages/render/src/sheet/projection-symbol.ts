import { polygon } from '@fielded/geometry';
import { ring } from '../geometry/circle.ts';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path } from '../scene.ts';

export const SYMBOL_WIDTH = 9;

/**
 * The symbol of first-angle projection (ISO 5456-2): a truncated cone from the side and, at its right, as seen from its
 * small end. (x, y) is its left end on the middle line; it is 9 mm wide and 4 mm high.
 */
export function projectionSymbol(x: number, y: number): Item[] {
  const cone = polygon([
    [x, y - 1],
    [x + 4, y - 2],
    [x + 4, y + 2],
    [x, y + 1],
  ]);
  const eye = x + 7;
  return [
    path('projection', 'fine', [cone, ring(eye, y, 2), ring(eye, y, 1)]),
    path('projection axes', 'cutter', [stroke(x - 0.8, y, x + 9.6, y), stroke(eye, y - 2.6, eye, y + 2.6)]),
  ];
}
