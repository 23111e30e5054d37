import type { Loop } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path, text } from '../scene.ts';
import { sayNote } from '../words/english/note.ts';
import type { InVoice } from '../words/lengths.ts';

const WORDS = 2.5;
const INCH = 25.4;

/** Room that the bar takes above its line, mm. */
export const BAR_ABOVE = 2.4;

/** A bar to check a print with a rule, from (x, y) on its line: 100 mm in tens, or 4 in in quarters. `short` halves it. */
export function drawCheckBar(x: number, y: number, voice: InVoice, short: boolean = false): Item[] {
  const metric = voice.units === 'mm';
  const [step, long, count] = metric ? [10, 5, short ? 5 : 10] : [INCH / 4, 4, short ? 8 : 16];
  const ticks: Loop[] = [stroke(x, y, x + step * count, y)];
  for (let i = 0; i <= count; i += 1)
    ticks.push(stroke(x + step * i, y, x + step * i, y - (i % long === 0 ? BAR_ABOVE : 1.4)));
  const length = metric ? `${10 * count} mm` : `${count / 4} in`;
  return [
    path('bar', 'thin', ticks),
    text('bar words', 'quiet', x, y + 4, sayNote('bar.check', { length }, voice), WORDS),
  ];
}
