import type { Report } from '@fielded/core';
import { type Box, rectangle } from '@fielded/geometry';
import type { ScaleLinear } from 'd3-scale';
import { scaleLinear } from 'd3-scale';
import { stroke } from '../geometry/stroke.ts';
import type { Item, Role, Scene } from '../scene.ts';
import { group, itemsBox, moveItems, path, text } from '../scene.ts';
import { fitText, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayChart } from '../words/english/chart.ts';
import { type InVoice, spokenNumber } from '../words/lengths.ts';
import { drawStatements } from '../words/statement-marks.ts';
import { errorLines } from '../words/status.ts';

/** Capital heights on a chart, paper mm. */
export const FIGURE_HEIGHT = 2.5;
const WORDS = 3;
const TITLE = 3.5;

/** How wide every chart is between its axes' ends, paper mm. */
export const CHART_WIDTH = 130;

const TICK = 1.5;
const MOST_ERROR_LINES = 12;
const MARGIN = 8;

/** A quantity's scale along an axis, the unit its figures are in, and the digits they take. */
export interface Axis {
  readonly scale: ScaleLinear<number, number>;
  readonly ticks: readonly number[];
  readonly say: (value: number, voice: InVoice) => string;
}

/** What a chart is of. */
type Chart = 'spread' | 'season';

/** Lengths on a chart are in the job's unit: mm, or decimal inches. */
export function inUnit(mm: number, units: Report['units']): number {
  return units === 'mm' ? mm : mm / 25.4;
}

/** The name of that unit. */
export function unitName(units: Report['units']): string {
  return units === 'mm' ? 'mm' : 'in';
}

/** An axis over the given values with round ends and about `count` round ticks, `from` to `to` on the paper. */
export function makeAxis(values: readonly number[], from: number, to: number, count: number): Axis {
  const [least, most] = extent(values);
  const spare = Math.max((most - least) * 0.04, 1e-3);
  return readAxis(
    scaleLinear()
      .domain([least - spare, most + spare])
      .range([from, to])
      .nice(count),
    count,
  );
}

/** An axis that ends exactly at the least and the greatest of the values. */
export function makeTightAxis(values: readonly number[], from: number, to: number, count: number): Axis {
  return readAxis(scaleLinear().domain(extent(values)).range([from, to]), count);
}

function extent(values: readonly number[]): [number, number] {
  return [Math.min(...values), Math.max(...values)];
}

function readAxis(scale: ScaleLinear<number, number>, count: number): Axis {
  const ticks = scale.ticks(count);
  const step = ticks.length > 1 ? ticks[1]! - ticks[0]! : 1;
  const digits = Math.max(0, -Math.floor(Math.log10(step)));
  return { scale, ticks, say: (value, voice) => spokenNumber(value, digits, voice) };
}

/** A straight stroke. */
export function chartStroke(key: string, role: Role, x0: number, y0: number, x1: number, y1: number): Item {
  return path(key, role, [stroke(x0, y0, x1, y1)]);
}

/** A filled rectangle. */
export function bar(key: string, role: Role, x0: number, y0: number, x1: number, y1: number): Item {
  return path(key, role, [rectangle({ x0, y0, x1, y1 })]);
}

/** The axis under a chart: its line, ticks, figures and what it measures. */
export function drawAxisBelow({ scale, ticks, say }: Axis, y: number, title: string, voice: InVoice): Item {
  const [from, to] = scale.range() as [number, number];
  return group('axis below', [
    chartStroke('line', 'thin', from, y, to, y),
    ...ticks.flatMap((tick, i) => [
      chartStroke(`tick ${i}`, 'thin', scale(tick), y, scale(tick), y + TICK),
      text(
        `figure ${i}`,
        'quiet',
        scale(tick),
        y + TICK + 1 + FIGURE_HEIGHT,
        say(tick, voice),
        FIGURE_HEIGHT,
        'middle',
      ),
    ]),
    ...(title === ''
      ? []
      : [text('title', 'text', (from + to) / 2, y + TICK + 5 + FIGURE_HEIGHT + WORDS, title, WORDS, 'middle')]),
  ]);
}

/** The axis at the left of a chart, its title standing above it. */
export function drawAxisLeft({ scale, ticks, say }: Axis, x: number, title: string, voice: InVoice): Item {
  const [bottom, top] = scale.range() as [number, number];
  return group('axis left', [
    chartStroke('line', 'thin', x, bottom, x, top),
    ...ticks.flatMap((tick, i) => [
      chartStroke(`tick ${i}`, 'thin', x - TICK, scale(tick), x, scale(tick)),
      text(
        `figure ${i}`,
        'quiet',
        x - TICK - 1,
        scale(tick) + FIGURE_HEIGHT / 2,
        say(tick, voice),
        FIGURE_HEIGHT,
        'end',
      ),
    ]),
    text('title', 'text', x, top - 4, title, WORDS),
  ]);
}

/** The lines under a chart: a thin rule, the job's title, what the chart is, both statements, what it says in sentences, and the job's errors. */
function drawChartFoot(report: Report, chart: Chart, above: Box, sentences: readonly string[]): Item {
  const { x0, x1 } = above;
  const rule = above.y1 + 8;
  const room = x1 - x0;
  const titled = wrapText(safeText(report.title), TITLE, room);
  const named = rule + 8 + (titled.length - 1) * 5.4 + 5;
  const statements = drawStatements(report, x0, named + 6, FIGURE_HEIGHT, room);
  const lines = [
    ...sentences
      .flatMap((sentence) => wrapText(sentence, FIGURE_HEIGHT, room))
      .map((words) => ['text', words] as const),
    ...errorLines(report, FIGURE_HEIGHT, room, MOST_ERROR_LINES).map((words) => ['trouble-text', words] as const),
  ];
  return group('foot', [
    chartStroke('rule', 'thin', x0, rule, x1, rule),
    ...titled.map((words, i) => text(`title ${i}`, 'text', x0, rule + 8 + i * 5.4, words, TITLE)),
    text(
      'name',
      'quiet',
      x0,
      named,
      fitText(sayChart(`view.${chart}`, {}, report), FIGURE_HEIGHT, room),
      FIGURE_HEIGHT,
    ),
    group('statements', statements.items),
    ...lines.map(([role, words], i) =>
      text(`line ${i}`, role, x0, statements.base + 6 + i * 4.8, words, FIGURE_HEIGHT),
    ),
  ]);
}

/** Items as a finished scene on paper just large enough for them. A chart has no scale of wood to paper. */
export function finishChart(report: Report, chart: Chart, items: readonly Item[], sentences: readonly string[]): Scene {
  const all = [...items, drawChartFoot(report, chart, itemsBox(items)!, sentences)];
  const box = itemsBox(all)!;
  return {
    width: box.x1 - box.x0 + 2 * MARGIN,
    height: box.y1 - box.y0 + 2 * MARGIN,
    scale: 1,
    title: sayChart(`title.${chart}`, { job: safeText(report.title) }, report),
    description: sentences.map(safeText).join(' '),
    items: moveItems(all, MARGIN - box.x0, MARGIN - box.y0),
  };
}
