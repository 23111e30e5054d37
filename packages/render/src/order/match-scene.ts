import type { KnifeMatch, Language, Report } from '@fielded/core';
import { joinBoxes, loopsBox, placeLoops, readLoops } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path, type Scene, text } from '../scene.ts';
import { textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { drawScaleBar } from '../views/scale-bar.ts';
import { sayKnife } from '../words/english/knife.ts';
import { scaleText } from '../words/lengths.ts';

/** A knife of the shop over the section that is wanted. */
export interface MatchDrawing {
  readonly match: KnifeMatch;
  /** Edge of the wanted sweep, SVG path data: x in from the edge, y down from the worked face. */
  readonly wanted: string;
  readonly cut: string;
  readonly title: string;
  readonly units: Report['units'];
  /** What its words are in; English unless told. */
  readonly language?: Language;
}

const MARGIN = 8;
const BEYOND = 8;
const WORDS = 2.5;
const LINE = 4.6;
const SCALE = 2;

/** What a knife of the shop leaves, drawn over the section wanted, at 2:1: the panel's edge is at the left, the worked face above. */
export function matchScene(drawing: MatchDrawing): Scene {
  const { match, wanted, cut, title } = drawing;
  const [want, have] = [readLoops(wanted), readLoops(match.swept)];
  const box = joinBoxes([loopsBox(want)!, loopsBox(have)!])!;
  const placing = {
    scale: SCALE,
    x: MARGIN - SCALE * Math.min(0, box.x0),
    y: MARGIN + 8 - SCALE * Math.min(0, box.y0),
  };
  const right = box.x1 + BEYOND;
  const foot = placing.y + SCALE * box.y1 + 10;
  const of = { knife: safeText(match.knife), cut: safeText(cut) };
  const lines = sayMatch(drawing, of, Math.max(placing.x + SCALE * right, 130) - MARGIN);
  const bar = foot + Math.max(20, 11 + lines.length * LINE);
  const name = sayKnife('match.name', { ...of, scale: scaleText(SCALE, drawing) }, drawing);
  const leaves = sayKnife('match.leaves', {}, drawing);
  const second = MARGIN + Math.max(62, 12 + textWidth(leaves, WORDS) + 6);
  const items: Item[] = [
    text('name', 'text', MARGIN, MARGIN + 3, name, 3.5),
    path('face', 'thin', placeLoops([stroke(0, 0, right, 0)], placing)),
    path('edge', 'thin', placeLoops([stroke(0, 0, 0, box.y1)], placing)),
    path('wanted', 'old', placeLoops(want, placing)),
    path('knife', 'outline', placeLoops(have, placing)),
    ...key('what the knife leaves', leaves, 'outline', MARGIN, foot),
    ...key('section wanted', sayKnife('match.wanted', {}, drawing), 'old', second, foot),
    ...lines.map((words, i) => text(`note ${i}`, 'text', MARGIN, foot + 7 + i * LINE, words, WORDS)),
    drawScaleBar(MARGIN, bar, drawing),
  ];
  const width =
    Math.max(placing.x + SCALE * right, ...lines.map((words) => MARGIN + textWidth(words, WORDS)), 130) + MARGIN;
  return {
    width,
    height: bar + 6,
    scale: SCALE,
    title: sayKnife('match.title', { ...of, job: safeText(title) }, drawing),
    description: lines.join(' '),
    items,
  };
}

/** How near the knife comes, and what stands against running it, in lines: the latter no wider than the former or than `room`, paper mm. */
function sayMatch(drawing: MatchDrawing, of: { readonly knife: string; readonly cut: string }, room: number): string[] {
  const { reach, deviation, uses, works, head, problems } = drawing.match;
  const set = sayKnife('match.set', { ...of, reach, deviation, from: uses.from, to: uses.to }, drawing);
  if (works) return [set, sayKnife('match.works', {}, drawing)];
  if (head === null) return [set, sayKnife('match.no-head', {}, drawing)];
  if (problems.length === 0) return [set, sayKnife('match.not-worked-out', {}, drawing)];
  const wide = Math.max(room, textWidth(set, WORDS));
  const against = problems.flatMap(({ message }) => wrapText(`– ${safeText(message)}`, WORDS, wide));
  return [set, sayKnife('match.against', {}, drawing), ...against];
}

/** A line of the key: a sample of the line, and what it is. */
function key(name: string, words: string, role: 'outline' | 'old', x: number, y: number): Item[] {
  return [
    path(`key ${name}`, role, [stroke(x, y - 1, x + 10, y - 1)]),
    text(`key to ${name}`, 'text', x + 12, y, words, WORDS),
  ];
}
