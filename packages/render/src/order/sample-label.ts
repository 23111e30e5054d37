import type { CutReport, Report } from '@fielded/core';
import { placeLoops, polygon, readLoops } from '@fielded/geometry';
import { hatchLoops } from '../geometry/hatch.ts';
import { stroke } from '../geometry/stroke.ts';
import { type Item, itemsBox, path, type Scene, text } from '../scene.ts';
import { fitText, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { PANEL_HATCH } from '../views/panel-part.ts';
import { spokenLength } from '../words/lengths.ts';

/** A label for the sample of a job's panel that is kept. */
export interface SampleLabel {
  readonly report: Report;
  /** As it should stand; left to be written in by hand where it is not given. */
  readonly date?: string;
  readonly wood?: string;
  /** The knife of each cut, by the cut's name; none where nobody said. */
  readonly knives: Readonly<Record<string, string>>;
}

const MARGIN = 5;
const WORDS = 2.5;
const LINE = 4.4;
const LEAST_WIDTH = 90;

/**
 * The label of a sample: the section at full size, the job's name, every cut with knife and settings, wood and date, and lines to
 * write on what the test piece measured. Cut out and stuck on the sample's back, it says how the profile is run again.
 */
export function sampleLabel({ report, date = '', wood, knives }: SampleLabel): Scene {
  const { section, units, title } = report;
  const say = (mm: number) => spokenLength(mm, units);
  const width = Math.max(LEAST_WIDTH, section.width + 2 * MARGIN);
  const room = width - 2 * MARGIN;
  const loops = placeLoops(readLoops(section.outline), { scale: 1, x: MARGIN, y: MARGIN + 9 });
  const hatch = hatchLoops(loops, PANEL_HATCH, true).map((stroke) => ({ curves: [stroke], closed: false }));
  const items: Item[] = [
    text('title', 'text', MARGIN, MARGIN + 4, fitText(safeText(title), 3.5, room), 3.5),
    path('hatch', 'hatch', hatch),
    path('section', 'outline', loops),
  ];
  let y = itemsBox(items)!.y1 + 6;
  const put = (key: string, words: string) => {
    wrapText(words, WORDS, room).forEach((line, i) => {
      items.push(text(`${key} ${i}`, 'text', MARGIN, y, line, WORDS));
      y += LINE;
    });
  };
  put('scale', `Full size; stock ${say(section.thickness)}`);
  section.cuts.forEach((cut, i) => {
    put(`cut ${i}`, cutWords(cut, knives[cut.name], say));
  });
  const groove = report.frame.groove;
  put('groove', `Groove ${say(groove.width)} wide, ${say(groove.depth)} deep, ${say(groove.setback)} behind the front`);
  const lines: readonly (readonly [string, string])[] = [
    ['wood', safeText(wood ?? report.season?.species ?? '')],
    ['date', safeText(date)],
    ['tongue measured', ''],
    ['fit of the test piece', ''],
  ];
  y += 1.5;
  for (const [label, value] of lines) {
    items.push(text(`${label} word`, 'quiet', MARGIN, y, label, WORDS));
    if (value) items.push(text(label, 'text', MARGIN + 36, y, fitText(value, WORDS, room - 36), WORDS));
    else items.push(path(`${label} line`, 'thin', [stroke(MARGIN + 36, y + 0.8, width - MARGIN, y + 0.8)]));
    y += LINE + 1;
  }
  const height = y + MARGIN - 2;
  return {
    width,
    height,
    scale: 1,
    title: `${safeText(title)}: label of the sample`,
    description: section.cuts.map((cut) => cutWords(cut, knives[cut.name], say)).join('. '),
    items: [
      path('edge of the label', 'thin', [
        polygon([
          [0.5, 0.5],
          [width - 0.5, 0.5],
          [width - 0.5, height - 0.5],
          [0.5, height - 0.5],
        ]),
      ]),
      ...items,
    ],
  };
}

/** A cut as it is run again. */
function cutWords(cut: CutReport, knife: string | undefined, say: (mm: number) => string): string {
  const { name, side, run, presented, depth, reach, shape } = cut;
  const held =
    presented === 0
      ? `run ${run}`
      : presented === 90
        ? 'run on edge'
        : `run ${run}, spindle tilted ${presented.toFixed(1)}°`;
  const made = knife === undefined ? shape : `${shape}, knife ${safeText(knife)}`;
  return `${safeText(name)} (${side}, ${made}): ${held}, depth ${say(depth)}, reach ${say(reach)}`;
}
