import { type Report, type SetUp, say, toMillimetres } from '@fielded/core';
import { rectangle } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path, text } from '../scene.ts';
import { fitText, textWidth } from '../text/measure-text.ts';
import { sayPlan } from '../words/english/plan.ts';
import { figureText, type InVoice, spokenLength, withDecimal } from '../words/lengths.ts';
import { sayFrameSizes, sayFrameTest } from './frame-words.ts';
import { LINE, listTexts, SMALL } from './lines.ts';
import type { Mounted } from './mounted.ts';

/** Boxes to write a measurement in. */
const BOX = { width: 25, height: 10 };

/** How far below the stock a feeder's wheels stand, mm (common practice). */
const WHEELS = { mm: { least: 3, most: 6 }, in: { least: 3.175, most: 6.35 } };

/** Passes, the bar, power, the correction, and boxes for the test piece. */
export function drawSetting(mounted: Mounted, report: Report, x: number, y: number, width: number): Item[] {
  const { setUp, upper, spacer } = mounted;
  const { fence, frame } = setUp;
  const lines = [
    ...(upper ? [sayPlan('set.both', { spacer: spacer! }, report)] : []),
    sayPasses(mounted, report),
    sayPower(setUp, report),
    ...(setUp.feedBy === 'feeder' ? [say('plan.feeder', WHEELS[report.units], report)] : []),
    ...(frame === undefined ? [] : sayFrameSizes(frame, report)),
    ...(fence.barEdges === undefined ? [] : [sayBar(fence.barEdges, report)]),
  ];
  const listed = listTexts('setting', lines, { x, y: y + SMALL + 0.5, width }, 'none');
  const below = drawCorrection(mounted, report, x, listed.y + 1, width);
  return [...listed.items, ...below.items, ...drawTestBoxes(setUp, report, x, below.y + 1.5, width)];
}

function sayPasses({ setUp: { passes }, upper }: Mounted, voice: InVoice): string {
  const [first] = passes;
  if (passes.length === 1 && upper) {
    const depths = { depth: first!.depth, upper: upper.passes[0]!.depth };
    return sayPlan('set.pass.both', depths, voice);
  }
  if (passes.length === 1) return sayPlan('set.pass', { depth: first!.depth }, voice);
  const depths = passes
    .map(({ depth }) => spokenLength(depth, voice))
    .reduce((one, other) => sayPlan('set.then', { one, other }, voice));
  return sayPlan('set.passes', { count: passes.length, depths }, voice);
}

/** Along the grain and on ends; a part of the frame has one of them. */
function sayPower({ frame, power, powerEnd }: SetUp, voice: InVoice): string {
  const watts = (w: number) => String(w < 100 ? Math.round(w) : Math.round(w / 10) * 10);
  const { least, most } = frame?.kind === 'cope' ? powerEnd : power;
  const band = { least: watts(least), most: watts(most) };
  if (frame !== undefined) return sayPlan('set.power', band, voice);
  const ends = { leastEnd: watts(powerEnd.least), mostEnd: watts(powerEnd.most) };
  return sayPlan('set.power.ends', { ...band, ...ends }, voice);
}

function sayBar(bar: SetUp['fence']['bar'], voice: InVoice): string {
  if (bar === null) return sayPlan('set.ripped.nowhere', {}, voice);
  const { from, to } = bar;
  return to === null ? sayPlan('set.ripped.up', { from }, voice) : sayPlan('set.ripped', { from, to }, voice);
}

/** Height of figures too long for the usual, white between two, and the least room of labels, mm. */
const SMALLER = 2.1;
const BETWEEN = 1;
const LABELS = 22;

