import { cutOutline, type Report, type SetUp } from '@fielded/core';
import { joinCurves, type Loop, loopsBox, polygon, poseLoops, posePoint, readLoops } from '@fielded/geometry';
import type { Figure } from '../dimension/figure.ts';
import { layDimensions } from '../dimension/lay-dimensions.ts';
import type { LinearDimension, Side } from '../dimension/linear.ts';
import type { Sketch } from '../dimension/sketch.ts';
import { hatchLoops } from '../geometry/hatch.ts';
import { stroke } from '../geometry/stroke.ts';
import { group, type Item, itemsBox, path, type Scene, sceneAround, text } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { poseCut } from '../views/cut-pose.ts';
import { regionOf } from '../views/cuts.ts';
import { PANEL_HATCH, shortenTo, splitBreaks } from '../views/panel-part.ts';
import { type PLAN_WORDS, sayPlan } from '../words/english/plan.ts';
import { figureText, type InVoice } from '../words/lengths.ts';
import { nameCut } from './frame-words.ts';
import type { Mounted } from './mounted.ts';
import { standingTool, type ToolPlace } from './standing-tool.ts';

/** Room for a picture on the paper, mm. */
export interface PictureRoom {
  readonly width: number;
  readonly height: number;
}

/** Scales of ISO 5455, and some between them: the picture should be as large as it can. */
const SCALES = [1, 0.8, 2 / 3, 0.5, 0.4, 0.25, 0.2, 0.1, 0.05];

const TABLE_THICK = 5;
const BAR_THICK = 6;
/** Wood that is shown beyond the cut, paper mm. */
const BEYOND = 6;

/** A section through table, ring, spindle, head, stock, fence and bar, heights from the table, at the largest scale that fits. */
export function drawSetUpSection(
  report: Report,
  setUps: readonly SetUp[],
  mounted: Mounted,
  room: PictureRoom,
): { readonly items: Item[]; readonly scale: number } {
  let drawn: { items: Item[]; scale: number } | undefined;
  for (const scale of SCALES) {
    // Words beside short dimensions take room that the picture itself can use better.
    for (const words of [true, false]) {
      const items = layDimensions(sketchSection(report, setUps, mounted, scale, words));
      drawn = { items, scale };
      const box = itemsBox(items)!;
      if (box.x1 - box.x0 <= room.width && box.y1 - box.y0 <= room.height) return drawn;
    }
  }
  return drawn!;
}

/** The same as a drawing of its own. */
export function setUpPicture(report: Report, setUps: readonly SetUp[], index: number, room: PictureRoom): Scene {
  const { machine } = setUps[index]!;
  const cut = nameCut(setUps[index]!, report);
  const title = sayPlan('set-up.section', { cut: safeText(cut), machine: safeText(machine) }, report);
  const mounted = { setUp: setUps[index]!, correction: [], last: index };
  return sceneAround(title, drawSetUpSection(report, setUps, mounted, room).items);
}

/** Everything of the section before its dimensions. Paper coordinates: the fence's line at x = 0. */
function sketchSection(
  report: Report,
  setUps: readonly SetUp[],
  mounted: Mounted,
  scale: number,
  words: boolean,
): Sketch {
  const { setUp, upper } = mounted;
  const wood = poseWood(report, setUps, mounted, scale);
  const tool = standingTool(setUp, wood.swept, wood.table, scale, report, upper ? 'lower' : 'alone');
  const above = upper && standingTool(upper, wood.sweptAbove, wood.table, scale, report, 'upper');
  const tools = above ? [tool, above] : [tool];
  const { x0, x1, y0, y1 } = extentOf(wood.loops, tools);
  const table = drawTable(setUp, tool, wood.table, x0, x1 + 4, report);
  const fence = setUp.frame?.kind === 'back edge' ? [] : drawFence(setUp, wood.table, scale, y0, report);
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
    tiers: measureSection(mounted, report, wood.table, scale, around).map((tier) =>
      words ? tier : { ...tier, word: '' },
    ),
    interiors: [],
    leaders: [],
  };
}

