import type { KnifeMatch, Report } from '@fielded/core';
import { joinBoxes, loopsBox, placeLoops, polygon, readLoops } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path, type Scene, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { drawScaleBar } from '../views/scale-bar.ts';
import { scaleText, spokenLength } from '../words/lengths.ts';

/** A knife of the shop over the section that is wanted. */
export interface MatchDrawing {
  readonly match: KnifeMatch;
  /** Edge of the wanted sweep, SVG path data: x in from the edge, y down from the worked face. */
  readonly wanted: string;
  readonly cut: string;
  readonly title: string;
  readonly units: Report['units'];
}

const MARGIN = 8;
const BEYOND = 8;
const WORDS = 2.5;
const SCALE = 2;

/** What a knife of the shop leaves, over the section wanted, at 2:1: both from the panel's edge, at the left, to the face, above. */
export function matchScene({ match, wanted, cut, title, units }: MatchDrawing): Scene {
  const [want, have] = [readLoops(wanted), readLoops(match.swept)];
  const box = joinBoxes([loopsBox(want)!, loopsBox(have)!])!;
  const placing = {
    scale: SCALE,
    x: MARGIN - SCALE * Math.min(0, box.x0),
    y: MARGIN + 8 - SCALE * Math.min(0, box.y0),
  };
  const place = (points: readonly (readonly [number, number])[]) => placeLoops([polygon(points, false)], placing);
  const right = box.x1 + BEYOND;
  const foot = placing.y + SCALE * box.y1 + 10;
  const say = (mm: number) => spokenLength(mm, units);
  const lines = [
    `${safeText(match.knife)}, set to reach ${say(match.reach)}: at most ${say(match.deviation)} from the ${safeText(cut)} wanted. Used from ${say(match.uses.from)} to ${say(match.uses.to)} of its own reach.`,
    match.works
      ? 'Nothing that is known of its head and the machines stands against it.'
      : match.head === null
        ? 'It names no head, so nothing is known of running it.'
        : `Against it: ${match.against.join(', ') || 'not worked out'}.`,
  ];
  const items: Item[] = [
    text(
      'name',
      'text',
      MARGIN,
      MARGIN + 3,
      `${safeText(match.knife)} for the ${safeText(cut)} · ${scaleText(SCALE)}`,
      3.5,
    ),
    path(
      'face',
      'thin',
      place([
        [0, 0],
        [right, 0],
      ]),
    ),
    path(
      'edge',
      'thin',
      place([
        [0, 0],
        [0, box.y1],
      ]),
    ),
    path('wanted', 'old', placeLoops(want, placing)),
    path('knife', 'outline', placeLoops(have, placing)),
    ...key('what the knife leaves', 'outline', MARGIN, foot),
    ...key('section wanted', 'old', MARGIN + 62, foot),
    ...lines.map((words, i) => text(`note ${i}`, 'text', MARGIN, foot + 7 + i * 4.6, words, WORDS)),
    drawScaleBar(MARGIN, foot + 20, units),
  ];
  const width =
    Math.max(placing.x + SCALE * right, ...lines.map((words) => MARGIN + textWidth(words, WORDS)), 130) + MARGIN;
  return {
    width,
    height: foot + 26,
    scale: SCALE,
    title: `${safeText(title)}: ${safeText(match.knife)} for the ${safeText(cut)}`,
    description: lines.join(' '),
    items,
  };
}

function key(words: string, role: 'outline' | 'old', x: number, y: number): Item[] {
  return [
    path(`key ${words}`, role, [stroke(x, y - 1, x + 10, y - 1)]),
    text(`key to ${words}`, 'text', x + 12, y, words, WORDS),
  ];
}
