import type { Item } from '../scene.ts';
import { itemsBox } from '../scene.ts';
import { breakSketch } from './break-sketch.ts';
import { layDimensions } from './lay-dimensions.ts';
import type { Sketch } from './sketch.ts';

/** Room on the paper, mm. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** Lays out a sketch so that it fits the room at its own scale: where it is too wide or too high it is broken, not shrunk, as far as that goes. */
export function layWithin(sketch: Sketch, room: Room | null): Item[] {
  let current = sketch;
  let items = layDimensions(current);
  if (!room) return items;
  for (let round = 0; round < 12; round += 1) {
    const box = itemsBox(items)!;
    const wide = box.x1 - box.x0 - room.width;
    const high = box.y1 - box.y0 - room.height;
    if (wide <= 0 && high <= 0) break;
    const broken = wide > 0 ? breakSketch(current, 'x', wide + 0.5) : breakSketch(current, 'y', high + 0.5);
    if (broken === current) break;
    current = broken;
    items = layDimensions(current);
  }
  return items;
}
