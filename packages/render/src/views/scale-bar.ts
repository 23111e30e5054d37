import { type Loop, rectangle } from '@fielded/geometry';
import { type GroupItem, group, path, text } from '../scene.ts';
import { sayNote } from '../words/english/note.ts';
import type { InVoice } from '../words/lengths.ts';

const HEIGHT = 2.5;
const THICK = 1.6;

/**
 * A bar to check the print with a rule: 50 mm in five parts, or 2 in in eight, its left end at (x, y) on its foot. It is so long
 * on the paper, whatever the drawing's scale.
 */
export function drawScaleBar(x: number, y: number, voice: InVoice): GroupItem {
  const [parts, part, words] = voice.units === 'mm' ? [5, 10, '50 mm'] : [8, 6.35, '2 in'];
  const cells: Loop[] = [];
  for (let i = 0; i < parts; i += 2) {
    const [from, to] = [x + i * part, x + (i + 1) * part];
    cells.push(rectangle({ x0: from, y0: y - THICK, x1: to, y1: y }));
  }
  const frame = rectangle({ x0: x, y0: y - THICK, x1: x + parts * part, y1: y });
  return group('scale bar', [
    path('cells', 'arrow', cells),
    path('frame', 'thin', [frame]),
    text('length', 'quiet', x + parts * part + 3, y, sayNote('bar.check', { length: words }, voice), HEIGHT),
  ]);
}