/** The stock as it lies after this cut, the cut's own edge, and where the table's top is. */
function poseWood(report: Report, setUps: readonly SetUp[], { setUp, upper, last }: Mounted, scale: number) {
  const { cut, made, thickness, width } =
    setUp.of === 'frame' ? frameStock(report, setUp) : panelStock(report, setUps, setUp, last);
  const { pose, against } = poseCut({ ...cut, run: setUp.run }, thickness, scale);
  const shown = shortenTo(width, width - FIELD + BEYOND, scale);
  const outline = cutOutline(
    thickness,
    width,
    made.map((each) => regionOf(each, thickness)),
  );
  const loops = poseLoops(pose, readLoops(outline).map(shown.shorten));
  const { edges, breaks } = splitBreaks(loops, posePoint(pose, shown.to, 0), against === 'fence');
  const sweptOf = (path: string) => poseLoops(pose, readLoops(path)).flatMap(({ curves }) => curves);
  const other = report.section.cuts.find(({ name }) => name === upper?.cut);
  const [swept, sweptAbove] = [sweptOf(cut.swept), other ? sweptOf(other.swept) : []];
  return { loops, edges, breaks, swept, sweptAbove, table: against === 'fence' ? 0 : thickness * scale };
}

/** Field that a report's section shows beyond its greatest reach, mm. */
const FIELD = 20;

/** The panel after this cut and those set up before it. */
function panelStock(report: Report, setUps: readonly SetUp[], setUp: SetUp, last: number) {
  const { cuts, thickness, width } = report.section;
  const cut = cuts.find(({ name }) => name === setUp.cut) ?? cuts[0]!;
  const panel = setUps.slice(0, last + 1).filter(({ of }) => of === 'panel');
  const made = panel.flatMap((each) => cuts.filter(({ name }) => name === each.cut));
  return { cut, made, thickness, width };
}

/** A part of the frame with its own cut alone. */
function frameStock(report: Report, { cut: name, side, swept, fence }: SetUp) {
  const reach = fence.standsOut;
  const cut = { ...report.section.cuts[0]!, name, side, swept, reach, presented: 0 };
  return { cut, made: [cut], thickness: report.frame.thickness, width: reach + FIELD };
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

/** The collar between two heads. */
function drawSpacer({ setUp, upper, spacer }: Mounted, table: number, scale: number): Item[] {
  if (!upper || !spacer || upper.seat === null) return [];
  const axis = -setUp.fence.toAxis * scale;
  const half = (setUp.tool.nutDiameter / 2) * scale;
  const [foot, head] = [table - (upper.seat - spacer) * scale, table - upper.seat * scale];
  return [
    path('spacer', 'judged', [
      polygon([
        [axis - half, foot],
        [axis + half, foot],
        [axis + half, head],
        [axis - half, head],
      ]),
    ]),
  ];
}

/** The table, cut through: its two halves beside the hole of the ring, or beside the spindle alone. */
function drawTable(setUp: SetUp, tool: ToolPlace, y: number, x0: number, x1: number, voice: InVoice): Item[] {
  const { left, right } = tool.opening;
  const halves: Loop[] = [];
  const half = (from: number, to: number) => {
    if (to - from > 1)
      halves.push(
        polygon([
          [from, y],
          [to, y],
          [to, y + TABLE_THICK],
          [from, y + TABLE_THICK],
        ]),
      );
  };
  half(x0 - 2, left);
  half(right, x1);
  const ring = setUp.hole !== null && setUp.hole.ring !== null;
  const words = sayPlan(ring ? 'picture.table.ring' : 'picture.table', {}, voice);
  return [
    path('table level', 'hidden', [stroke(x0 - 2, y, x1, y)]),
    path('table', 'fine', halves),
    text('table word', 'quiet', x1, y + TABLE_THICK + 4, words, 2.5, 'end'),
  ];
}

/** The fence's face as seen behind the cut, and the bar across its gap. */
function drawFence({ fence, curve }: SetUp, table: number, scale: number, top: number, voice: InVoice): Item[] {
  const word = sayPlan(curve?.alone ? 'picture.bearing' : 'picture.fence', {}, voice);
  const items: Item[] = [
    path('fence', 'hidden', [stroke(0, table, 0, top - 3)]),
    text('fence word', 'quiet', -BAR_THICK - 1.5, top - 1, word, 2.5, 'end'),
  ];
  if (fence.bar === null) return items;
  const from = table - fence.bar.from * scale;
  const to = fence.bar.to === null ? top - 2 : table - fence.bar.to * scale;
  const bar = polygon([
    [-BAR_THICK, from],
    [0, from],
    [0, to],
    [-BAR_THICK, to],
  ]);
  items.push(path('bar fill', 'paper', [bar]), path('bar', 'judged', [bar]));
  const hatch = joinCurves(hatchLoops([bar], 1.4, false));
  items.push(path('bar hatch', 'judged-thin', hatch));
  return items;
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
