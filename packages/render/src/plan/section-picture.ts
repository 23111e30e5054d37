import type { Report, SetUp } from '@fielded/core';
import { joinCurves, type Loop, loopsBox } from '@fielded/geometry';
import type { Figure } from '../dimension/figure.ts';
import { layDimensions } from '../dimension/lay-dimensions.ts';
import type { LinearDimension, Side } from '../dimension/linear.ts';
import type { Sketch } from '../dimension/sketch.ts';
import { hatchLoops } from '../geometry/hatch.ts';
import { group, type Item, itemsBox, path, type Scene, sceneAround } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { PANEL_HATCH } from '../views/panel-part.ts';
import { type PLAN_WORDS, sayPlan } from '../words/english/plan.ts';
import { figureText } from '../words/lengths.ts';
import { nameCut } from './frame-words.ts';
import { drawFenceSection, drawSpacer, drawTableSection, TABLE_THICK } from './machine-in-section.ts';
import type { Mounted } from './mounted.ts';
import { standingTool, type ToolPlace } from './standing-tool.ts';
import { poseWood } from './wood-in-section.ts';

/** Room for a picture on the paper, mm. */
export interface PictureRoom {
  readonly width: number;
  readonly height: number;
}

/** Scales of ISO 5455, and some between them, so that the picture is as large as it can be. */
const SCALES = [1, 0.8, 2 / 3, 0.5, 0.4, 0.25, 0.2, 0.1, 0.05];

/** A section through table, ring, spindle, head, stock, fence and bar, heights from the table, at the largest scale that fits. */
export function drawSetUpSection(
  report: Report,
  setUps: readonly SetUp[],
  mounted: Mounted,
  room: PictureRoom,
): { readonly items: Item[]; readonly scale: number } {
  let drawn: { items: Item[]; scale: number } | undefined;
  for (const scale of SCALES) {
    const sketch = sketchSection(report, setUps, mounted, scale);
    // Words beside short dimensions take room that the picture itself can use better.
    for (const tiers of [sketch.tiers, sketch.tiers.map((tier) => ({ ...tier, word: '' }))]) {
      const items = layDimensions({ ...sketch, tiers });
      drawn = { items, scale };
      const box = itemsBox(items)!;
      if (box.x1 - box.x0 <= room.width && box.y1 - box.y0 <= room.height) return drawn;
    }
  }
  return drawn!;
}

/** The section of one set-up as a drawing of its own; `index` counts the set-ups from 0. */
export function setUpPicture(report: Report, setUps: readonly SetUp[], index: number, room: PictureRoom): Scene {
  const { machine } = setUps[index]!;
  const cut = nameCut(setUps[index]!, report);
  const title = sayPlan('set-up.section', { cut: safeText(cut), machine: safeText(machine) }, report);
  const mounted = { setUp: setUps[index]!, correction: [], last: index };
  return sceneAround(title, drawSetUpSection(report, setUps, mounted, room).items);
}

/** Everything of the section before its dimensions. Paper coordinates: the fence's line at x = 0. */
function sketchSection(report: Report, setUps: readonly SetUp[], mounted: Mounted, scale: number): Sketch {
  const { setUp, upper } = mounted;
  const wood = poseWood(report, setUps, mounted, scale);
  const tool = standingTool(setUp, wood.swept, wood.table, scale, report, upper ? 'lower' : 'alone');
  const above = upper && standingTool(upper, wood.sweptAbove, wood.table, scale, report, 'upper');
  const tools = above ? [tool, above] : [tool];
  const { x0, x1, y0, y1 } = extentOf(wood.loops, tools);
  const table = drawTableSection(setUp, tool, wood.table, x0, x1 + 4, report);
  const fence = setUp.frame?.kind === 'back edge' ? [] : drawFenceSection(setUp, wood.table, scale, y0, report);
  const items: Item[] = [
    ...table,
    path(
      'knives fill',
      'removed',
      tools.flatMap(({ knives }) => knives),
    ),
    path('wood', 'wood', wood.loops),
    path('hatch', 'hatch', joinCurves(hatchLoops(wood.loops, PANEL_HATCH, true))),
    path('break', 'break', wood.breaks),
    path('outline', 'outline', joinCurves(wood.edges)),
    ...fence,
    ...tool.items,
    ...(above ? [...drawSpacer(mounted, wood.table, scale), group('upper head', above.items)] : []),
  ];
  const around = { x0: x0 - 2, x1: x1 + 4, y0: Math.min(y0, -1), y1 };
  return {
    items,
    outlines: [...wood.edges, ...tools.flatMap(({ outlines }) => outlines)],
    woods: wood.loops,
    around,
    tiers: measureSection(mounted, report, wood.table, scale, around),
    interiors: [],
    leaders: [],
  };
}

function extentOf(loops: readonly Loop[], tools: readonly ToolPlace[]) {
  const wood = loopsBox(loops)!;
  return {
    x0: Math.min(wood.x0, ...tools.map(({ box }) => box.x0)),
    x1: wood.x1,
    y0: Math.min(wood.y0, ...tools.map(({ box }) => box.y0)),
    y1: Math.max(wood.y1 + TABLE_THICK, ...tools.map(({ box }) => box.y1)),
  };
}

/** The sizes that are drawn, as the plan calls them. */
type FigureKey = keyof typeof PLAN_WORDS extends infer K ? (K extends `label.${infer N}` ? N : never) : never;

/** Heights from the table, distances from the fence. */
function measureSection(
  { setUp, upper, spacer }: Mounted,
  report: Report,
  table: number,
  scale: number,
  around: Sketch['around'],
): LinearDimension[] {
  const tiers: LinearDimension[] = [];
  const add = (
    side: Side,
    key: FigureKey,
    value: number,
    from: readonly [number, number],
    to: readonly [number, number],
  ) => {
    if (Math.abs(from[0] - to[0]) + Math.abs(from[1] - to[1]) < 0.2) return;
    const figure: Figure = {
      key,
      of: `setups.${key}`,
      value,
      ...figureText(value, report),
      word: sayPlan(`mark.${key}`, {}, report),
      label: sayPlan(`label.${key}`, { mm: value }, report),
      tone: 'plain',
    };
    tiers.push({ ...figure, side, from: { x: from[0], y: from[1] }, to: { x: to[0], y: to[1] } });
  };
  const height = (mm: number) => table - mm * scale;
  const { fence, seat, cuttingPoint } = setUp;
  const { x0, x1, y1 } = around;
  if (seat !== null && setUp.presented % 90 === 0)
    add('left', 'seat', Math.abs(seat), [x0, height(0)], [x0, height(seat)]);
  add('left', 'cuttingPoint', cuttingPoint, [x0, height(0)], [x0, height(cuttingPoint)]);
  if (upper) {
    add('left', 'upper.cuttingPoint', upper.cuttingPoint, [x0, height(0)], [x0, height(upper.cuttingPoint)]);
    if (spacer && upper.seat !== null)
      add('left', 'spacer', spacer, [x0, height(upper.seat - spacer)], [x0, height(upper.seat)]);
  }
  const axis = -fence.toAxis * scale;
  add('below', 'fence.toAxis', fence.toAxis, [axis, y1], [0, y1]);
  add('below', 'fence.standsOut', fence.standsOut, [0, y1], [fence.standsOut * scale, y1]);
  if (fence.bar !== null) {
    add('right', 'fence.bar.from', fence.bar.from, [x1, height(0)], [x1, height(fence.bar.from)]);
    if (fence.bar.to !== null) add('right', 'fence.bar.to', fence.bar.to, [x1, height(0)], [x1, height(fence.bar.to)]);
  }
  return tiers;
}
