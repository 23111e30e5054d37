import type { CutReport, Report } from '@fielded/core';
import { placeLoops, readLoops, rectangle } from '@fielded/geometry';
import { hatchLoops } from '../geometry/hatch.ts';
import { stroke } from '../geometry/stroke.ts';
import { type Item, itemsBox, path, type Scene, text } from '../scene.ts';
import { fitText, textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { PANEL_HATCH } from '../views/panel-part.ts';
import { saySample } from '../words/english/sample.ts';
import { type InVoice, withDecimal } from '../words/lengths.ts';

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
  const { section, title } = report;
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
  put('scale', saySample('sample.size', { stock: section.thickness }, report));
  section.cuts.forEach((cut, i) => {
    put(`cut ${i}`, cutWords(cut, knives[cut.name], report));
  });
  put('groove', saySample('sample.groove', report.frame.groove, report));
  const lines = [
    { key: 'wood', label: saySample('sample.wood', {}, report), value: safeText(wood ?? report.season?.species ?? '') },
    { key: 'date', label: saySample('sample.date', {}, report), value: safeText(date) },
    { key: 'tongue measured', label: saySample('sample.measured', {}, report), value: '' },
    { key: 'fit of the test piece', label: saySample('sample.fit', {}, report), value: '' },
  ];
  const start = MARGIN + Math.max(36, ...lines.map(({ label }) => textWidth(label, WORDS) + 1.5));
  y += 1.5;
  for (const { key, label, value } of lines) {
    items.push(text(`${key} word`, 'quiet', MARGIN, y, label, WORDS));
    if (value) items.push(text(key, 'text', start, y, fitText(value, WORDS, MARGIN + room - start), WORDS));
    else items.push(path(`${key} line`, 'thin', [stroke(start, y + 0.8, width - MARGIN, y + 0.8)]));
    y += LINE + 1;
  }
  const height = y + MARGIN - 2;
  return {
    width,
    height,
    scale: 1,
    title: saySample('sample.title', { job: safeText(title) }, report),
    description: section.cuts.map((cut) => cutWords(cut, knives[cut.name], report)).join('. '),
    items: [
      path('edge of the label', 'thin', [rectangle({ x0: 0.5, y0: 0.5, x1: width - 0.5, y1: height - 0.5 })]),
      ...items,
    ],
  };
}

/** A cut as it is set to be run again, in words. */
function cutWords(cut: CutReport, knife: string | undefined, voice: InVoice): string {
  const { side, run, presented, depth, reach } = cut;
  const shape = saySample(`shape.${cut.shape}`, {}, voice);
  const made = knife === undefined ? shape : saySample('sample.shape.knife', { shape, knife: safeText(knife) }, voice);
  const figures = { cut: safeText(cut.name), made, depth, reach };
  if (presented === 0) return saySample(`sample.${side}.${run}`, figures, voice);
  if (presented === 90) return saySample(`sample.${side}.on-edge`, figures, voice);
  const tilt = withDecimal(presented.toFixed(1), voice);
  return saySample(`sample.${side}.${run}.tilted`, { ...figures, tilt }, voice);
}
