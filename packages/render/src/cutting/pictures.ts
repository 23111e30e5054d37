import type { Blank, DoorReport, ListedPanel } from '@fielded/core';
import { type Box, type Loop, poseLoops, readLoops, rectangle } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path, type Scene, sceneAround, text } from '../scene.ts';
import { fitText, heightToFit, textWidth } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { mitres } from '../views/door-parts.ts';
import { drawGrain, drawGrainArrow } from '../views/grain.ts';
import { fieldLoops, shapedLoops } from '../views/shaped-panel.ts';
import { sayList } from '../words/english/list.ts';
import { figureText, type InVoice } from '../words/lengths.ts';

/** Heights of capitals, mm. */
const SIZE = 2;
const SMALL = 1.7;

/**
 * A blank drawn with its grain level, each panel of it named with its width, and a line where each is ripped. `scale` is paper
 * mm for a mm of wood; a panel under a shaped head is drawn with its outline, the spare corners beside it.
 */
export function drawBoardBlank(blank: Blank, voice: InVoice, scale: number, doors: readonly DoorReport[] = []): Scene {
  const { length, width, panels, rips } = blank;
  const box: Box = { x0: 0, y0: 0, x1: length * scale, y1: width * scale };
  const edges = [0, ...rips.map((at) => at * scale), box.y1];
  const items: Item[] = [
    path('wood', 'wood', [rectangle(box)]),
    drawGrain('grain', box, false),
    path('shaped', 'thin', shapedInBlank(blank, scale, doors)),
    ...panels.flatMap((panel, i) => {
      const middle = (edges[i]! + edges[i + 1]!) / 2;
      const words = `${safeText(panel.door)}  ${figureText(panel.width, voice).text}`;
      return namePanel(`panel ${i}`, words, box.x1 / 2, middle, box.x1 - 2);
    }),
    path(
      'rips',
      'hidden',
      rips.map((at) => stroke(0, at * scale, box.x1, at * scale)),
    ),
    path('outline', 'outline', [rectangle(box)]),
  ];
  return sceneAround(sayList('picture.blank', { length, width }, voice), items);
}

/** The outlines of the shaped panels of a blank, their heads to the left. */
function shapedInBlank({ length, width, panels }: Blank, scale: number, doors: readonly DoorReport[]): Loop[] {
  const apart = (width - panels.reduce((sum, panel) => sum + panel.width, 0)) / Math.max(1, panels.length - 1);
  let top = 0;
  return panels.flatMap((panel) => {
    const pose = { xx: 0, xy: scale, yx: scale, yy: 0, x0: 0, y0: top * scale };
    top += panel.width + apart;
    const door = doors.find(({ name }) => name === panel.door);
    const same = (one: number, other: number) => Math.abs(one - other) < 0.01;
    const shaped = door?.head && same(door.panel.width, panel.width) && same(door.panel.height, length);
    return shaped ? poseLoops(pose, readLoops(door.head.paths.panelEdge)) : [];
  });
}

/** Words in the middle of a panel on a strip of paper's white, so that the grain does not run through them. */
function namePanel(key: string, words: string, x: number, y: number, room: number): Item[] {
  const size = heightToFit(words, SIZE, 1.4, room);
  const shown = fitText(words, size, room);
  const half = textWidth(shown, size) / 2 + 1;
  const white = { x0: x - half, y0: y - size, x1: x + half, y1: y + size };
  return [
    path(`${key} white`, 'paper', [rectangle(white)]),
    text(`${key} words`, 'text', x, y + size / 2, shown, size, 'middle'),
  ];
}

/** A panel from the front with its field, its grain and its sizes. */
export function drawPanelPicture(panel: ListedPanel, voice: InVoice, scale: number): Scene {
  const { width, height, grain, field, door } = panel;
  const shaped = door?.head ? shapedLoops({ ...door, head: door.head }, scale, 0, 0) : null;
  const box: Box = { x0: 0, y0: 0, x1: width * scale, y1: height * scale };
  const reach = field === null ? 0 : ((width - field.width) / 2) * scale;
  const inner: Box = { x0: reach, y0: reach, x1: box.x1 - reach, y1: box.y1 - reach };
  const items: Item[] = [
    path('blank', 'hidden', shaped ? [rectangle(box)] : []),
    path('wood', 'wood', [shaped?.edge ?? rectangle(box)]),
    drawGrain('grain', shaped?.square ?? inner, grain === 'up'),
    ...drawGrainArrow('grain arrow', shaped?.square ?? inner, grain === 'up'),
    path('field', 'thin', fieldLoops(shaped, field === null ? [] : [rectangle(inner), ...mitres(box, inner)])),
    path('outline', 'outline', [shaped?.edge ?? rectangle(box)]),
    text('width', 'text', box.x1 / 2, -1.4, figureText(width, voice).text, SMALL, 'middle'),
    text('height', 'text', -1.4, box.y1 / 2, figureText(height, voice).text, SMALL, 'middle', true),
  ];
  return sceneAround(sayList('picture.panel', { width, height }, voice), items);
}