/** What to move when the calliper reads too much or too little. */
function drawCorrection({ correction: rows }: Mounted, voice: InVoice, x: number, y: number, width: number) {
  const labels = (['set.reads', 'set.spindle', 'set.knives'] as const).map((key) => sayPlan(key, {}, voice));
  const signed = (mm: number) => `${mm > 0 ? '+' : mm < 0 ? '−' : ''}${readOff(Math.abs(mm), voice)}`;
  const useful = rows.some(({ spindle, fence }) => spindle !== null || fence !== null);
  if (!useful) return { items: [], y };
  const lines: [string, string[]][] = [
    [labels[0]!, rows.map(({ reads }) => signed(reads))],
    [labels[1]!, rows.map(({ spindle }) => (spindle === null ? '–' : signed(spindle)))],
    [labels[2]!, rows.map(({ fence }) => (fence === null ? '–' : signed(fence)))],
  ];
  const cellAt = (height: number) =>
    Math.max(...lines.flatMap(([, cells]) => cells.map((each) => textWidth(each, height))));
  // Long figures are lettered smaller before labels are cut short.
  const type = width - rows.length * (cellAt(SMALL) + BETWEEN) < LABELS ? SMALLER : SMALL;
  // The labels' column is as wide as they need to stand clear of the first figures, which are set right.
  const taken = lines.map(([label, cells]) => textWidth(label, type) + textWidth(cells[0]!, type));
  const clear = Math.max(...taken) + 0.8 - width / rows.length;
  const wanted = Math.max(LABELS, rows.length > 1 ? clear / (1 - 1 / rows.length) : 0);
  // A label is cut short before a figure is.
  const first = Math.min(wanted, width - rows.length * (cellAt(type) + (type === SMALL ? 0.3 : BETWEEN)));
  const column = (width - first) / rows.length;
  const items = lines.flatMap(([label, cells], k): Item[] => {
    const base = y + k * (LINE + 0.3) + SMALL;
    return [
      text(
        `correction ${k}`,
        k === 0 ? 'quiet' : 'text',
        x,
        base,
        fitText(label, type, first + column - textWidth(cells[0]!, type) - 0.5),
        type,
      ),
      ...cells.map((cell, n) =>
        text(`correction ${k} ${n}`, 'text', x + first + (n + 1) * column, base, cell, type, 'end'),
      ),
    ];
  });
  items.push(path('correction rule', 'thin', [stroke(x, y + SMALL + 1.1, x + width, y + SMALL + 1.1)]));
  return { items, y: y + 3 * (LINE + 0.3) + 1 };
}

/** A length as a calliper or a dial reads it: inches in thousandths, without the zero before them. */
function readOff(mm: number, voice: InVoice): string {
  if (voice.units === 'mm') return figureText(mm, voice).text;
  return withDecimal((mm / toMillimetres(1, 'in')).toFixed(3), voice).replace(/^0(?=[.,])/, '');
}

/** Boxes to write in what the test piece measured, with what it should. */
function drawTestBoxes(setUp: SetUp, voice: InVoice, x: number, y: number, width: number): Item[] {
  const { testPiece, frame } = setUp;
  const wanted =
    frame !== undefined
      ? sayFrameTest(frame, setUp.cuttingPoint, voice)
      : testPiece === null
        ? sayPlan('test.measured', {}, voice)
        : sayPlan('test.panel', testPiece, voice);
  const labels =
    frame === undefined ? (['end', 'edge', 'corrected'] as const) : (['first', 'second', 'corrected'] as const);
  const gap = (width - 3 * BOX.width) / 2;
  const boxes = labels.flatMap((label, k): Item[] => {
    const left = x + k * (BOX.width + gap);
    return [
      path(`${label} box`, 'fine', [rectangle({ x0: left, y0: y + 5, x1: left + BOX.width, y1: y + 5 + BOX.height })]),
      text(
        `${label} word`,
        'quiet',
        left + 1,
        y + 5 + SMALL + 0.8,
        fitText(sayPlan(`test.${label}`, {}, voice), 2.2, BOX.width - 2),
        2.2,
      ),
    ];
  });
  return [text('test words', 'text', x, y + SMALL, fitText(wanted, SMALL, width), SMALL), ...boxes];
}
