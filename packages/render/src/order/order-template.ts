import type { KnifeReport, Report } from '@fielded/core';
import { type Box, type Loop, loopsBox, type Placing, placeLoops } from '@fielded/geometry';
import { layDimensions } from '../dimension/lay-dimensions.ts';
import { stroke } from '../geometry/stroke.ts';
import { group, type Item, itemsBox, moveItems, path, type Role, text } from '../scene.ts';
import { sketchKnife } from '../views/knife.ts';
import { type LaidKnife, layKnife } from '../views/steel.ts';
import { scaleText } from '../words/lengths.ts';
import { reliefWalls } from '../words/relief.ts';

type Part = 'knife' | 'limiter';

const WORDS = 2.5;
const ENLARGED = [10, 5, 4, 3, 2] as const;

/** The template at full size with its sizes, its top left corner at (x, y). */
export function drawTemplate(
  knife: KnifeReport,
  units: Report['units'],
  title: string,
  part: Part,
  x: number,
  y: number,
): { item: Item; box: Box } {
  const items = layDimensions(sketchKnife({ knife, units, title, part }, layKnife(knife)));
  const box = itemsBox(items)!;
  const caption = text('full size', 'quiet', x, y + 2.5, '1:1', WORDS);
  const moved = moveItems(items, x - box.x0, y + 5 - box.y0);
  return {
    item: group('template', [caption, ...moved]),
    box: { x0: x, y0: y, x1: x + box.x1 - box.x0, y1: y + 5 + box.y1 - box.y0 },
  };
}

/** The outline enlarged to the largest usual scale that the room takes, with the walls for side relief by letter; nothing where none fits. */
export function drawEnlarged(knife: KnifeReport, part: Part, room: Box): { items: Item[]; scale: number } | null {
  const laid = layKnife(knife);
  const main = part === 'knife' ? laid.knife : laid.limiter;
  const all = [...main, ...(part === 'knife' ? laid.wood : laid.knife)];
  const box = loopsBox(all)!;
  const [width, height] = [room.x1 - room.x0 - 16, room.y1 - room.y0 - 12];
  const scale = ENLARGED.find((s) => s * (box.x1 - box.x0) <= width && s * (box.y1 - box.y0) <= height);
  if (scale === undefined) return null;
  const placing: Placing = { scale, x: room.x0 + 8 - scale * box.x0, y: room.y0 + 8 - scale * box.y0 };
  const place = (loops: readonly Loop[]) => placeLoops(loops, placing);
  const tip = place([stroke(box.x0 - 2, 0, box.x1 + 2, 0)]);
  return {
    scale,
    items: [
      text('scale', 'quiet', room.x0, room.y0 + 2.5, scaleText(scale), WORDS),
      path('tip line', 'cutter', tip),
      path(
        part === 'knife' ? 'wood' : 'knife edge',
        part === 'knife' ? 'old' : 'hidden',
        place(part === 'knife' ? laid.wood : laid.knife),
      ),
      path('edge', 'outline', place(main)),
      ...(part === 'knife' ? drawLetters(knife, laid, placing) : []),
    ],
  };
}

/** A letter beside each wall that side relief is ground on. */
function drawLetters(knife: KnifeReport, { way }: LaidKnife, { scale, x, y }: Placing): Item[] {
  return reliefWalls(knife).map(({ letter, onSteel: { from, to } }) => {
    const s = (from.s + to.s) / 2;
    const t = (from.t + to.t) / 2;
    // Outside the steel: beyond its deeper side, where walls square to the spindle stand.
    const at = { x: x + scale * way * s + way * 3.5, y: y - scale * t + 1 };
    return text(`wall ${letter}`, 'text', at.x, at.y, letter, 3, 'middle');
  });
}

/** What each kind of line is, from (x, y), in two columns; how high they are. */
export function drawLineKey(knife: KnifeReport, part: Part, x: number, y: number): { items: Item[]; height: number } {
  const mine = part === 'knife' ? 'edge of the steel: grind to this' : 'edge of the limiter: grind to this';
  const entries: { words: string; role: Role }[] = [
    { words: mine, role: 'outline' },
    { words: 'profile in the wood: do not grind', role: 'old' },
    ...(knife.limiter ? [{ words: part === 'knife' ? 'limiter' : "knife's edge", role: 'hidden' as const }] : []),
    { words: 'tip line', role: 'cutter' },
  ];
  const items = entries.flatMap(({ words, role }, i): Item[] => {
    const [left, base] = [x + (i % 2) * KEY_COLUMN, y + Math.floor(i / 2) * KEY_ROW];
    const sample = stroke(left, base - 1, left + 9, base - 1);
    return [path(`key ${words}`, role, [sample]), text(`key to ${words}`, 'text', left + 11, base, words, WORDS)];
  });
  return { items, height: Math.ceil(entries.length / 2) * KEY_ROW };
}

const KEY_COLUMN = 80;
const KEY_ROW = 4.6;
