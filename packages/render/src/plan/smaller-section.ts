import { placeLoops } from '@fielded/geometry';
import { type Item, itemsBox } from '../scene.ts';

/** At a smaller scale head and stock can hardly be told apart. */
export const LEAST_SCALE = 0.25;

/** How much smaller a section is drawn, letters and all, where it would else be no more than a mark. */
const SMALLER = [1, 0.8, 0.64];

/** The section in a low room: as large as it can be said to be one. */
export function drawSmaller(
  draw: (room: number, by: number) => { readonly items: readonly Item[]; readonly scale: number },
  room: number,
): { readonly items: readonly Item[]; readonly scale: number } {
  let drawn: { items: readonly Item[]; scale: number } | undefined;
  for (const by of SMALLER) {
    const { items, scale } = draw(room, by);
    drawn = { items: shrinkItems(items, by), scale: scale * by };
    if (scale >= LEAST_SCALE && !isTall(drawn.items, room)) break;
  }
  return drawn!;
}

/** Whether items are higher than a room. */
export function isTall(items: readonly Item[], room: number): boolean {
  const box = itemsBox(items)!;
  return box.y1 - box.y0 > room;
}

/** Items smaller by a factor, letters and all, about the paper's corner. */
function shrinkItems(items: readonly Item[], by: number): Item[] {
  return items.map((item) => {
    if (item.kind === 'group') return { ...item, items: shrinkItems(item.items, by) };
    if (item.kind === 'path') return { ...item, loops: placeLoops(item.loops, { scale: by, x: 0, y: 0 }) };
    const placed = { ...item, x: by * item.x, y: by * item.y, height: by * item.height };
    return placed.kind === 'image' ? { ...placed, width: by * placed.width } : placed;
  });
}
