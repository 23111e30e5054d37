import { type Box, type Curve, type Loop, line } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import type { Item } from '../scene.ts';
import { group, path, text } from '../scene.ts';
import { sayView } from '../words/english/view.ts';
import type { InVoice } from '../words/lengths.ts';

const WORD = 2.5;
const TICK = 2.4;
const TICKS_APART = 2.4;

/** A surface that the work bears on: a line with short strokes on its far side, towards (dx, dy). */
function surface(key: string, x0: number, y0: number, x1: number, y1: number, dx: number, dy: number): Item[] {
  const strokes: Loop[] = [stroke(x0, y0, x1, y1)];
  const length = Math.hypot(x1 - x0, y1 - y0);
  for (let at = TICKS_APART / 2; at < length; at += TICKS_APART) {
    const x = x0 + ((x1 - x0) * at) / length;
    const y = y0 + ((y1 - y0) * at) / length;
    strokes.push(stroke(x, y, x + dx * TICK, y + dy * TICK));
  }
  return [path(key, 'thin', strokes)];
}

/** The table under a panel that lies flat, open where the cutter comes through. `wood` is the panel's box on the paper. */
export function drawMachineTable(voice: InVoice, wood: Box, from: number): { items: Item; box: Box } {
  const y = wood.y1 + 0.9;
  const items = [
    ...surface('table', from, y, wood.x1 + 6, y, -0.7, 0.7),
    text('table word', 'quiet', wood.x1 + 6, y + TICK + 4.2, sayView('machine.table', {}, voice), WORD, 'end'),
  ];
  return { items: group('table', items), box: { ...wood, y1: y + TICK } };
}

/** The table and the fence of a panel that stands on edge; the cutter comes through both at the lower left. */
export function drawFence(voice: InVoice, wood: Box, fenceTo: number, tableFrom: number): { items: Item; box: Box } {
  const x = wood.x0 - 0.9;
  const y = wood.y1 + 0.9;
  const items = [
    ...surface('fence', x, fenceTo, x, wood.y0 - 2, -0.7, 0.7),
    text('fence word', 'quiet', x - TICK - 1.5, wood.y0 + 1, sayView('machine.fence', {}, voice), WORD, 'end'),
    ...surface('table', tableFrom, y, wood.x1 + 16, y, -0.7, 0.7),
    text('table word', 'quiet', wood.x1 + 16, y + TICK + 4.2, sayView('machine.table', {}, voice), WORD, 'end'),
  ];
  return { items: group('table and fence', items), box: { ...wood, x0: x - TICK, y1: y + TICK } };
}

/** The knife's edge as a chain line, run on past the panel's edge and through its face as it is ground. `swept` runs from the edge to the face. */
export function drawCutter(
  swept: readonly Curve[],
  beyond: { x: number; y: number },
  through: { x: number; y: number },
): Item {
  const first = swept[0];
  const last = swept[swept.length - 1];
  if (!first || !last) return group('cutter', []);
  const curves = [
    line(first.x0 + beyond.x, first.y0 + beyond.y, first.x0, first.y0),
    ...swept,
    line(last.x1, last.y1, last.x1 + through.x, last.y1 + through.y),
  ];
  return group('cutter', [path('edge', 'cutter', [{ curves, closed: false }])]);
}

const AXIS = 30;
const ASIDE = 10;

/** Where the axis of a tilted spindle stands beside the wood, its lean and, in words, by how much. `direction` is its way up or down on the paper, radians. */
export function drawSpindle(wood: Box, middle: number, direction: number, words: string): { item: Item; left: number } {
  // Upwards, whichever way along the axis was given.
  const up = Math.sin(direction) > 0 ? direction + Math.PI : direction;
  const [dx, dy] = [(Math.cos(up) * AXIS) / 2, (Math.sin(up) * AXIS) / 2];
  const x = wood.x0 - ASIDE - Math.abs(dx);
  const axis = stroke(x - dx, middle - dy, x + dx, middle + dy);
  const plumb = stroke(x, middle - AXIS / 2 + 3, x, middle + AXIS / 2 - 3);
  const item = group('spindle', [
    path('axis', 'cutter', [axis]),
    path('plumb', 'thin', [plumb]),
    text('spindle word', 'quiet', x, middle + dy - 1.5, words, WORD, 'middle'),
  ]);
  return { item, left: x - Math.abs(dx) - 4 };
}
