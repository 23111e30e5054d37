import type { Sample } from '@fielded/core';
import { type Loop, line, placeLoops, polygon, readLoops } from '@fielded/geometry';
import { breakLine } from '../geometry/break-line.ts';
import { hatchLoops } from '../geometry/hatch.ts';
import type { Item } from '../scene.ts';
import { path, text } from '../scene.ts';
import { fitText, textWidth } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { saySample } from '../words/english/sample.ts';
import { figureText, type InVoice, spokenNumber } from '../words/lengths.ts';
import { PANEL_HATCH } from './panel-part.ts';

/** Wood shown beyond the farthest reach, mm of wood. */
export const BEYOND = 14;
/** From a section's foot to the last line under it, mm. */
export const CAPTION = 15;
/** Heights of capitals, mm. */
const NAME = 3.5;
const NOTE = 2.5;
/** Names longer than this are cut short, mm. */
const WIDEST = 80;

/** One section, its top left at (x, y), with its name and sizes under it. */
export function drawSample(
  sample: Sample,
  voice: InVoice,
  thickness: number,
  scale: number,
  x: number,
  y: number,
): Item[] {
  const placing = { scale, x, y };
  const cut = readLoops(sample.outline).flatMap((loop) => loop.curves);
  const [first, last] = [cut[0]!, cut[cut.length - 1]!];
  const far = sample.reach + BEYOND;
  const edge = [
    line(0, thickness, 0, first.y0),
    ...(first.x0 > 0 ? [line(0, first.y0, first.x0, first.y0)] : []),
    ...cut,
  ];
  const surface = [...edge, ...(last.y1 > 0 ? [line(last.x1, last.y1, last.x1, 0)] : []), line(last.x1, 0, far, 0)];
  const foot = line(far, thickness, 0, thickness);
  const wood: Loop = { curves: [...surface, line(far, 0, far, thickness), foot], closed: true };
  const [placed] = placeLoops([wood], placing);
  const outline = placeLoops([{ curves: [foot, ...surface], closed: false }], placing);
  const old = placeLoops(
    [
      polygon(
        [
          [0, Math.min(first.y0, thickness)],
          [0, 0],
          [last.x1, 0],
        ],
        false,
      ),
    ],
    placing,
  );
  const under = y + thickness * scale;
  return [
    path(
      'hatch',
      'hatch',
      hatchLoops([placed!], PANEL_HATCH, true).map((stroke) => ({ curves: [stroke], closed: false })),
    ),
    path('old', 'old', old),
    path('outline', 'outline', outline),
    path('break', 'break', [breakLine(x + far * scale, y, under)]),
    text('name', 'text', x, under + 6.5, fitText(safeText(sample.name), NAME, WIDEST), NAME),
    text('sizes', 'text', x, under + 11, saySizes(sample, voice), NOTE),
    text('kept', 'quiet', x, under + CAPTION, sayKept(sample, voice), NOTE),
  ];
}

/** Shape, reach and depth in a line. */
export function saySizes({ shape, reach, depth }: Sample, voice: InVoice): string {
  const show = (mm: number) => (voice.units === 'mm' ? spokenNumber(mm, 1, voice) : figureText(mm, voice).text);
  const named = { shape: saySample(`shape.${shape}`, {}, voice), reach: show(reach), depth: show(depth) };
  return saySample('board.sizes', named, voice);
}

/** Where the knife is kept and how it is run, as far as the shop says. */
function sayKept({ head, groundFor, kept, measured }: Sample, voice: InVoice): string {
  const words = [
    head === null ? '' : saySample('board.in', { head: safeText(head) }, voice),
    groundFor === null ? '' : saySample(`board.run.${groundFor.run}`, {}, voice),
    measured === 'knife' ? saySample('board.measured', {}, voice) : '',
    kept === null ? '' : saySample('board.kept', { kept: safeText(kept) }, voice),
  ];
  return fitText(words.filter(Boolean).join(', '), NOTE, WIDEST);
}

/** The width of what stands under a sample, mm. */
export function captionWidth(sample: Sample, voice: InVoice): number {
  const name = fitText(safeText(sample.name), NAME, WIDEST);
  return Math.max(
    textWidth(name, NAME),
    textWidth(saySizes(sample, voice), NOTE),
    textWidth(sayKept(sample, voice), NOTE),
  );
}
