import { formatLength, type Report, type SetUp, say } from '@fielded/core';
import { polygon } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path, text } from '../scene.ts';
import { fitText } from '../text/measure-text.ts';
import { figureText } from '../words/lengths.ts';
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
  const { units } = report;
  const length = (mm: number) => formatLength(mm, units);
  const { passes, fence, frame } = setUp;
  const lines = [
    ...(upper
      ? [`Both heads on one spindle, a spacer of ${length(spacer!)} between them: the spacer sets the tongue.`]
      : []),
    passes.length === 1
      ? `One pass, ${length(passes[0]!.depth)} deep${upper ? ` below, ${length(upper.passes[0]!.depth)} above` : ''}.`
      : `${passes.length} passes, set ${passes.map(({ depth }) => length(depth)).join(', then ')} deep.`,
    sayPower(setUp),
    ...(setUp.feedBy === 'feeder' ? [say('plan.feeder', WHEELS[units], report)] : []),
    ...(frame === undefined ? [] : sayFrameSizes(frame, length)),
    ...(fence.barEdges === undefined ? [] : [`After ripping: bar ${sayBar(fence.barEdges, length)}.`]),
  ];
  const listed = listTexts('setting', lines, { x, y: y + SMALL + 0.5, width }, 'none');
  const below = drawCorrection(mounted, units, x, listed.y + 1, width);
  return [...listed.items, ...below.items, ...drawTestBoxes(setUp, units, x, below.y + 1.5, width)];
}

/** Along the grain and on ends; a part of the frame has one of them. */
function sayPower({ frame, power, powerEnd }: SetUp): string {
  const watts = (w: number) => String(w < 100 ? Math.round(w) : Math.round(w / 10) * 10);
  const band = ({ least, most }: SetUp['power']) => `${watts(least)} to ${watts(most)} W`;
  if (frame === undefined) return `Power ${band(power)}, on ends ${band(powerEnd)}.`;
  return `Power ${band(frame.kind === 'cope' ? powerEnd : power)}.`;
}

function sayBar(bar: SetUp['fence']['bar'], length: (mm: number) => string): string {
  if (bar === null) return 'nowhere';
  return bar.to === null ? `from ${length(bar.from)} up` : `${length(bar.from)} to ${length(bar.to)}`;
}

/** What to move when the calliper reads too much or too little. */
function drawCorrection({ correction: rows }: Mounted, units: Report['units'], x: number, y: number, width: number) {
  const first = 22;
  const column = (width - first) / Math.max(rows.length, 1);
  const signed = (mm: number) =>
    `${mm > 0 ? '+' : mm < 0 ? '−' : ''}${figureText(Math.abs(mm), units).text.replace(/^0\./, units === 'in' ? '.' : '0.')}`;
  const useful = rows.some(({ spindle, fence }) => spindle !== null || fence !== null);
  if (!useful) return { items: [], y };
  const lines: [string, string[]][] = [
    ['reads off by', rows.map(({ reads }) => signed(reads))],
    ['spindle up', rows.map(({ spindle }) => (spindle === null ? '–' : signed(spindle)))],
    ['or knives out', rows.map(({ fence }) => (fence === null ? '–' : signed(fence)))],
  ];
  const items = lines.flatMap(([label, cells], k): Item[] => {
    const base = y + k * (LINE + 0.3) + SMALL;
    return [
      text(`correction ${k}`, k === 0 ? 'quiet' : 'text', x, base, label, SMALL),
      ...cells.map((cell, n) =>
        text(`correction ${k} ${n}`, 'text', x + first + (n + 1) * column, base, cell, SMALL, 'end'),
      ),
    ];
  });
  items.push(path('correction rule', 'thin', [stroke(x, y + SMALL + 1.1, x + width, y + SMALL + 1.1)]));
  return { items, y: y + 3 * (LINE + 0.3) + 1 };
}

/** Boxes to write in what the test piece measured, with what it should. */
function drawTestBoxes(setUp: SetUp, units: Report['units'], x: number, y: number, width: number): Item[] {
  const { testPiece, frame } = setUp;
  const length = (mm: number) => formatLength(mm, units);
  const wanted =
    frame !== undefined
      ? sayFrameTest(frame, setUp.cuttingPoint, length)
      : testPiece === null
        ? 'Test piece measured:'
        : `Test piece, ${length(testPiece.at)} from its edge: ${length(testPiece.thickness)}`;
  const labels = frame === undefined ? ['end', 'edge', 'corrected'] : ['first', 'second', 'corrected'];
  const gap = (width - 3 * BOX.width) / 2;
  const boxes = labels.flatMap((label, k): Item[] => {
    const left = x + k * (BOX.width + gap);
    return [
      path(`${label} box`, 'fine', [
        polygon([
          [left, y + 5],
          [left + BOX.width, y + 5],
          [left + BOX.width, y + 5 + BOX.height],
          [left, y + 5 + BOX.height],
        ]),
      ]),
      text(`${label} word`, 'quiet', left + 1, y + 5 + SMALL + 0.8, label, 2.2),
    ];
  });
  return [text('test words', 'text', x, y + SMALL, fitText(wanted, SMALL, width), SMALL), ...boxes];
}
