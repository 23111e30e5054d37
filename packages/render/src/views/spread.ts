import { type Arrangement, adviseRuns, listRuns, type Report, type SpreadReport, shareSentence } from '@fielded/core';
import { polygon } from '@fielded/geometry';
import type { Item, Scene } from '../scene.ts';
import { group, itemsBox, moveItems, path, text } from '../scene.ts';
import { fitText, textWidth } from '../text/measure-text.ts';
import { sayChart } from '../words/english/chart.ts';
import { type InVoice, spokenNumber } from '../words/lengths.ts';
import {
  type Axis,
  bar,
  CHART_WIDTH,
  chartStroke,
  drawAxisBelow,
  drawAxisLeft,
  FIGURE_HEIGHT,
  finishChart,
  inUnit,
  makeAxis,
  unitName,
} from './chart.ts';
import { drawVerdictBands } from './verdict-bands.ts';

const HEIGHT = 62;

/**
 * Two charts of a joint's spread: its clearance against stock thickness, for the way the cuts are run and the others, and the
 * simulated clearances as a histogram with the worst case and the root of squares under it. The verdicts lie behind both.
 *
 * `width` is that of the charts between their axes' ends, paper mm. @throws RangeError for a report without a spread.
 */
export function spreadScene(report: Report, width: number = CHART_WIDTH): Scene {
  const { spread, units, section } = report;
  if (spread === undefined) throw new RangeError('this report has no spread to draw');
  const above = thicknessChart(spread, section.cuts, report, width);
  const below = histogram(spread, report, width);
  const gap = itemsBox(above)!.y1 + 14 - itemsBox(below)!.y0;
  const items = [group('by thickness', above), group('simulated', moveItems(below, 0, gap))];
  return finishChart(report, 'spread', items, [
    shareSentence(spread.clearance.simulated, report),
    adviseRuns(spread, section.cuts, units, report),
  ]);
}

/** Clearance against stock thickness: the way the cuts are run in full, others that differ from it dashed. */
function thicknessChart(spread: SpreadReport, cuts: Report['section']['cuts'], voice: InVoice, width: number): Item[] {
  const { units } = voice;
  const convert = (points: Arrangement['byThickness']) =>
    points.map(([thickness, clearance]) => [inUnit(thickness, units), inUnit(clearance, units)] as const);
  const given = spread.arrangements.find((arrangement) => arrangement.given)!;
  const lines = [given, ...spread.arrangements.filter((other) => differs(other, given))];
  const points = lines.map(({ byThickness }) => convert(byThickness));
  const x = makeAxis(
    points[0]!.map(([thickness]) => thickness),
    0,
    width,
    6,
  );
  const { snug, loose } = spread.limits;
  const y = makeAxis(
    [...points.flat().map(([, clearance]) => clearance), 0, inUnit(loose, units), inUnit(snug, units)],
    HEIGHT,
    0,
    6,
  );
  const unit = unitName(units);
  const curve = (key: string, role: 'judged' | 'hidden', list: readonly (readonly [number, number])[]) =>
    path(key, role, [
      polygon(
        list.map(([a, b]) => [x.scale(a), y.scale(b)] as const),
        false,
      ),
    ]);
  return [
    drawVerdictBands(y, spread.limits, voice, [0, width], false),
    ...points.slice(1).map((list, i) => curve(`other ${i}`, 'hidden', list)),
    curve('as run', 'judged', points[0]!),
    thicknessRange(spread, given, x, voice),
    lineKey(listRuns(given.runs, cuts, voice), points.length > 1, width, voice),
    drawAxisBelow(x, HEIGHT, sayChart('axis.thickness', { unit }, voice), voice),
    drawAxisLeft(y, 0, sayChart('axis.clearance', { unit }, voice), voice),
  ];
}

/** Whether another way to run has the clearance change with stock thickness at another rate. */
function differs(other: Arrangement, given: Arrangement): boolean {
  const slope = ({ sources }: Arrangement) => sources.find(({ name }) => name === 'panel.thickness')!.slope;
  return Math.abs(slope(other) - slope(given)) > 1e-6;
}

/** The ± of the stock as a bracket under the line. */
function thicknessRange(spread: SpreadReport, given: Arrangement, x: Axis, voice: InVoice): Item {
  const { units } = voice;
  const { plusMinus } = spread.clearance.sources.find(({ name }) => name === 'panel.thickness')!;
  const middle = given.byThickness[(given.byThickness.length - 1) / 2]![0];
  const [from, to] = [x.scale(inUnit(middle - plusMinus, units)), x.scale(inUnit(middle + plusMinus, units))];
  const base = HEIGHT - 3;
  const words = `± ${spokenNumber(inUnit(plusMinus, units), units === 'mm' ? 2 : 4, voice)}`;
  return group('stock', [
    chartStroke('from', 'dimension', from, base - 1.2, from, base + 1.2),
    chartStroke('to', 'dimension', to, base - 1.2, to, base + 1.2),
    chartStroke('range', 'dimension', from, base, to, base),
    text('plus minus', 'quiet', to + 2, base + FIGURE_HEIGHT / 2, words, FIGURE_HEIGHT),
  ]);
}

