import type { Box } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import type { Item } from '../scene.ts';
import { group, path, text } from '../scene.ts';
import { textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayKnife } from '../words/english/knife.ts';
import { unitsNote } from '../words/units-note.ts';
import { type KnifeDrawing, LEAST_WIDTH, MARGIN } from './knife-drawing.ts';
import { knifeNotes } from './knife-notes.ts';
import { drawScaleBar } from './scale-bar.ts';

const NAME_HEIGHT = 5;
const NOTE_HEIGHT = 2.5;

/** What stands under a knife's drawing: its name, its notes and the key of lines. */
export function drawKnifeFoot(drawing: KnifeDrawing, above: Box): Item[] {
  const { knife, part, across = Infinity } = drawing;
  const left = above.x0;
  const right = Math.max(above.x1, left + Math.min(LEAST_WIDTH, across - 2 * MARGIN));
  const rule = above.y1 + 8;
  const name = sayKnife(`${part}.name`, { cut: safeText(knife.cut) }, drawing);
  const caption = sayKnife('knife.caption', { job: safeText(drawing.title), units: unitsNote(drawing) }, drawing);
  const beside = textWidth(name, NAME_HEIGHT) + 8 + textWidth(caption, NOTE_HEIGHT) <= right - left;
  let y = rule + 9;
  const items: Item[] = [
    path('rule', 'thin', [stroke(left, rule, right, rule)]),
    text('name', 'text', left, y, name, NAME_HEIGHT),
    text(
      'caption',
      'quiet',
      beside ? right : left,
      beside ? y : y + 5.5,
      caption,
      NOTE_HEIGHT,
      beside ? 'end' : 'start',
    ),
  ];
  y += beside ? 7 : 12.5;
  const key = drawKey(drawing, left, y, right);
  items.push(...key.items);
  y = key.last + 7;
  const put = (key: string, words: string, role: 'text' | 'quiet' | 'trouble-text') => {
    wrapText(words, NOTE_HEIGHT, right - left).forEach((words, i) => {
      items.push(text(`${key} ${i}`, role, left, y, words, NOTE_HEIGHT));
      y += 4.6;
    });
    y += 0.6;
  };
  knifeNotes(knife, drawing).forEach((words, i) => {
    put(`note ${i}`, words, 'text');
  });
  knife.warnings.forEach(({ message, severity }, i) => {
    put(`warning ${i}`, safeText(message), severity === 'error' ? 'trouble-text' : 'quiet');
  });
  items.push(drawScaleBar(left, y + 3, drawing));
  return [group('foot', items)];
}

/** What each kind of line is, in as many rows as it takes, and the base of the last one. */
function drawKey(
  drawing: KnifeDrawing,
  x: number,
  top: number,
  right: number,
): { readonly items: Item[]; readonly last: number } {
  const { knife, part } = drawing;
  const other = part === 'knife' ? 'limiter' : 'knife';
  const entries = [
    { key: part, words: sayKnife(`key.${part}`, {}, drawing), role: 'outline' as const },
    { key: 'profile in the wood, tip on tip', words: sayKnife('key.wood', {}, drawing), role: 'old' as const },
    ...(knife.limiter ? [{ key: other, words: sayKnife(`key.${other}`, {}, drawing), role: 'hidden' as const }] : []),
    { key: 'tip line', words: sayKnife('key.tip', {}, drawing), role: 'cutter' as const },
  ];
  let at = x;
  let y = top;
  const items = entries.flatMap(({ key, words, role }) => {
    const width = 13 + textWidth(words, NOTE_HEIGHT);
    if (at > x && at + width > right) {
      at = x;
      y += 5;
    }
    const sample = stroke(at, y - 1, at + 11, y - 1);
    const items = [path(`key ${key}`, role, [sample]), text(`key to ${key}`, 'text', at + 13, y, words, NOTE_HEIGHT)];
    at += width + 7;
    return items;
  });
  return { items, last: y };
}
