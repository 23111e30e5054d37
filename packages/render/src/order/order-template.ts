import type { KnifeReport } from '@fielded/core';
import { type Box, type Loop, loopsBox, type Placing, placeLoops } from '@fielded/geometry';
import { layDimensions } from '../dimension/lay-dimensions.ts';
import { stroke } from '../geometry/stroke.ts';
import { group, type Item, itemsBox, moveItems, path, type Role, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';
import { sketchKnife } from '../views/knife.ts';
import type { KnifeDrawing } from '../views/knife-drawing.ts';
import { type LaidKnife, layKnife } from '../views/steel.ts';
import { sayKnife } from '../words/english/knife.ts';
import { type InVoice, scaleText } from '../words/lengths.ts';
import { reliefWalls } from '../words/relief.ts';

type Part = 'knife' | 'limiter';
type KnifeKey = 'key.grind.knife' | 'key.grind.limiter' | 'key.not-ground' | 'key.limiter' | 'key.edge' | 'key.tip';

const WORDS = 2.5;
const ENLARGED = [10, 5, 4, 3, 2] as const;
/** How far the tip line stands out beyond what is enlarged, paper mm. */
const TIP_LINE = 4;

/** The template at full size with its sizes, its top left corner at (x, y). */
export function drawTemplate(
  knife: KnifeReport,
  order: Pick<KnifeDrawing, 'units' | 'language' | 'title'>,
  part: Part,
  x: number,
  y: number,
): { item: Item; box: Box } {
  const items = layDimensions(sketchKnife({ ...order, knife, part }, layKnife(knife)));
  const box = itemsBox(items)!;
  const caption = text('full size', 'quiet', x, y + 2.5, '1:1', WORDS);
  const moved = moveItems(items, x - box.x0, y + 5 - box.y0);
  return {
    item: group('template', [caption, ...moved]),
    box: { x0: x, y0: y, x1: x + box.x1 - box.x0, y1: y + 5 + box.y1 - box.y0 },
  };
}

/** The outline enlarged to the largest usual scale that the room takes, with the walls for side relief by letter; nothing where none fits. */
export function drawEnlarged(
  knife: KnifeReport,
  part: Part,
  room: Box,
  voice: InVoice,
): { items: Item[]; scale: number } | null {
  const laid = layKnife(knife);
  const main = part === 'knife' ? laid.knife : laid.limiter;
  const all = [...main, ...(part === 'knife' ? laid.wood : laid.knife)];
  const box = loopsBox(all)!;
  const [width, height] = [room.x1 - room.x0 - 16, room.y1 - room.y0 - 12];
  const scale = ENLARGED.find((s) => s * (box.x1 - box.x0) <= width && s * (box.y1 - box.y0) <= height);
  if (scale === undefined) return null;
  const placing: Placing = { scale, x: room.x0 + 8 - scale * box.x0, y: room.y0 + 8 - scale * box.y0 };
  const place = (loops: readonly Loop[]) => placeLoops(loops, placing);
  const tip = place([stroke(box.x0 - TIP_LINE / scale, 0, box.x1 + TIP_LINE / scale, 0)]);
  return {
    scale,
    items: [
      text('scale', 'quiet', room.x0, room.y0 + 2.5, scaleText(scale, voice), WORDS),
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
    // Not on the tip line, where a wall ends there.
    const at = { x: x + scale * way * s + way * 3.5, y: Math.min(y - scale * t + 1, y - 1) };
    return text(`wall ${letter}`, 'text', at.x, at.y, letter, 3, 'middle');
  });
}

/** The key of lines from (x, y), in two columns, and its height, mm. */
export function drawLineKey(
  knife: KnifeReport,
  part: Part,
  x: number,
  y: number,
  voice: InVoice,
): { items: Item[]; height: number } {
  const mine = part === 'knife' ? 'edge of the steel: grind to this' : 'edge of the limiter: grind to this';
  const other = part === 'knife' ? 'limiter' : "knife's edge";
  const entries: { key: string; words: KnifeKey; role: Role }[] = [
    { key: mine, words: `key.grind.${part}`, role: 'outline' },
    { key: 'profile in the wood: do not grind', words: 'key.not-ground', role: 'old' },
    ...(knife.limiter
      ? [{ key: other, words: part === 'knife' ? 'key.limiter' : 'key.edge', role: 'hidden' } as const]
      : []),
    { key: 'tip line', words: 'key.tip', role: 'cutter' },
  ];
  const said = entries.map(({ words }) => sayKnife(words, {}, voice));
  const column = Math.max(KEY_COLUMN, ...said.map((words) => 11 + textWidth(words, WORDS) + 4));
  const items = entries.flatMap(({ key, role }, i): Item[] => {
    const words = said[i]!;
    const [left, base] = [x + (i % 2) * column, y + Math.floor(i / 2) * KEY_ROW];
    const sample = stroke(left, base - 1, left + 9, base - 1);
    return [path(`key ${key}`, role, [sample]), text(`key to ${key}`, 'text', left + 11, base, words, WORDS)];
  });
  return { items, height: Math.ceil(entries.length / 2) * KEY_ROW };
}

const KEY_COLUMN = 80;
const KEY_ROW = 4.6;
