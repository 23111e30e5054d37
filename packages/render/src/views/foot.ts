import type { Report } from '@fielded/core';
import { verdictSentence } from '@fielded/core';
import { type Box, polygon } from '@fielded/geometry';
import type { Item } from '../scene.ts';
import { group, path, text } from '../scene.ts';
import { fitText, textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { scaleText, unitsNote } from '../words/lengths.ts';
import type { InBothUnits } from '../words/units-choice.ts';
import { goesTogether, verdictHeading } from '../words/verdict.ts';
import { verdictMark } from '../words/verdict-mark.ts';

const VERDICT_HEIGHT = 5;
const TITLE_HEIGHT = 3.5;
const NOTE_HEIGHT = 2.5;
const ABOVE = 9;
const LEAST_WIDTH = 120;

/**
 * The lines under a drawing: a thin rule, the verdict with its mark and in words, and at the right what the drawing is.
 * They keep to the width of what stands above them.
 */
export function drawFoot(
  report: Report & InBothUnits,
  name: string,
  scale: number,
  above: Box,
  notes: readonly string[],
): Item[] {
  const left = above.x0;
  const right = Math.max(above.x1, left + LEAST_WIDTH);
  const rule = above.y1 + ABOVE;
  const { verdict } = report.fit;
  const role = goesTogether(verdict) ? 'judged-text' : 'trouble-text';
  const word = verdictHeading(verdict);
  const base = rule + 10;

  const room = right - left;
  const whole = safeText(report.title);
  const beside = textWidth(whole, TITLE_HEIGHT) <= room - 8 - textWidth(word, VERDICT_HEIGHT) - 8;
  const title = fitText(whole, TITLE_HEIGHT, room);
  const caption = fitText(
    `${name} · ${scaleText(scale)} · ${unitsNote(report.units, report.bothUnits)}`,
    NOTE_HEIGHT,
    room,
  );
  const items: Item[] = [
    path('rule', 'thin', [
      polygon(
        [
          [left, rule],
          [right, rule],
        ],
        false,
      ),
    ]),
    verdictMark(verdict, left + 2.6, base - VERDICT_HEIGHT / 2),
    text('verdict', role, left + 8, base, word, VERDICT_HEIGHT),
    text('title', 'text', right, beside ? base : base + 7, title, TITLE_HEIGHT, 'end'),
  ];
  const lines = [
    { words: caption, key: 'caption', role: 'quiet' as const, atRight: true },
    ...wrapText(verdictSentence(report), NOTE_HEIGHT, room).map((words, i) => ({
      words,
      key: `sentence ${i}`,
      role: 'text' as const,
      atRight: false,
    })),
    ...notes.flatMap((note, n) =>
      wrapText(note, NOTE_HEIGHT, room).map((words, i) => ({
        words,
        key: `note ${n} ${i}`,
        role: 'quiet' as const,
        atRight: false,
      })),
    ),
  ];
  let y = base + (beside ? 5.5 : 12.5);
  for (const { words, key, role, atRight } of lines) {
    items.push(text(key, role, atRight ? right : left, y, words, NOTE_HEIGHT, atRight ? 'end' : 'start'));
    y += key === 'caption' ? 6.5 : 4.8;
  }
  return [group('foot', items)];
}
