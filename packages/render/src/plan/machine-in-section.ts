import type { SetUp } from '@fielded/core';
import { joinCurves, type Loop, rectangle } from '@fielded/geometry';
import { hatchLoops } from '../geometry/hatch.ts';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';
import { sayPlan } from '../words/english/plan.ts';
import type { InVoice } from '../words/lengths.ts';
import type { Mounted } from './mounted.ts';
import type { ToolPlace } from './standing-tool.ts';

/** Thickness of the table as it is drawn, paper mm. */
export const TABLE_THICK = 5;
const BAR_THICK = 6;

/** The spacer between two heads. */
export function drawSpacer({ setUp, upper, spacer }: Mounted, table: number, scale: number): Item[] {
  if (!upper || !spacer || upper.seat === null) return [];
  const axis = -setUp.fence.toAxis * scale;
  const half = (setUp.tool.nutDiameter / 2) * scale;
  const [foot, head] = [table - (upper.seat - spacer) * scale, table - upper.seat * scale];
  return [path('spacer', 'judged', [rectangle({ x0: axis - half, y0: foot, x1: axis + half, y1: head })])];
}

/** Height of words beside the machine, and the least that can be read at it, paper mm. */
const WORD = 2.5;
const LEAST_WORD = 1.6;

/** The table, cut through: its two halves beside the hole of the ring, or beside the spindle alone. */
export function drawTableSection(
  setUp: SetUp,
  tool: ToolPlace,
  y: number,
  x0: number,
  x1: number,
  voice: InVoice,
): Item[] {
  const { left, right } = tool.opening;
  const halves: Loop[] = [];
  const half = (from: number, to: number) => {
    if (to - from > 1) halves.push(rectangle({ x0: from, y0: y, x1: to, y1: y + TABLE_THICK }));
  };
  half(x0 - 2, left);
  half(right, x1);
  const ring = setUp.hole !== null && setUp.hole.ring !== null;
  const words = sayPlan(ring ? 'picture.table.ring' : 'picture.table', {}, voice);
  // Words under the table end before a head that hangs there.
  const under = y + TABLE_THICK;
  const hanging = tool.outlines.filter((curve) => Math.max(curve.y0, curve.y1) > under);
  const clear = x1 - 1 - Math.max(x0, ...hanging.flatMap((curve) => [curve.x0, curve.x1]));
  const height = Math.max(LEAST_WORD, Math.min(WORD, clear / textWidth(words, 1)));
  return [
    path('table level', 'hidden', [stroke(x0 - 2, y, x1, y)]),
    path('table', 'fine', halves),
    text('table word', 'quiet', x1, under + 4, words, height, 'end'),
  ];
}

/** The fence's face as seen behind the cut, and the bar across its gap. */
export function drawFenceSection(
  { fence, curve }: SetUp,
  table: number,
  scale: number,
  top: number,
  voice: InVoice,
): Item[] {
  const word = sayPlan(curve?.alone ? 'picture.bearing' : 'picture.fence', {}, voice);
  const items: Item[] = [
    path('fence', 'hidden', [stroke(0, table, 0, top - 3)]),
    text('fence word', 'quiet', -BAR_THICK - 1.5, top - 1, word, 2.5, 'end'),
  ];
  if (fence.bar === null) return items;
  const from = table - fence.bar.from * scale;
  const to = fence.bar.to === null ? top - 2 : table - fence.bar.to * scale;
  const bar = rectangle({ x0: -BAR_THICK, y0: from, x1: 0, y1: to });
  items.push(path('bar fill', 'paper', [bar]), path('bar', 'judged', [bar]));
  const hatch = joinCurves(hatchLoops([bar], 1.4, false));
  items.push(path('bar hatch', 'judged-thin', hatch));
  return items;
}
