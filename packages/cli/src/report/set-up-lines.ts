import { formatNumber, type Plan, type Report, type SetUp, sayCurve } from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint } from '../terminal/paint.ts';
import { setPairs, wrap } from '../terminal/table.ts';
import { type Shown, sayLength } from './figures.ts';
import { WIDTH } from './plain-report.ts';

/** Everything of one set-up, a figure a line. `place` is its place in the plan. */
export function setUpLines(plan: Plan, place: number, report: Report, paint: Paint): string[] {
  const setUp = plan.setups[place]!;
  const pairs = [
    ...toolPairs(setUp),
    ...heightPairs(setUp, report),
    ...guidePairs(setUp, report),
    ...runningPairs(setUp, report),
  ];
  return [
    paint(`${nameSetUp(plan, place)}: ${safe(setUp.cut)}`, 'heading'),
    ...pairs.flatMap(([label, value]) => setPair(label, value)),
    ...sayCurve(setUp, report).flatMap((words, k) => setPair(k === 0 ? 'Curve' : '', words)),
    ...correctionLines(plan, place, report),
  ];
}

/** With both heads at once the two cuts of the panel are one set-up: a lower and an upper head. */
function nameSetUp({ setups, stack }: Plan, place: number): string {
  const isStacked = ({ of, cut }: SetUp) =>
    stack?.works === true && of === 'panel' && [stack.lower, stack.upper].includes(cut);
  const shared = setups.slice(0, place).some(isStacked) ? 1 : 0;
  const setUp = setups[place]!;
  const number = `Set-up ${place + 1 - shared}`;
  if (!isStacked(setUp)) return number;
  return `${number}, ${setUp.cut === stack!.lower ? 'lower' : 'upper'} head`;
}

type Pair = readonly [label: string, value: string];

/** What is mounted, how the work is held, and which way it goes. */
function toolPairs(setUp: SetUp): Pair[] {
  const held =
    setUp.presented === 0 ? 'flat' : setUp.presented === 90 ? 'on edge' : `tilted ${formatNumber(setUp.presented, 1)}°`;
  const knife = setUp.knife === null ? 'to be ground' : setUp.knife;
  return [
    ['Machine', `${setUp.machine}, head ${setUp.head}, knife ${knife}`],
    [
      'Runs',
      `${setUp.run === 'under' ? 'under the stock' : 'above the stock'}, held ${held}${setUp.turnedOver ? '; head turned over' : ''}`,
    ],
    [
      'Turns',
      `${setUp.rotation} seen from above, feed ${setUp.feedDirection}${setUp.assumed ? ' (hand ASSUMED: ask)' : ''}`,
    ],
    ...(setUp.slot === null ? [] : [['Slot', `the one marked for ${setUp.slot}`] as const]),
  ];
}

function heightPairs({ cuttingPoint, seat, hole }: SetUp, voice: Shown): Pair[] {
  const length = (mm: number) => sayLength(mm, voice);
  return [
    ['Cutting point', `${length(cuttingPoint)} above the table`],
    ['Seat of the head', seat === null ? 'not known' : length(seat)],
    [
      'Table ring',
      hole === null
        ? 'none needed'
        : `${hole.ring === null ? 'none' : length(hole.ring)}, needs ${length(hole.needed)}`,
    ],
  ];
}

/** What the work goes along: the fence, or a bearing inside a frame. */
function guidePairs({ fence, frame, curve }: SetUp, voice: Shown): Pair[] {
  const length = (mm: number) => sayLength(mm, voice);
  if (frame?.kind === 'back edge')
    return [
      ['Bearing', `${length(frame.bearing)} radius, no fence; knives stand out ${length(fence.standsOut)}`],
      ['Inside corners', `keep a radius of ${length(frame.corner)}`],
    ];
  if (curve?.alone) return [['Edge to axis', `${length(fence.toAxis)}, on a bearing or a ring fence`]];
  const bar = (heights: SetUp['fence']['bar']) =>
    heights === null
      ? 'nowhere: no wood is left at the edge'
      : heights.to === null
        ? `from ${length(heights.from)} up`
        : `${length(heights.from)} to ${length(heights.to)}`;
  return [
    ['Fence to axis', `${length(fence.toAxis)}; knives stand out ${length(fence.standsOut)}`],
    ['Gap in the fence', length(fence.gap)],
    ['Bar across it', bar(fence.bar)],
    ...(fence.barEdges === undefined ? [] : [['  after ripping', bar(fence.barEdges)] as const]),
  ];
}

function runningPairs(setUp: SetUp, voice: Shown): Pair[] {
  const { speed, rim, feedRate, feedBy, mark, power, powerEnd, passes, frame } = setUp;
  const depths = passes.map(({ depth }) => sayLength(depth, voice)).join(', then ');
  // A frame's part is cut on its ends or along its edges, a panel all round.
  const bands = [
    ...(frame?.kind === 'cope' ? [] : [`${sayBand(power)} along the grain`]),
    ...(frame !== undefined && frame.kind !== 'cope' ? [] : [`${sayBand(powerEnd)} on ends`]),
  ];
  return [
    ['Speed', `${speed} a minute, ${formatNumber(rim, 1)} m/s at the rim`],
    [
      'Feed',
      `${sayFeed(feedRate, voice.units)} ${feedBy === 'hand' ? 'by hand at most' : 'by the feeder'}; marks ${sayLength(mark.pitch, voice)} apart`,
    ],
    ['Power', bands.join(', ')],
    ['Passes', depths + (passes.length === 1 ? ' deep in one' : ' deep')],
  ];
}

function sayBand({ least, most }: SetUp['power']): string {
  const watts = (w: number) => formatNumber(w < 100 ? w : Math.round(w / 10) * 10, 0);
  return `${watts(least)} to ${watts(most)} W`;
}

/** The correction for one reading each way: the others are in proportion, and all stand on the sheet and in the JSON. */
function correctionLines({ correction }: Plan, place: number, voice: Report): string[] {
  const row = correction[place]?.find(({ reads }) => reads > 0);
  if (row === undefined || (row.spindle === null && row.fence === null)) return [];
  const moves = [
    row.spindle === null
      ? null
      : `spindle ${sayLength(Math.abs(row.spindle), voice)} ${row.spindle > 0 ? 'up' : 'down'}`,
    row.fence === null ? null : `knives ${sayLength(Math.abs(row.fence), voice)} ${row.fence > 0 ? 'out' : 'in'}`,
  ].filter((move) => move !== null);
  return setPairs([[`${sayLength(row.reads, voice)} too thick`, moves.join(', or ')]]);
}

/** m/min, and what shops that measure in inches say beside it. */
function sayFeed(feed: number, units: Report['units']): string {
  const metric = `${formatNumber(feed, 2)} m/min`;
  return units === 'mm' ? metric : `${metric} (${formatNumber(feed / 0.3048, 0)} ft/min)`;
}

const LABEL_WIDTH = 19;

/** A label and what it stands for, in lines of its own where it is long. */
function setPair(label: string, value: string): string[] {
  const [first = '', ...rest] = wrap(safe(value), WIDTH - LABEL_WIDTH - 2, 0);
  const [line = ''] = setPairs([[label, first]], LABEL_WIDTH);
  return [line, ...rest.map((more) => `${' '.repeat(LABEL_WIDTH + 2)}${more}`)];
}
