import { type Box, growBox, joinBoxes, type Loop, loopsBox, placeLoops } from '@fielded/geometry';
import { textReach, textWidth } from './text/measure-text.ts';

/** What an item is on the drawing; `style.ts` says how each looks. */
export type Role =
  | 'paper'
  | 'wood'
  | 'removed'
  | 'old'
  | 'outline'
  | 'fine'
  | 'thin'
  | 'break'
  | 'hidden'
  | 'cutter'
  | 'hatch'
  | 'hatch-frame'
  | 'grain'
  | 'judged'
  | 'judged-thin'
  | 'judged-fill'
  | 'trouble'
  | 'trouble-thin'
  | 'trouble-fill'
  | 'dimension'
  | 'arrow'
  | 'text'
  | 'quiet'
  | 'judged-text'
  | 'trouble-text'
  | 'tone-1'
  | 'tone-2'
  | 'tone-3'
  | 'tone-4'
  | 'tone-5'
  | 'tone-6'
  | 'tone-7'
  | 'tone-8'
  | 'tone-cut';

/** Lines and arcs, paper mm. */
export interface PathItem {
  readonly kind: 'path';
  readonly key: string;
  readonly role: Role;
  readonly loops: readonly Loop[];
}

/** One line of text standing on its baseline at (x, y). `height` is that of a capital, mm; `upright` reads from the right. */
export interface TextItem {
  readonly kind: 'text';
  readonly key: string;
  readonly role: Role;
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly height: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly upright: boolean;
}

/** Items that belong together. A dimension also says which value it shows, in mm or degrees, and in words what it is. */
export interface GroupItem {
  readonly kind: 'group';
  readonly key: string;
  /** Path of the value shown: in the job, such as `cuts[0].depth`, or in the report, such as `fit.clearance`. */
  readonly of?: string;
  readonly value?: number;
  readonly label?: string;
  readonly items: readonly Item[];
}

/** A picture of pixels, such as a shop's logo: a PNG file's bytes, filling its place. */
export interface ImageItem {
  readonly kind: 'image';
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly png: Uint8Array;
  /** What it shows, for readers who cannot see it. */
  readonly alt: string;
}

export type Item = PathItem | TextItem | GroupItem | ImageItem;

/** A finished drawing as plain data: paper mm, x right, y down, (0, 0) at the top left. Keys of siblings differ. */
export interface Scene {
  readonly width: number;
  readonly height: number;
  /** Paper mm for one mm of wood. */
  readonly scale: number;
  readonly title: string;
  readonly description: string;
  /** `words` where its texts are there to be read in order, as in a document; else it is a drawing, and `description` stands for it. */
  readonly reads?: 'words';
  readonly items: readonly Item[];
}

/** A path item. */
export function path(key: string, role: Role, loops: readonly Loop[]): PathItem {
  return { kind: 'path', key, role, loops };
}

/** A group of items. */
export function group(key: string, items: readonly Item[]): GroupItem {
  return { kind: 'group', key, items };
}

/** A text item that starts at (x, y) unless told otherwise. */
export function text(
  key: string,
  role: Role,
  x: number,
  y: number,
  words: string,
  height: number,
  anchor: TextItem['anchor'] = 'start',
  upright = false,
): TextItem {
  return { kind: 'text', key, role, x, y, text: words, height, anchor, upright };
}

/** The box that a text takes up, by the shipped advance widths. */
export function textBox(item: TextItem): Box {
  const width = textWidth(item.text, item.height);
  const { above, below } = textReach(item.text, item.height);
  const before = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? width / 2 : width;
  return item.upright
    ? { x0: item.x - above, x1: item.x + below, y0: item.y - (width - before), y1: item.y + before }
    : { x0: item.x - before, x1: item.x - before + width, y0: item.y - above, y1: item.y + below };
}

/** The box round items; null round none. */
export function itemsBox(items: readonly Item[]): Box | null {
  const boxes: Box[] = [];
  for (const item of items) {
    const box = itemBox(item);
    if (box !== null) boxes.push(box);
  }
  return joinBoxes(boxes);
}

function itemBox(item: Item): Box | null {
  if (item.kind === 'group') return itemsBox(item.items);
  if (item.kind === 'text') return textBox(item);
  if (item.kind === 'image') return { x0: item.x, y0: item.y, x1: item.x + item.width, y1: item.y + item.height };
  const box = loopsBox(item.loops);
  return box && growBox(box, 0.25);
}

/** Items moved on the paper. */
export function moveItems(items: readonly Item[], x: number, y: number): Item[] {
  return items.map((item) => {
    if (item.kind === 'group') return { ...item, items: moveItems(item.items, x, y) };
    if (item.kind === 'text' || item.kind === 'image') return { ...item, x: item.x + x, y: item.y + y };
    return { ...item, loops: placeLoops(item.loops, { scale: 1, x, y }) };
  });
}

/** Items on paper just large enough for them; there must be some to see. */
export function sceneAround(title: string, items: readonly Item[]): Scene {
  const box = itemsBox(items)!;
  const edge = 0.5;
  return {
    width: box.x1 - box.x0 + 2 * edge,
    height: box.y1 - box.y0 + 2 * edge,
    scale: 1,
    title,
    description: title,
    items: moveItems(items, edge - box.x0, edge - box.y0),
  };
}