/** What the full line is and what the dashed ones are, above the chart at the right. */
function lineKey(runs: string, others: boolean, width: number, voice: InVoice): Item {
  const words = fitText(sayChart('spread.as-run', { runs }, voice), FIGURE_HEIGHT, width * 0.62);
  const left = width - textWidth(words, FIGURE_HEIGHT);
  // Clear of what the axis measures, which stands above it at the left.
  const up = left - 10 < BESIDE_TITLE ? KEY_ABOVE : 0;
  const rows: Item[] = [
    chartStroke('as run line', 'judged', left - 10, -8.2, left - 2, -8.2),
    text('as run', 'judged-text', left, -7, words, FIGURE_HEIGHT),
  ];
  if (others) {
    rows.push(
      chartStroke('other line', 'hidden', left - 10, -3.8, left - 2, -3.8),
      text('other ways', 'quiet', left, -2.6, sayChart('spread.other-ways', {}, voice), FIGURE_HEIGHT),
    );
  }
  return group('key', moveItems(rows, 0, -up));
}

/** How far the title of the axis at the left reaches to the right, and how far a key stands above it where it has no room beside it, mm. */
const [BESIDE_TITLE, KEY_ABOVE] = [30, 7];

/** Simulated clearances, with bars for the worst case and the root of squares. */
function histogram(spread: SpreadReport, voice: InVoice, width: number): Item[] {
  const { units } = voice;
  const { simulated, worst, rss, nominal } = spread.clearance;
  const { from, step, counts } = simulated.histogram;
  const held = counts.flatMap((count, i) => (count > 0 ? [i] : []));
  const ends = [from + step * held[0]!, from + step * (held[held.length - 1]! + 1)];
  const x = makeAxis(
    [...ends, ...worst, 0, spread.limits.snug].map((mm) => inUnit(mm, units)),
    0,
    width,
    7,
  );
  const tallest = Math.max(...counts);
  const at = (mm: number) => x.scale(inUnit(mm, units));
  const bars = held.map((i) => {
    const left = at(from + step * i);
    const right = at(from + step * (i + 1));
    return bar(
      `bar ${i}`,
      'arrow',
      left,
      HEIGHT - (counts[i]! / tallest) * (HEIGHT - 6),
      right - Math.min(0.2, (right - left) / 4),
      HEIGHT,
    );
  });
  const spans = [
    { key: 'at the very worst', words: sayChart('spread.worst', {}, voice), ends: worst, y: HEIGHT + 20 },
    { key: 'root of squares', words: sayChart('spread.rss', {}, voice), ends: rss, y: HEIGHT + 26 },
  ].map(({ key, words, ends: [low, high], y }) =>
    group(key, [
      chartStroke('low', 'outline', at(low), y - 1.2, at(low), y + 1.2),
      chartStroke('high', 'outline', at(high), y - 1.2, at(high), y + 1.2),
      chartStroke('span', 'outline', at(low), y, at(high), y),
      text('words', 'quiet', at(high) + 2.5, y + FIGURE_HEIGHT / 2, words, FIGURE_HEIGHT),
    ]),
  );
  return [
    drawVerdictBands(x, spread.limits, voice, [0, HEIGHT], true),
    ...bars,
    chartStroke('as set', 'judged', at(nominal), HEIGHT, at(nominal), 2),
    ...asSet(at(nominal), [0, spread.limits.snug, spread.limits.loose].map(at), voice),
    ...spans,
    drawAxisBelow(
      x,
      HEIGHT,
      sayChart('axis.simulated', { count: simulated.count, unit: unitName(units) }, voice),
      voice,
    ),
  ];
}

/** The words beside the line of the joint as set, on a side where no limit's line runs through them; none where both have one. */
function asSet(x: number, limits: readonly number[], voice: InVoice): Item[] {
  const words = sayChart('spread.as-set', {}, voice);
  const room = 1.5 + textWidth(words, FIGURE_HEIGHT) + 1;
  const isFree = (from: number, to: number) => !limits.some((limit) => limit > from + 0.1 && limit < to - 0.1);
  if (isFree(x, x + room)) return [text('as set words', 'judged-text', x + 1.5, 4, words, FIGURE_HEIGHT)];
  return isFree(x - room, x) ? [text('as set words', 'judged-text', x - 1.5, 4, words, FIGURE_HEIGHT, 'end')] : [];
}
