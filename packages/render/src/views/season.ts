import type { Report, SeasonReport } from '@fielded/core';
import { polygon } from '@fielded/geometry';
import type { Item, Scene } from '../scene.ts';
import { group, itemsBox, moveItems, path, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';
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
  makeTightAxis,
  unitName,
} from './chart.ts';
import { type NamedState, sayFigure, stateMarks, stateNames } from './season-states.ts';

const HEIGHT = 60;
const LOWER = 34;

/**
 * How far the panel's edge goes into the groove, and how much room its tongue has there, from the driest to the dampest: the
 * groove's mouth and bottom, the strip that comes out bare, and the three states the job gives, joined by straight lines as
 * wood moves very nearly in proportion to its moisture.
 *
 * `width` is that of the charts between their axes' ends, paper mm. @throws RangeError for a report without seasons.
 */
export function seasonScene(report: Report, width: number = CHART_WIDTH): Scene {
  const { season } = report;
  if (season === undefined) throw new RangeError('this report has no seasons to draw');
  const states: NamedState[] = (['driest', 'made', 'dampest'] as const)
    .map((name) => ({
      ...season[name],
      key: name === 'made' ? 'as made' : name,
      name: sayChart(`state.${name}`, {}, report),
    }))
    .sort((a, b) => a.moisture - b.moisture);
  const x = makeAxis(
    states.map(({ moisture }) => moisture),
    0,
    width,
    6,
  );
  const above = insertionChart(report, season, states, x, width);
  const below = clearanceChart(states, x, report, width);
  const gap = itemsBox(above)!.y1 + 8 - itemsBox(below)!.y0;
  const items = [group('insertion', above), group('clearance', moveItems(below, 0, gap))];
  return finishChart(report, 'season', items, sentences(season, report));
}

function insertionChart(
  report: Report,
  season: SeasonReport,
  states: readonly NamedState[],
  x: Axis,
  width: number,
): Item[] {
  const { frame, units } = report;
  const depth = frame.groove.depth;
  const values = [0, depth, ...states.map(({ insertion }) => insertion)].map((mm) => inUnit(mm, units));
  const y = makeTightAxis(values, HEIGHT, 0, 6);
  const at = (mm: number) => y.scale(inUnit(mm, units));
  const points = states.map(({ moisture, insertion }) => [x.scale(moisture), at(insertion)] as const);
  const made = at(season.made.insertion);
  const bare = points.map(([px, py]) => [px, Math.max(py, made)] as const);
  const shows = bare.some(([, py]) => py > made + 0.05);
  const bareText = shows ? bareWords(points, made, report) : [];
  return [
    bar('groove', 'removed', 0, at(depth), width, at(0)),
    ...(shows
      ? [path('bare', 'paper', [polygon([...bare, [points.at(-1)![0], made], [points[0]![0], made]], true)])]
      : []),
    chartStroke('bottom', 'outline', 0, at(depth), width, at(depth)),
    text(
      'bottom words',
      'quiet',
      width + 2,
      at(depth) + FIGURE_HEIGHT / 2,
      sayChart('season.bottom', {}, report),
      FIGURE_HEIGHT,
    ),
    chartStroke('mouth', 'outline', 0, at(0), width, at(0)),
    text(
      'mouth words',
      'quiet',
      width + 2,
      at(0) + FIGURE_HEIGHT / 2,
      sayChart('season.mouth', {}, report),
      FIGURE_HEIGHT,
    ),
    chartStroke('made', 'old', points[0]![0], made, points.at(-1)![0], made),
    path('edge', 'judged', [polygon(points, false)]),
    ...bareText,
    ...stateMarks(
      states,
      points,
      [at(depth), at(0), made],
      { width, height: HEIGHT },
      ({ insertion }) => sayFigure(insertion, report),
      bareText,
    ),
    stateNames(states, x, HEIGHT + 11),
    drawAxisLeft(y, 0, sayChart('axis.insertion', { unit: unitName(units) }, report), report),
    drawAxisBelow(x, HEIGHT, '', report),
  ];
}

/** Names the strip that comes out of the groove, over its widest end, where it is tall and long enough to be named. */
function bareWords(points: readonly (readonly [number, number])[], made: number, voice: InVoice): Item[] {
  const [x, now] = points[0]!;
  const words = sayChart('season.bare', {}, voice);
  if (now - made < 1 || points[1]![0] - x < textWidth(words, FIGURE_HEIGHT) + 3) return [];
  return [text('bare words', 'quiet', x + 0.5, made - 1.5, words, FIGURE_HEIGHT)];
}

function clearanceChart(states: readonly NamedState[], x: Axis, voice: InVoice, width: number): Item[] {
  const { units } = voice;
  const known = states.filter(({ clearance }) => clearance !== null);
  const values = [0, ...known.map(({ clearance }) => inUnit(clearance!, units))];
  // Room above and below for the figures.
  const room = (Math.max(...values) - Math.min(...values)) * 0.2;
  const y = makeAxis([Math.min(...values) - room, Math.max(...values) + room], LOWER, 0, 4);
  const points = known.map(
    ({ moisture, clearance }) => [x.scale(moisture), y.scale(inUnit(clearance!, units))] as const,
  );
  return [
    chartStroke('nothing', 'old', 0, y.scale(0), width, y.scale(0)),
    text(
      'nothing words',
      'quiet',
      width + 2,
      y.scale(0) + FIGURE_HEIGHT / 2,
      sayChart('season.no-room', {}, voice),
      FIGURE_HEIGHT,
    ),
    path('clearance', 'judged', points.length > 1 ? [polygon(points, false)] : []),
    ...stateMarks(known, points, [y.scale(0)], { width, height: LOWER }, ({ clearance }) =>
      sayFigure(clearance!, voice),
    ),
    drawAxisLeft(y, 0, sayChart('axis.clearance', { unit: unitName(units) }, voice), voice),
    drawAxisBelow(x, LOWER, sayChart('axis.moisture', {}, voice), voice),
  ];
}

/** How the panel moves and how it is held; what comes out of the groove, and what room is left in it. */
function sentences(season: SeasonReport, voice: InVoice): string[] {
  const { driest, dampest, pinned, species, width, coefficients } = season;
  const held = pinned === 'edge' ? 'edge' : pinned ? 'centre' : 'free';
  const moves = {
    species: `${species.charAt(0).toUpperCase()}${species.slice(1)}`,
    width,
    across: spokenNumber(coefficients.across, 5, voice),
    thickness: spokenNumber(coefficients.thickness, 5, voice),
  };
  const bare = Math.max(driest.bare, dampest.bare);
  const shown = bare < 0.005 ? 'hidden' : 'shows';
  const gap = dampest.bottomGap;
  return [
    sayChart(`season.moves.${held}`, moves, voice),
    sayChart(`season.${shown}.${gap < 0 ? 'wide' : 'left'}`, { bare, gap: Math.abs(gap) }, voice),
  ];
}
