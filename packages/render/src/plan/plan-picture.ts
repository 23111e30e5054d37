import type { SetUp } from '@fielded/core';
import { type Loop, polygon, rectangle } from '@fielded/geometry';
import { layDimensions } from '../dimension/lay-dimensions.ts';
import type { LinearDimension } from '../dimension/linear.ts';
import { circle } from '../geometry/circle.ts';
import { stroke } from '../geometry/stroke.ts';
import { type Item, itemsBox, path, text } from '../scene.ts';
import { sayPlan } from '../words/english/plan.ts';
import { figureText, type InVoice } from '../words/lengths.ts';
import { drawnKnives, feedArrow, rotationArrow } from './plan-motion.ts';
import type { PictureRoom } from './section-picture.ts';

const SCALES = [0.5, 0.4, 1 / 3, 0.25, 0.2, 1 / 6, 0.1, 0.05];
const FENCE_THICK = 4;
/** Fence that is shown beside its gap, and stock below the feed's arrow, paper mm. */
const FENCE_SHOWN = 13;
const STOCK_BELOW = 12;
/** From the arrow to the dimension of the gap; tiers stand 10 mm off what they go round. */
const GAP_BELOW = 7.5;
const TIER = 10;
const WORD = 2.5;

/** Seen from above, the operator below: head, knives and fence, the way it turns and the way the stock goes. */
export function drawPlanView(
  setUp: SetUp,
  voice: InVoice,
  room: PictureRoom,
): { readonly items: Item[]; readonly scale: number } {
  let drawn: { items: Item[]; scale: number } | undefined;
  for (const scale of SCALES) {
    drawn = { items: sketchPlan(setUp, voice, scale), scale };
    const box = itemsBox(drawn.items)!;
    if (box.x1 - box.x0 <= room.width && box.y1 - box.y0 <= room.height) break;
  }
  return drawn!;
}

/** The axis at the origin, the fence's line below it. */
function sketchPlan(setUp: SetUp, voice: InVoice, scale: number): Item[] {
  const { tool, fence } = setUp;
  const radius = (tool.cuttingDiameter / 2) * scale;
  const line = fence.toAxis * scale;
  const half = (fence.gap / 2) * scale;
  const end = Math.max(half + FENCE_SHOWN, radius + 2);
  const halves = fenceHalves(half, end, line);
  // Its word stands clear of the stock's edge too.
  const arrow = line + Math.max(0.8, radius - line) + 4;
  const gap = gapDimension(fence.gap, half, line, voice);
  // A decimal under the figure takes a line more.
  const foot = arrow + STOCK_BELOW + (gap.under === '' ? 0 : 3.4);
  const inside = setUp.frame?.kind === 'back edge';
  const alone = setUp.curve?.alone ?? false;
  const operator = sayPlan(inside ? 'picture.operator.frame' : 'picture.operator', {}, voice);
  const items: Item[] = [
    ...drawGuide(setUp, halves, line, scale, voice),
    path('stock', 'removed', [rectangle({ x0: -end, y0: line, x1: end, y1: foot })]),
    path('stock edge', 'outline', [stroke(-end, line + 0.2, end, line + 0.2)]),
    path('circle', 'cutter', [circle(radius)]),
    path('body', 'fine', [circle((tool.bodyDiameter / 2) * scale)]),
    path('nut', 'thin', [circle((tool.nutDiameter / 2) * scale)]),
    path('knives', 'fine', drawnKnives(setUp, scale)),
    ...rotationArrow(setUp, (tool.bodyDiameter / 2 + tool.cuttingDiameter / 2) * 0.5 * scale),
    ...feedArrow(setUp, arrow, Math.min(end - 4, 34), voice),
    text('operator', 'quiet', end, foot + 3.8, operator, WORD, 'end'),
  ];
  return layDimensions({
    items,
    outlines: [...(alone ? [] : halves.flatMap(({ curves }) => curves)), ...circle(radius).curves],
    woods: [],
    around: { x0: -end, x1: end, y0: -radius, y1: arrow + GAP_BELOW - TIER },
    tiers: inside || alone ? [] : [gap],
    interiors: [],
    leaders: [],
  });
}

/** The two halves of the fence beside its gap, cut back on a slant behind. */
function fenceHalves(half: number, end: number, line: number): Loop[] {
  return [-1, 1].map((side) =>
    polygon([
      [side * half, line],
      [side * end, line],
      [side * end, line - FENCE_THICK],
      [side * (half + FENCE_THICK), line - FENCE_THICK],
    ]),
  );
}

/** The gap of the fence, dimensioned below the stock; `half` of it on the paper. */
function gapDimension(gap: number, half: number, line: number, voice: InVoice): LinearDimension {
  return {
    ...figureText(gap, voice),
    word: sayPlan('picture.gap', {}, voice),
    tone: 'plain',
    key: 'fence.gap',
    of: 'setups.fence.gap',
    value: gap,
    label: sayPlan('picture.gap.label', { mm: gap }, voice),
    side: 'below',
    from: { x: -half, y: line },
    to: { x: half, y: line },
  };
}

/** What the work goes along: the fence's halves, or a bearing. */
function drawGuide(setUp: SetUp, halves: readonly Loop[], line: number, scale: number, voice: InVoice): Item[] {
  if (setUp.frame?.kind === 'back edge') return [path('bearing', 'judged', [circle(line)])];
  return setUp.curve?.alone ? drawBearing(setUp, line, scale, voice) : [path('fence', 'fine', halves)];
}

/** The bearing that a curve runs on, in the fence's place; its word beside the cutting circle. */
function drawBearing({ curve, tool }: SetUp, radius: number, scale: number, voice: InVoice): Item[] {
  const { available, outside } = curve!.guide.bearing;
  // On a template the bearing is another; the panel's edge passes where it always does.
  const own = available === null || outside === 0;
  const [first = '', second = ''] = sayPlan(own ? 'picture.bearing.own' : 'picture.bearing.other', {}, voice).split(
    '\n',
  );
  const right = (tool.cuttingDiameter / 2) * scale + 2;
  return [
    path('bearing', own ? 'fine' : 'hidden', [circle(radius)]),
    text('bearing word', 'quiet', right, -radius / 2, first, WORD),
    text('bearing words', 'quiet', right, -radius / 2 + WORD * 1.4, second, WORD),
  ];
}
