import { formatNumber, type Plan, type Report, type SetUp, sayCurve, sayCut } from '@fielded/core';
import { safe } from '../io.ts';
import { SHEET_WIDTH } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { labelWidth, setPairs, wrap } from '../terminal/table.ts';
import { say, sayAll } from '../words/say.ts';
import { type Shown, sayFigure, sayLength } from './figures.ts';

/** Everything of one set-up, a figure a line. `place` is its place in the plan. */
export function setUpLines(plan: Plan, place: number, report: Report, paint: Paint): string[] {
  const setUp = plan.setups[place]!;
  const curve = sayCurve(setUp, report);
  const pairs: Pair[] = [
    ...toolPairs(setUp, report),
    ...heightPairs(setUp, report),
    ...guidePairs(setUp, report),
    ...runningPairs(setUp, report),
    ...curve.map((words, k): Pair => [k === 0 ? say('print.set-up.curve', {}, report) : '', words]),
    ...correctionPairs(plan, place, report),
  ];
  const width = labelWidth(pairs.map(([label]) => label));
  return [
    paint(nameSetUp(plan, place, report), 'heading'),
    ...pairs.flatMap(([label, value]) => setPair(label, value, width)),
  ];
}

/** With both heads at once the two cuts of the panel are one set-up: a lower and an upper head. */
function nameSetUp({ setups, stack }: Plan, place: number, voice: Shown): string {
  const isStacked = ({ of, cut }: SetUp) =>
    stack?.works === true && of === 'panel' && [stack.lower, stack.upper].includes(cut);
  const shared = setups.slice(0, place).some(isStacked) ? 1 : 0;
  const setUp = setups[place]!;
  const figures = { number: place + 1 - shared, cut: sayCut(setUp, voice) };
  if (!isStacked(setUp)) return say('print.set-up', figures, voice);
  return say(setUp.cut === stack!.lower ? 'print.set-up.lower' : 'print.set-up.upper', figures, voice);
}

type Pair = readonly [label: string, value: string];

/** What is mounted, how the work is held, and which way it goes. */
function toolPairs(setUp: SetUp, voice: Shown): Pair[] {
  const { machine, head, knife, run, turnedOver, slot } = setUp;
  const runs = turnedOver ? (`print.set-up.${run}.turned` as const) : (`print.set-up.${run}` as const);
  return [
    [
      say('print.set-up.machine', {}, voice),
      knife === null
        ? say('print.set-up.tool.to-grind', { machine, head }, voice)
        : say('print.set-up.tool', { machine, head, knife }, voice),
    ],
    [say('print.set-up.runs', {}, voice), say(runs, { held: heldWords(setUp, voice) }, voice)],
    [say('print.set-up.turns', {}, voice), turnsWords(setUp, voice)],
    ...(slot === null
      ? []
      : [[say('print.set-up.slot', {}, voice), say(`print.set-up.slot.${slot}`, {}, voice)] as const]),
  ];
}

function heldWords({ presented }: SetUp, voice: Shown): string {
  if (presented === 0) return say('print.set-up.held.flat', {}, voice);
  if (presented === 90) return say('print.set-up.held.on-edge', {}, voice);
  return say('print.set-up.held.tilted', { tilt: presented }, voice);
}

function turnsWords({ rotation, feedDirection, assumed }: SetUp, voice: Shown): string {
  const way = feedDirection === 'left to right' ? 'left-to-right' : 'right-to-left';
  const key = `print.set-up.feed.${way}` as const;
  return say(
    assumed ? (`${key}.assumed` as const) : key,
    { rotation: say(`print.rotation.${rotation}`, {}, voice) },
    voice,
  );
}

function heightPairs({ cuttingPoint, seat, hole }: SetUp, voice: Shown): Pair[] {
  return [
    [
      say('print.set-up.point', {}, voice),
      say('print.set-up.point.height', { height: sayLength(cuttingPoint, voice) }, voice),
    ],
    [
      say('print.set-up.seat', {}, voice),
      seat === null ? say('print.set-up.seat.unknown', {}, voice) : sayLength(seat, voice),
    ],
    [say('print.set-up.ring', {}, voice), ringWords(hole, voice)],
  ];
}

function ringWords(hole: SetUp['hole'], voice: Shown): string {
  if (hole === null) return say('print.set-up.ring.not-needed', {}, voice);
  const needed = sayLength(hole.needed, voice);
  if (hole.ring === null) return say('print.set-up.ring.none', { needed }, voice);
  return say('print.set-up.ring.size', { ring: sayLength(hole.ring, voice), needed }, voice);
}

