import type { Report } from '@fielded/core';
import type { Item } from '../scene.ts';
import { sketchDoor } from '../views/door.ts';

/** A door from the front as a client sees it: no sizes, no marks. `scale` is paper mm for a mm of wood; `door` counts from 0. */
export function drawElevation(report: Report, scale: number, door: number): Item[] {
  return sketchDoor(report, scale, door).items.filter(({ key }) => !key.startsWith('section'));
}
