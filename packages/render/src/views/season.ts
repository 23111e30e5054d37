import { formatLength, formatNumber, type Report, type SeasonReport, type SeasonState } from '@fielded/core';
import { polygon } from '@fielded/geometry';
import type { Item, Scene } from '../scene.ts';
import { group, itemsBox, moveItems, path, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';
import {
  type Axis,
  bar,
  CHART_WIDTH,
  drawAxisBelow,
  drawAxisLeft,
  FIGURE,
  finishChart,
  inUnit,
  makeAxis,
  makeTightAxis,
  stroke,
  unitName,
} from './chart.ts';
import { placeFigures } from './free-place.ts';

type Units = Report['units'];
type Named = SeasonState & { readonly name: string };

const HEIGHT = 60;
const LOWER = 34;
const NAME = 'Insertion through the year';

/**
 * How far the panel's edge goes into the groove, and how much room its tongue has there, from the driest to the dampest: the
 * groove's mouth and bottom, the strip that comes out bare, and the three states the job gives, joined by straight lines as
 * wood moves very nearly in proportion to its moisture.
 *
 * `width` is that of the charts between their axes' ends, paper mm. @throws RangeError for a report without seasons.
 */
export function seasonScene(report: Report, width: number = CHART_WIDTH): Scene {
  const { season, units } = report;
  if (season === undefined) throw new RangeError('this report has no seasons to draw');
  const states: Named[] = (['driest', 'made', 'dampest'] as const)
    .map((name) => ({ ...season[name], name: name === 'made' ? 'as made' : name }))
    .sort((a, b) => a.moisture - b.moisture);
  const x = makeAxis(
    states.map(({ moisture }) => moisture),
    0,
    width,
    6,
  );
  const above = insertionChart(report, season, states, x, width);
  const below = clearanceChart(states, x, units, width);
  const gap = itemsBox(above)!.y1 + 8 - itemsBox(below)!.y0;
  const items = [group('insertion', above), group('clearance', moveItems(below, 0, gap))];
  return finishChart(report, NAME, items, sentences(season, units));
}

function insertionChart(
  { frame, units }: Report,
  season: SeasonReport,
  states: readonly Named[],
  x: Axis,
  width: number,
): Item[] {
  const depth = frame.groove.depth;
  const values = [0, depth, ...states.map(({ insertion }) => insertion)].map((mm) => inUnit(mm, units));
  const y = makeTightAxis(values, HEIGHT, 0, 6);
  const at = (mm: number) => y.scale(inUnit(mm, units));
  const points = states.map(({ moisture, insertion }) => [x.scale(moisture), at(insertion)] as const);
  const made = at(season.made.insertion);
  const bare = points.map(([px, py]) => [px, Math.max(py, made)] as const);
  const shows = bare.some(([, py]) => py > made + 0.05);
  const bareText = shows ? bareWords(points, made) : [];
  return [
    bar('groove', 'removed', 0, at(depth), width, at(0)),
    ...(shows
      ? [path('bare', 'paper', [polygon([...bare, [points.at(-1)![0], made], [points[0]![0], made]], true)])]
      : []),
    stroke('bottom', 'outline', 0, at(depth), width, at(depth)),
    text('bottom words', 'quiet', width + 2, at(depth) + FIGURE / 2, "groove's bottom", FIGURE),
    stroke('mouth', 'outline', 0, at(0), width, at(0)),
    text('mouth words', 'quiet', width + 2, at(0) + FIGURE / 2, "groove's mouth", FIGURE),
    stroke('made', 'old', points[0]![0], made, points.at(-1)![0], made),
    path('edge', 'judged', [polygon(points, false)]),
    ...bareText,
    ...stateMarks(
      states,
      points,
      [at(depth), at(0), made],
      { width, height: HEIGHT },
      ({ insertion }) => sayFigure(insertion, units),
      bareText,
    ),
    stateNames(states, x, HEIGHT + 11),
    drawAxisLeft(y, 0, `insertion, ${unitName(units)}`),
    drawAxisBelow(x, HEIGHT, ''),
  ];
}

/** Names the strip that comes out of the groove, over its widest end, where it is tall and long enough to be named. */
function bareWords(points: readonly (readonly [number, number])[], made: number): Item[] {
  const [x, now] = points[0]!;
  const words = 'comes out bare';
  if (now - made < 1 || points[1]![0] - x < textWidth(words, FIGURE) + 3) return [];
  return [text('bare words', 'quiet', x + 0.5, made - 1.5, words, FIGURE)];
}

/** A small upright stroke at each state, and its figure where it is clear of the lines. */
function stateMarks(
  states: readonly Named[],
  points: readonly (readonly [number, number])[],
  levels: readonly number[],
  { width, height }: { readonly width: number; readonly height: number },
  figure: (state: Named) => string,
  beside: readonly Item[] = [],
): Item[] {
  const marks = states.map(({ name }, i) => {
    const [px, py] = points[i]!;
    return { key: `mark ${name}`, from: [px, py - 1.2] as const, to: [px, py + 1.2] as const };
  });
  const lines = [
    ...marks,
    ...levels.map((y) => ({ from: [0, y] as const, to: [width, y] as const })),
    ...points.slice(1).map((to, i) => ({ from: points[i]!, to })),
  ];
  const figures = states.map((state, i) => ({ at: points[i]!, words: figure(state) }));
  return [
    ...marks.map(({ key, from, to }) => stroke(key, 'judged', ...from, ...to)),
    ...placeFigures('state', figures, lines, { x0: 0.5, y0: -1, x1: width + 20, y1: height - 0.5 }, beside),
  ];
}

/** A figure in the unit of the axis beside it. */
function sayFigure(mm: number, units: Units): string {
  return `${formatNumber(inUnit(mm, units), units === 'mm' ? 2 : 4)} ${unitName(units)}`;
}

/** The states' names over the places of their moistures; one too near the last to be read is left out. */
function stateNames(states: readonly Named[], x: Axis, y: number): Item {
  let free = Number.NEGATIVE_INFINITY;
  return group(
    'names',
    states.flatMap(({ name, moisture }) => {
      const middle = x.scale(moisture);
      const half = textWidth(name, FIGURE) / 2;
      if (middle - half < free) return [];
      free = middle + half + 2;
      return [text(name, 'text', middle, y, name, FIGURE, 'middle')];
    }),
  );
}

function clearanceChart(states: readonly Named[], x: Axis, units: Units, width: number): Item[] {
  const known = states.filter(({ clearance }) => clearance !== null);
  const values = [0, ...known.map(({ clearance }) => inUnit(clearance!, units))];
  // Room above and below for the figures.
  const room = (Math.max(...values) - Math.min(...values)) * 0.2;
  const y = makeAxis([Math.min(...values) - room, Math.max(...values) + room], LOWER, 0, 4);
  const points = known.map(
    ({ moisture, clearance }) => [x.scale(moisture), y.scale(inUnit(clearance!, units))] as const,
  );
  return [
    stroke('nothing', 'old', 0, y.scale(0), width, y.scale(0)),
    text('nothing words', 'quiet', width + 2, y.scale(0) + FIGURE / 2, 'no room left', FIGURE),
    path('clearance', 'judged', points.length > 1 ? [polygon(points, false)] : []),
    ...stateMarks(known, points, [y.scale(0)], { width, height: LOWER }, ({ clearance }) =>
      sayFigure(clearance!, units),
    ),
    drawAxisLeft(y, 0, `clearance, ${unitName(units)}`),
    drawAxisBelow(x, LOWER, 'moisture of the panel, %'),
  ];
}

/** How the panel is held, in words. */
function heldWords(pinned: SeasonReport['pinned']): string {
  if (pinned === 'edge') return 'pinned along one edge';
  return pinned ? 'pinned at its centre' : 'free to slide';
}

function shownWords(bare: number, units: Units): string {
  return bare < 0.005
    ? 'No bare wood shows'
    : `${formatLength(bare, units)} shows that lay in the groove when it was made`;
}

function roomWords(gap: number, units: Units): string {
  return gap < 0
    ? `at the dampest the panel is ${formatLength(-gap, units)} too wide at each edge`
    : `at the dampest ${formatLength(gap, units)} is left at the groove's bottom`;
}

function sentences(season: SeasonReport, units: Units): string[] {
  const { across, thickness } = season.coefficients;
  const { driest, dampest } = season;
  const bare = Math.max(driest.bare, dampest.bare);
  return [
    `${season.species.charAt(0).toUpperCase()}${season.species.slice(1)}, ${formatLength(season.width, units)} wide, ${heldWords(season.pinned)}: moves by ${formatNumber(across, 5)} of its width and ${formatNumber(thickness, 5)} of its thickness for each % of moisture (USDA Wood Handbook, table 13-5).`,
    `${shownWords(bare, units)}; ${roomWords(dampest.bottomGap, units)}.`,
  ];
}
