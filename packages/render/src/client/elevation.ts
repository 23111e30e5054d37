import type { Report } from '@fielded/core';
import { polygon } from '@fielded/geometry';
import { type Item, path, text } from '../scene.ts';
import { sketchDoor } from '../views/door.ts';

/** A door from the front as a client sees it: no sizes, no marks. `scale` is paper mm for a mm of wood; `door` counts from 0. */
export function drawElevation(report: Report, scale: number, door: number): Item[] {
  return sketchDoor(report, scale, door).items.filter(({ key }) => !key.startsWith('section'));
}

/** Height of a size's capitals, and how far its line lies off the door, mm. */
const LETTERS = 1.8;
const AWAY = 2.2;
/** Half of the tick at each end of a line. */
const TICK = 0.9;

/** The elevation with the door's width under it and its height beside it; `say` writes a size in mm out. */
export function drawSizedElevation(report: Report, scale: number, door: number, say: (mm: number) => string): Item[] {
  const { width, height } = report.doors![door]!;
  const [right, bottom] = [width * scale, height * scale];
  const [below, beside] = [bottom + AWAY, -AWAY];
  const line = (...points: [number, number][]) => polygon(points, false);
  return [
    ...drawElevation(report, scale, door),
    path('size lines', 'dimension', [
      line([0, below], [right, below]),
      line([0, below - TICK], [0, below + TICK]),
      line([right, below - TICK], [right, below + TICK]),
      line([beside, 0], [beside, bottom]),
      line([beside - TICK, 0], [beside + TICK, 0]),
      line([beside - TICK, bottom], [beside + TICK, bottom]),
    ]),
    text('width', 'text', right / 2, below + 1.2 + LETTERS, say(width), LETTERS, 'middle'),
    text('height', 'text', beside - 1.2, bottom / 2, say(height), LETTERS, 'middle', true),
  ];
}
