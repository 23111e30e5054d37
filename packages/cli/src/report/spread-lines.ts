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
import { indent, setPairs, setTable, wrap } from '../terminal/table.ts';
import { cellLength, type Shown, sayFigure, sayLength } from './figures.ts';

/** What a ± on every size does to the joint, which size to watch and which face to keep down; nothing where the job gives none. */
export function spreadLines({ spread, section, ...voice }: Report, width: number, paint: Paint): string[] {
  if (spread === undefined) return [];
  return [
    '',
    paint('Spread of the clearance', 'heading'),
    ...setPairs(clearancePairs(spread, voice)),
    ...indent(wrap(shareSentence(spread.clearance.simulated, voice).replaceAll('\u00a0', ' '), width - 2, 0)),
    '',
    ...sourceTable(spread, voice),
    ...arrangementTable(spread, voice),
    '',
    ...indent(wrap(adviseRuns(spread, section.cuts, voice.units, voice), width - 2, 0)),
  ];
}

function clearancePairs({ clearance, frontFace, bottomGap }: SpreadReport, voice: Shown): [string, string][] {
  const { simulated } = clearance;
  const { '0.00135': least, '0.99865': most } = simulated.quantiles;
  const range = (low: number, high: number) => `${sayLength(low, voice)} to ${sayLength(high, voice)}`;
  return [
    ['As set', sayLength(clearance.nominal, voice)],
    ['At the very worst', range(...clearance.worst)],
    ['Likely range', range(...clearance.rss)],
    ['Simulated', `${range(least, most)} for 997 of 1000`],
    [
      'Front face',
      `${facePhrase({ least: frontFace.least.worst[0], most: frontFace.most.worst[1] }, voice.units, voice)}, at the very worst`,
    ],
    ...simulatedFace(frontFace, voice),
    ...gapPair(bottomGap, voice),
  ];
}

/** The face step of the joints that go together; nothing where none does. */
function simulatedFace({ least, most }: SpreadReport['frontFace'], voice: Shown): [string, string][] {
  if (least.simulated === null || most.simulated === null) return [];
  const range = { least: least.simulated.quantiles['0.00135'], most: most.simulated.quantiles['0.99865'] };
  return [['', `${facePhrase(range, voice.units, voice)}, for 997 of 1000`]];
}

/** The gap at the groove's bottom, where something that is off moves it. */
function gapPair({ worst: [least, most] }: SpreadReport['bottomGap'], voice: Shown): [string, string][] {
  if (most - least < 1e-9) return [];
  const words = least < 0 ? `${sayLength(-least, voice)} too little` : sayLength(least, voice);
  return [['Gap at bottom', `${words} to ${sayLength(most, voice)}, at the very worst`]];
}

/** The sources that move the clearance, largest first. */
function sourceTable({ clearance }: SpreadReport, voice: Shown): string[] {
  const moving = clearance.sources.filter(({ contribution }) => contribution > 1e-9);
  if (moving.length === 0) return ['  Nothing that is off moves the clearance.'];
  return setTable(
    [
      { heading: 'biggest cause', align: 'left' },
      { heading: 'tolerance ±', align: 'right' },
      { heading: 'clearance moves ±', align: 'right' },
      { heading: 'share', align: 'right' },
    ],
    moving.map(({ name, plusMinus, contribution, share }) => [
      safe(sourceWords(name)),
      sayPlusMinus(name, plusMinus, voice),
      cellLength(contribution, voice),
      sayShare(share, voice).replace('\u00a0', ' '),
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
      `${stacked ? 'both heads at once' : shortRuns(runs)}${given ? ' (as now)' : ''}`,
      cellLength(worst[0], voice),
      cellLength(worst[1], voice),
      cellLength(stock.contribution, voice),
    ];
  });
  const headings = ['cuts run', 'least clearance', 'most clearance', '± from stock thickness'];
  return [
    '',
    ...setTable(
      headings.map((heading, i) => ({ heading, align: i === 0 ? ('left' as const) : ('right' as const) })),
      rows,
    ),
  ];
}

/** The runs of the cuts in order; many of them cut short. */
function shortRuns(runs: readonly string[]): string {
  return runs.length > 5 ? `${runs.slice(0, 5).join(', ')}, …` : runs.join(', ');
}

function sayPlusMinus(name: string, plusMinus: number, voice: Shown): string {
  if (name === 'moisture') return `${sayFigure(formatNumber(plusMinus, 1), voice.language)} %`;
  return name.endsWith('.square')
    ? `${sayFigure(formatNumber(plusMinus, 2), voice.language)}°`
    : cellLength(plusMinus, voice);
}

/** A source as the trade calls it. */
function sourceWords(name: string): string {
  const own: Readonly<Record<string, string>> = {
    'panel.thickness': 'stock thickness',
    'panel.size': 'panel size',
    'frame.groove.width': 'groove width',
    'frame.groove.depth': 'groove depth',
    'frame.groove.setback': 'setback of the groove',
    film: 'finish',
    moisture: 'moisture',
  };
  const ofCut = name.replace(/\.height$/, ', spindle height').replace(/\.fence$/, ', fence');
  return own[name] ?? ofCut.replace(/\.square$/, ', out of square');
}