/** What the work goes along: the fence, or a bearing inside a frame. */
function guidePairs({ fence, frame, curve }: SetUp, voice: Shown): Pair[] {
  const out = sayLength(fence.standsOut, voice);
  if (frame?.kind === 'back edge') {
    const [radius, corner] = [sayLength(frame.bearing, voice), sayLength(frame.corner, voice)];
    return [
      [say('print.set-up.bearing', {}, voice), say('print.set-up.bearing.radius', { radius, out }, voice)],
      [say('print.set-up.corners', {}, voice), say('print.set-up.corners.radius', { radius: corner }, voice)],
    ];
  }
  const distance = sayLength(fence.toAxis, voice);
  if (curve?.alone)
    return [[say('print.set-up.edge', {}, voice), say('print.set-up.edge.distance', { distance }, voice)]];
  return [
    [say('print.set-up.fence', {}, voice), say('print.set-up.fence.distance', { distance, out }, voice)],
    [say('print.set-up.gap', {}, voice), sayLength(fence.gap, voice)],
    [say('print.set-up.bar', {}, voice), barWords(fence.bar, voice)],
    ...(fence.barEdges === undefined
      ? []
      : [[`  ${say('print.set-up.bar.ripped', {}, voice)}`, barWords(fence.barEdges, voice)] as const]),
  ];
}

function barWords(heights: SetUp['fence']['bar'], voice: Shown): string {
  if (heights === null) return say('print.set-up.bar.nowhere', {}, voice);
  const from = sayLength(heights.from, voice);
  if (heights.to === null) return say('print.set-up.bar.up', { from }, voice);
  return say('print.set-up.bar.between', { from, to: sayLength(heights.to, voice) }, voice);
}

function runningPairs(setUp: SetUp, voice: Shown): Pair[] {
  const { speed, rim, feedRate, feedBy, mark, passes } = setUp;
  const turns = { speed: sayFigure(String(speed), voice.language), rim: figure(rim, 1, voice) };
  const feed = { feed: sayFeed(feedRate, voice), pitch: sayLength(mark.pitch, voice) };
  const depths = sayAll(
    passes.map(({ depth }) => sayLength(depth, voice)),
    'print.set-up.passes.then',
    voice,
  );
  return [
    [say('print.set-up.speed', {}, voice), say('print.set-up.speed.rim', turns, voice)],
    [
      say('print.set-up.feed', {}, voice),
      say(feedBy === 'hand' ? 'print.set-up.feed.hand' : 'print.set-up.feed.feeder', feed, voice),
    ],
    [say('print.set-up.power', {}, voice), powerWords(setUp, voice)],
    [
      say('print.set-up.passes', {}, voice),
      passes.length === 1
        ? say('print.set-up.passes.one', { depth: depths }, voice)
        : say('print.set-up.passes.more', { depths }, voice),
    ],
  ];
}

/** A frame's part is cut on its ends or along its edges, a panel all round. */
function powerWords({ power, powerEnd, frame }: SetUp, voice: Shown): string {
  const along = { least: sayWatts(power.least), most: sayWatts(power.most) };
  const ends = { least: sayWatts(powerEnd.least), most: sayWatts(powerEnd.most) };
  if (frame?.kind === 'cope') return say('print.set-up.power.ends', ends, voice);
  if (frame !== undefined) return say('print.set-up.power.along', along, voice);
  return say('print.set-up.power.both', { ...along, leastEnds: ends.least, mostEnds: ends.most }, voice);
}

function sayWatts(watts: number): string {
  return formatNumber(watts < 100 ? watts : Math.round(watts / 10) * 10, 0);
}

/** The correction for one reading each way: the others are in proportion, and all stand on the sheet and in the JSON. */
function correctionPairs({ correction }: Plan, place: number, voice: Report): Pair[] {
  const row = correction[place]?.find(({ reads }) => reads > 0);
  if (row === undefined || (row.spindle === null && row.fence === null)) return [];
  const by = (mm: number) => ({ by: sayLength(Math.abs(mm), voice) });
  const spindle =
    row.spindle === null
      ? null
      : say(row.spindle > 0 ? 'print.set-up.spindle.up' : 'print.set-up.spindle.down', by(row.spindle), voice);
  const knives =
    row.fence === null
      ? null
      : say(row.fence > 0 ? 'print.set-up.knives.out' : 'print.set-up.knives.in', by(row.fence), voice);
  const moves =
    spindle !== null && knives !== null
      ? say('print.set-up.correct.either', { spindle, knives }, voice)
      : (spindle ?? knives ?? '');
  return [[say('print.set-up.too-thick', { reads: sayLength(row.reads, voice) }, voice), moves]];
}

/** m/min, and what shops that measure in inches say beside it. */
function sayFeed(feed: number, voice: Shown): string {
  const metric = `${figure(feed, 2, voice)} m/min`;
  return voice.units === 'mm' ? metric : `${metric} (${formatNumber(feed / 0.3048, 0)} ft/min)`;
}

function figure(value: number, digits: number, { language }: Shown): string {
  return sayFigure(formatNumber(value, digits), language);
}

/** A label and what it stands for, in lines of its own where it is long. */
function setPair(label: string, value: string, width: number): string[] {
  const [first = '', ...rest] = wrap(safe(value), SHEET_WIDTH - width - 2, 0);
  const [line = ''] = setPairs([[label, first]], width);
  return [line, ...rest.map((more) => `${' '.repeat(width + 2)}${more}`)];
}
