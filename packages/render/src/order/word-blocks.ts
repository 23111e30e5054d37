// The words of an order in blocks, which go on a further sheet where one is full.
import { type Item, moveItems, text } from '../scene.ts';
import { textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayKnife } from '../words/english/knife.ts';
import { sayNote } from '../words/english/note.ts';
import type { InVoice } from '../words/lengths.ts';
import { ORDER_PAPER } from './order-frame.ts';
import type { SheetStart } from './order-tables.ts';
import type { OrderLine } from './order-words.ts';

const WORDS = 2.5;
const LINE = 4.3;

/** Lines of words that stay together, the first with its baseline at y 0. */
export interface WordBlock {
  readonly items: readonly Item[];
  readonly height: number;
}

/** The order's list, each line marked that has to be confirmed. */
export function lineBlocks(voice: InVoice, lines: readonly OrderLine[], x: number, room: number): WordBlock[] {
  const column = Math.max(...lines.map(({ what }) => textWidth(what, WORDS))) + 4;
  return lines.map(({ key, what, wanted, confirm = false }) => {
    const words = wrapText(confirm ? sayKnife('order.confirm', { wanted }, voice) : wanted, WORDS, room - column);
    const role = confirm ? 'trouble-text' : 'text';
    return {
      items: [
        text(`line ${key}`, 'quiet', x, 0, what, WORDS),
        ...words.map((part, i) => text(`${key} ${i}`, role, x + column, i * LINE, part, WORDS)),
      ],
      height: words.length * LINE,
    };
  });
}

/** What stands against what is ordered, in the colour of trouble, over the list. */
export function errorBlocks(
  voice: InVoice,
  errors: readonly { readonly message: string }[],
  x: number,
  room: number,
): WordBlock[] {
  const words = errors.map(({ message }) => sayNote('error.line', { message: safeText(message) }, voice));
  return words.map((error, i) => {
    const block = wordBlock(`error ${i}`, error, 'trouble-text', x, 0, room);
    return i < words.length - 1 ? block : { ...block, height: block.height + 1.5 };
  });
}

/** Notes below the list, a little apart from it. */
export function noteBlocks(notes: readonly string[], x: number, room: number): WordBlock[] {
  return notes.map((note, i) => wordBlock(`note ${i}`, note, 'text', x, i === 0 ? 1 : 0, room));
}

/** Words in lines no wider than `room`, mm, `above` below what stands over them. */
function wordBlock(
  key: string,
  words: string,
  role: 'text' | 'trouble-text',
  x: number,
  above: number,
  room: number,
): WordBlock {
  const lines = wrapText(words, WORDS, room);
  return {
    items: lines.map((line, k) => text(`${key} ${k}`, role, x, above + k * LINE, line, WORDS)),
    height: above + lines.length * LINE,
  };
}

export function heightOf(blocks: readonly WordBlock[]): number {
  return blocks.reduce((sum, { height }) => sum + height, 0);
}

export function placeBlocks(blocks: readonly WordBlock[], y: number): Item[] {
  let at = y;
  return blocks.flatMap(({ items, height }) => {
    const placed = moveItems(items, 0, at);
    at += height;
    return placed;
  });
}

/** Blocks below what stands on the first sheet, on as many more as they take: no last line stands below `bottom`. */
export function stackBlocks(blocks: readonly WordBlock[], start: SheetStart, bottom: number): Item[][] {
  const sheets = [[...start.items]];
  let { y } = start;
  for (const block of blocks) {
    if (y + block.height - LINE > bottom) {
      sheets.push([]);
      y = ORDER_PAPER.margin + 16;
    }
    sheets.at(-1)!.push(...moveItems(block.items, 0, y));
    y += block.height;
  }
  return sheets;
}
