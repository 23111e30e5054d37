import type { Report } from '@fielded/core';
import { verdictSentence } from '@fielded/core';
import type { Box } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import type { Item } from '../scene.ts';
import { group, path, text } from '../scene.ts';
import { textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayNote } from '../words/english/note.ts';
import { scaleText } from '../words/lengths.ts';
import { drawStatements } from '../words/statement-marks.ts';
import { errorLines } from '../words/status.ts';
import { verdictHead } from '../words/title.ts';
import type { InBothUnits } from '../words/units-choice.ts';
import { unitsNote } from '../words/units-note.ts';
import { verdictMark } from '../words/verdict-mark.ts';

const VERDICT_HEIGHT = 5;
const TITLE_HEIGHT = 3.5;
const NOTE_HEIGHT = 2.5;
const ABOVE = 9;
const LEAST_WIDTH = 120;
const MOST_ERROR_LINES = 12;

/**
 * The lines under a drawing: a thin rule, the verdict with its mark and in words, and at the right what the drawing is. Both
 * statements, *fits* and *can be run*, stand under the verdict, and every error of the job under the sentences. They are as wide as
 * what stands above them, and at least `least` mm.
 */
export function drawFoot(
  report: Report & InBothUnits,
  name: string,
  scale: number,
  above: Box,
  notes: readonly string[],
  least: number = LEAST_WIDTH,
): Item[] {
  const left = above.x0;
  const right = Math.max(above.x1, left + least);
  const rule = above.y1 + ABOVE;
  const { words: word, mark, role } = verdictHead(report);
  const base = rule + 10;

  const room = right - left;
  const whole = safeText(report.title);
  const beside = textWidth(whole, TITLE_HEIGHT) <= room - 8 - textWidth(word, VERDICT_HEIGHT) - 8;
  const title = beside ? [whole] : wrapText(whole, TITLE_HEIGHT, room);
  const items: Item[] = [
    path('rule', 'thin', [stroke(left, rule, right, rule)]),
    verdictMark(mark, left + 2.6, base - VERDICT_HEIGHT / 2),
    text('verdict', role, left + 8, base, word, VERDICT_HEIGHT),
  ];
  let y = base;
  title.forEach((words, i) => {
    if (i > 0 || !beside) y += i === 0 ? 7 : 5.4;
    items.push(text(`title ${i}`, 'text', right, y, words, TITLE_HEIGHT, 'end'));
  });
  y += 5.5;
  const caption = sayNote(
    'foot.caption',
    { view: name, scale: scaleText(scale, report), units: unitsNote(report, report.bothUnits) },
    report,
  );
  for (const [i, words] of wrapText(caption, NOTE_HEIGHT, room).entries()) {
    if (i > 0) y += 4.2;
    items.push(text(`caption ${i}`, 'quiet', right, y, words, NOTE_HEIGHT, 'end'));
  }
  y += 6.5;
  const statements = drawStatements(report, left, y, NOTE_HEIGHT, room);
  items.push(group('statements', statements.items));
  y = statements.base + 5.6;
  const lines = [
    ...wrapText(verdictSentence(report), NOTE_HEIGHT, room).map((words) => ({ words, role: 'text' as const })),
    ...notes.flatMap((note) => wrapText(note, NOTE_HEIGHT, room)).map((words) => ({ words, role: 'quiet' as const })),
    ...errorLines(report, NOTE_HEIGHT, room, MOST_ERROR_LINES).map((words) => ({
      words,
      role: 'trouble-text' as const,
    })),
  ];
  lines.forEach((line, i) => {
    items.push(text(`note ${i}`, line.role, left, y, line.words, NOTE_HEIGHT));
    y += 4.8;
  });
  return [group('foot', items)];
}
