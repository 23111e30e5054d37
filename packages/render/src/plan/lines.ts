import { type Loop, rectangle } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path, text } from '../scene.ts';
import { breakLines } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';

const HEADING = 2.8;
/** Height of small letters and step of their lines, mm. */
export const SMALL = 2.5;
export const LINE = 3.9;

/** Height of a text's capitals and step of its lines, mm. */
export interface Lettering {
  readonly height: number;
  readonly step: number;
}

export const NORMAL: Lettering = { height: SMALL, step: LINE };
/** For texts that would otherwise leave a picture no room. */
export const TIGHT: Lettering = { height: 2, step: 3.1 };

/** A heading over a part of the sheet, and a thin line under it. */
export function heading(key: string, words: string, x: number, y: number, width: number): Item[] {
  return [
    text(`${key} heading`, 'text', x, y + HEADING, words, HEADING),
    path(`${key} rule`, 'thin', [stroke(x, y + HEADING + 1.6, x + width, y + HEADING + 1.6)]),
  ];
}

/** From the top of a heading to the first base line under it. */
export const UNDER_HEADING: number = HEADING + 1.6 + 4.2;

/** Texts under each other, broken into lines no wider than `width`, with a mark before each; `y` is the base line after the last. */
export function listTexts(
  key: string,
  texts: readonly string[],
  place: { readonly x: number; readonly y: number; readonly width: number },
  mark: 'box' | 'dash' | 'none',
  { height, step }: Lettering = NORMAL,
): { readonly items: Item[]; readonly y: number } {
  const items: Item[] = [];
  const inset = mark === 'none' ? 0 : 4.2;
  let y = place.y;
  texts.forEach((words, k) => {
    if (mark === 'box') items.push(path(`${key} box ${k}`, 'fine', [square(place.x, y - height, height)]));
    if (mark === 'dash') items.push(text(`${key} dash ${k}`, 'text', place.x, y, '–', height));
    for (const [n, line] of breakLines(safeText(words), height, place.width - inset).entries()) {
      items.push(text(`${key} ${k} ${n}`, 'text', place.x + inset, y, line, height));
      y += step;
    }
  });
  return { items, y };
}

function square(x: number, y: number, side: number): Loop {
  return rectangle({ x0: x, y0: y, x1: x + side, y1: y + side });
}
