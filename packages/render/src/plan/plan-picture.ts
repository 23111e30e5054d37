import type { SetUp } from '@fielded/core';
import { arc, type Loop, polygon, rectangle } from '@fielded/geometry';
import { layDimensions } from '../dimension/lay-dimensions.ts';
import { circle } from '../geometry/circle.ts';
import { stroke } from '../geometry/stroke.ts';
import { type Item, itemsBox, path, text } from '../scene.ts';
import { sayPlan } from '../words/english/plan.ts';
import { figureText, type InVoice } from '../words/lengths.ts';
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
const HEAD = 3.4;

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
  const halves = [-1, 1].map((side) =>
    polygon([
      [side * half, line],
      [side * end, line],
      [side * end, line - FENCE_THICK],
      [side * (half + FENCE_THICK), line - FENCE_THICK],
    ]),
  );
  const arrow = line + Math.max(0, radius - line) + 4;
  const shown = { ...figureText(fence.gap, voice), word: sayPlan('picture.gap', {}, voice), tone: 'plain' as const };
  // A decimal under the figure takes a line more.
  const foot = arrow + STOCK_BELOW + (shown.under === '' ? 0 : 3.4);
  const inside = setUp.frame?.kind === 'back edge';
  const alone = setUp.curve?.alone ?? false;
  const items: Item[] = [
    ...drawGuide(setUp, halves, line, scale, voice),
    path('stock', 'removed', [rectangle({ x0: -end, y0: line, x1: end, y1: foot })]),
    path('stock edge', 'outline', [stroke(-end, line + 0.2, end, line + 0.2)]),
    path('circle', 'cutter', [circle(radius)]),
    path('body', 'fine', [circle((tool.bodyDiameter / 2) * scale)]),
    path('nut', 'thin', [circle((tool.nutDiameter / 2) * scale)]),
    path('knives', 'fine', knives(setUp, scale)),
    ...rotationArrow(setUp, (tool.bodyDiameter / 2 + tool.cuttingDiameter / 2) * 0.5 * scale),
    ...feedArrow(setUp, arrow, Math.min(end - 4, 34), voice),
    text(
      'operator',
      'quiet',
      end,
      foot + 3.8,
      sayPlan(inside ? 'picture.operator.frame' : 'picture.operator', {}, voice),
      WORD,
      'end',
    ),
  ];
  const gap = {
    ...shown,
    key: 'fence.gap',
    of: 'setups.fence.gap',
    value: fence.gap,
    label: sayPlan('picture.gap.label', { mm: fence.gap }, voice),
    side: 'below' as const,
    from: { x: -half, y: line },
    to: { x: half, y: line },
  };
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

/** The way it turns on the paper, where angles grow clockwise: -1 counterclockwise. */
function turnOf({ rotation }: SetUp): 1 | -1 {
  return rotation === 'clockwise' ? 1 : -1;
}

/**
 * The knives with their real rake and wedge: the face runs from the tip in to the body, R·sin γ off the axis, leading in the
 * way it turns; the back leaves the tip by the wedge angle.
 */
function knives(setUp: SetUp, scale: number): Loop[] {
  const { tool } = setUp;
  const radius = (tool.cuttingDiameter / 2) * scale;
  const body = (tool.bodyDiameter / 2) * scale;
  const turn = turnOf(setUp);
  const rake = (tool.rake * Math.PI) / 180;
  const wedge = (tool.wedge * Math.PI) / 180;
  return Array.from({ length: Math.min(tool.knives, 12) }, (_, k) => {
    const at = Math.PI / 2 + 0.35 * turn + (2 * Math.PI * k) / tool.knives;
    const tip = [radius * Math.cos(at), radius * Math.sin(at)] as const;
    // Inwards along the face and the back: raked, the face runs in behind the radius of its tip.
    const inward = at + Math.PI;
    const face = meetCircle(tip, inward + rake * turn, body);
    const back = meetCircle(tip, inward + (rake + wedge) * turn, body);
    return polygon([tip, face, back]);
  });
}

/** Where a line from a point outside a circle about the origin meets it first; its nearest point where it passes by. */
function meetCircle([x, y]: readonly [number, number], angle: number, radius: number): readonly [number, number] {
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const along = -(x * dx + y * dy);
  const off = x * x + y * y - along * along;
  const length = along - Math.sqrt(Math.max(0, radius * radius - off));
  return [x + length * dx, y + length * dy];
}

function rotationArrow(setUp: SetUp, radius: number): Item[] {
  const turn = turnOf(setUp);
  const [from, to] = turn === 1 ? [-2.6, -0.6] : [-0.54, -2.54];
  const point = (angle: number, r: number) => [r * Math.cos(angle), r * Math.sin(angle)] as const;
  const [x0, y0] = point(from, radius);
  const [x1, y1] = point(to, radius);
  const back = to - (turn * HEAD) / radius;
  const head = polygon([
    point(to + (turn * 0.4 * HEAD) / radius, radius),
    point(back, radius + HEAD * 0.45),
    point(back, radius - HEAD * 0.45),
  ]);
  return [
    path('rotation', 'judged', [{ curves: [arc(x0, y0, x1, y1, 0, 0, turn)], closed: false }]),
    path('rotation head', 'judged-fill', [head]),
  ];
}

function feedArrow({ feedDirection }: SetUp, y: number, half: number, voice: InVoice): Item[] {
  const way = feedDirection === 'right to left' ? -1 : 1;
  const tip = way * half;
  const head = polygon([
    [tip, y],
    [tip - way * HEAD * 1.3, y - HEAD * 0.6],
    [tip - way * HEAD * 1.3, y + HEAD * 0.6],
  ]);
  return [
    path('feed', 'judged', [stroke(-way * half, y, tip - way * HEAD, y)]),
    path('feed head', 'judged-fill', [head]),
    text(
      'feed word',
      'text',
      -way * half,
      y - 1.4,
      sayPlan('picture.feed', {}, voice),
      WORD,
      way === 1 ? 'start' : 'end',
    ),
  ];
}
