import {
  adviseRuns,
  facePhrase,
  formatNumber,
  type Report,
  type SpreadReport,
  sayShare,
  shareSentence,
} from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint } from '../terminal/paint.ts';
import { indent, left, right, setPairs, setTable, wrap } from '../terminal/table.ts';
import { say, sayAll } from '../words/say.ts';
import { cellLength, type Shown, sayFigure, sayLength } from './figures.ts';

/** What a ± on every size does to the joint, which size to watch and which face to keep down; nothing where the job gives none. */
export function spreadLines({ spread, section, ...voice }: Report, width: number, paint: Paint): string[] {
  if (spread === undefined) return [];
  const shares = safe(shareSentence(spread.clearance.simulated, voice).replaceAll('\u00a0', ' '));
  return [
    '',
    paint(say('print.spread', {}, voice), 'heading'),
    ...setPairs(clearancePairs(spread, voice)),
    ...indent(wrap(shares, width - 2, 0)),
    '',
    ...sourceTable(spread, voice),
    ...arrangementTable(spread, voice),
    '',
    ...indent(wrap(safe(adviseRuns(spread, section.cuts, voice.units, voice)), width - 2, 0)),
  ];
}

function clearancePairs({ clearance, frontFace, bottomGap }: SpreadReport, voice: Shown): [string, string][] {
  const { '0.00135': least, '0.99865': most } = clearance.simulated.quantiles;
  const range = ([low, high]: readonly [number, number]) => ({
    least: sayLength(low, voice),
    most: sayLength(high, voice),
  });
  const face = sayFace({ least: frontFace.least.worst[0], most: frontFace.most.worst[1] }, voice);
  return [
    [say('print.spread.nominal', {}, voice), sayLength(clearance.nominal, voice)],
    [say('print.spread.worst', {}, voice), say('print.spread.range', range(clearance.worst), voice)],
    [say('print.spread.likely', {}, voice), say('print.spread.range', range(clearance.rss), voice)],
    [say('print.spread.simulated', {}, voice), say('print.spread.simulated.range', range([least, most]), voice)],
    [say('print.spread.face', {}, voice), say('print.spread.face.worst', { face }, voice)],
    ...simulatedFace(frontFace, voice),
    ...gapPair(bottomGap, voice),
  ];
}

function sayFace(range: { readonly least: number; readonly most: number }, voice: Shown): string {
  return facePhrase(range, voice.units, voice);
}

/** The face step of the joints that go together; nothing where none does. */
function simulatedFace({ least, most }: SpreadReport['frontFace'], voice: Shown): [string, string][] {
  if (least.simulated === null || most.simulated === null) return [];
  const range = { least: least.simulated.quantiles['0.00135'], most: most.simulated.quantiles['0.99865'] };
  return [['', say('print.spread.face.simulated', { face: sayFace(range, voice) }, voice)]];
}

/** The gap at the groove's bottom, where something that is off moves it. */
function gapPair({ worst: [least, most] }: SpreadReport['bottomGap'], voice: Shown): [string, string][] {
  if (most - least < 1e-9) return [];
  const range = { least: sayLength(Math.abs(least), voice), most: sayLength(most, voice) };
  const words = say(least < 0 ? 'print.spread.gap.worst.little' : 'print.spread.gap.worst', range, voice);
  return [[say('print.spread.gap', {}, voice), words]];
}

/** The sources that move the clearance, largest first. */
function sourceTable({ clearance }: SpreadReport, voice: Shown): string[] {
  const moving = clearance.sources.filter(({ contribution }) => contribution > 1e-9);
  if (moving.length === 0) return indent([say('print.spread.nothing', {}, voice)]);
  const columns = (['tolerance', 'moves', 'share'] as const).map((key) => right(say(`print.spread.${key}`, {}, voice)));
  return setTable(
    [left(say('print.spread.cause', {}, voice)), ...columns],
    moving.map(({ name, plusMinus, contribution, share }) => [
      sourceWords(name, voice),
      sayPlusMinus(name, plusMinus, voice),
      cellLength(contribution, voice),
      safe(sayShare(share, voice).replace('\u00a0', ' ')),
    ]),
  );
}

/** Rows of ways to run that are shown, besides the one given: the narrowest. */
const MOST_WAYS = 4;

/** What the other ways to run the cuts would do, narrowest first; nothing where there is only one. */
function arrangementTable({ arrangements }: SpreadReport, voice: Shown): string[] {
  if (arrangements.length < 2) return [];
  const shown = arrangements.filter(({ given, stacked }, i) => given || stacked || i < MOST_WAYS);
  const rows = shown.map(({ runs, given, stacked, worst, sources }) => {
    const stock = sources.find(({ name }) => name === 'panel.thickness')!;
    return [
      stacked
        ? say(given ? 'print.spread.runs.stacked.given' : 'print.spread.runs.stacked', {}, voice)
        : given
          ? say('print.spread.runs.given', { runs: shortRuns(runs, voice) }, voice)
          : shortRuns(runs, voice),
      cellLength(worst[0], voice),
      cellLength(worst[1], voice),
      cellLength(stock.contribution, voice),
    ];
  });
  const columns = (['least', 'most', 'stock'] as const).map((key) => right(say(`print.spread.runs.${key}`, {}, voice)));
  return ['', ...setTable([left(say('print.spread.runs', {}, voice)), ...columns], rows)];
}

/** The runs of the cuts in order; many of them cut short. */
function shortRuns(runs: readonly ('under' | 'over')[], voice: Shown): string {
  const words = runs.slice(0, 5).map((run) => say(`print.run.${run}`, {}, voice));
  return sayAll(runs.length > 5 ? [...words, '…'] : words, 'print.spread.runs.and', voice);
}

function sayPlusMinus(name: string, plusMinus: number, voice: Shown): string {
  if (name === 'moisture') return `${sayFigure(formatNumber(plusMinus, 1), voice.language)} %`;
  return name.endsWith('.square')
    ? `${sayFigure(formatNumber(plusMinus, 2), voice.language)}°`
    : cellLength(plusMinus, voice);
}

/** The sources that belong to no cut. */
const SOURCES = [
  'panel.thickness',
  'panel.size',
  'frame.groove.width',
  'frame.groove.depth',
  'frame.groove.setback',
  'film',
  'moisture',
] as const;

/** What is set for each cut. */
const OF_CUT = ['height', 'fence', 'square'] as const;

/** A source as the trade calls it. */
function sourceWords(name: string, voice: Shown): string {
  const known = SOURCES.find((each) => each === name);
  if (known !== undefined) return say(`print.source.${known}`, {}, voice);
  const set = OF_CUT.find((each) => name.endsWith(`.${each}`));
  return set === undefined ? safe(name) : say(`print.source.${set}`, { cut: name.slice(0, -set.length - 1) }, voice);
}
