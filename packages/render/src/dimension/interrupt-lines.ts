import { type Box, curvesOutside, growBox, joinCurves } from '@fielded/geometry';
import type { Item, Role } from '../scene.ts';
import { textBox } from '../scene.ts';

/** How far thin lines keep from a text that they are interrupted for, mm. */
const CLEAR: Readonly<Partial<Record<Role, number>>> = {
  hatch: 0.6,
  'hatch-frame': 0.6,
  grain: 0.6,
  cutter: 0.5,
  old: 0.5,
  hidden: 0.5,
  thin: 0.3,
  dimension: 0.2,
  'judged-thin': 0.2,
  'trouble-thin': 0.2,
};

/**
 * The same drawing with its thin lines interrupted where they would run through a text: hatching for words that stand on it
 * (ISO 128-3), extension and dimension lines where no way round was found. Outlines are never interrupted.
 */
export function interruptLines(items: readonly Item[]): Item[] {
  const texts = textBoxes(items);
  if (texts.length === 0) return [...items];
  const grown = new Map<number, Box[]>();
  const boxesAt = (clear: number): Box[] => {
    const boxes = grown.get(clear) ?? texts.map((box) => growBox(box, clear));
    grown.set(clear, boxes);
    return boxes;
  };
  return interruptAt(items, boxesAt);
}

/** `boxesAt` gives the texts' boxes, each grown by how far a line keeps from it. */
function interruptAt(items: readonly Item[], boxesAt: (clear: number) => readonly Box[]): Item[] {
  return items.map((item) => {
    if (item.kind === 'group') return { ...item, items: interruptAt(item.items, boxesAt) };
    const clear = item.kind === 'path' ? CLEAR[item.role] : undefined;
    if (item.kind !== 'path' || clear === undefined) return item;
    const boxes = boxesAt(clear);
    const loops = item.loops.flatMap((loop) => {
      const kept = curvesOutside(loop.curves, boxes);
      // What is met by no text stays as it is, closed or not.
      return kept === loop.curves ? [loop] : joinCurves(kept);
    });
    return { ...item, loops };
  });
}

function textBoxes(items: readonly Item[]): Box[] {
  return items.flatMap((item) =>
    item.kind === 'group' ? textBoxes(item.items) : item.kind === 'text' ? [textBox(item)] : [],
  );
}
