import {
  facePhrase,
  formatLength,
  formatNumber,
  type Report,
  type Stated,
  stateRun,
  verdictSentence,
  verdictWord,
} from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint, Tone } from '../terminal/paint.ts';
import { type Column, setPairs, setTable, wrap } from '../terminal/table.ts';
import { cellArea, cellLength, sayFigure, sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';
import { seasonLines } from './season-lines.ts';
import { spreadLines } from './spread-lines.ts';

export const WIDTH = 80;

/** A mark of its own shape for each verdict, so that colour is not needed to tell them apart. */
const MARKS: Readonly<Record<string, readonly [mark: string, tone: Tone]>> = {
  'will-not-enter': ['✗', 'error'],
  'stops-short': ['⊣', 'error'],
  tight: ['»', 'warning'],
  sliding: ['✓', 'good'],
  loose: ['○', 'warning'],
};

/** The mark and the word of a verdict, such as `✓ sliding`. */
export function markVerdict(
  { fit: { verdict }, ...voice }: Pick<Report, 'fit' | 'units' | 'language'>,
  paint: Paint,
): string {
  const [mark, tone] = MARKS[verdict ?? ''] ?? (['⊗', 'error'] as const);
  return paint(`${mark} ${verdictWord(verdict, voice)}`, tone);
}

/** A mark of its own shape for each answer to a statement. */
const STATED: Readonly<Record<Stated['mark'], readonly [mark: string, tone: Tone]>> = {
  yes: ['✓', 'good'],
  no: ['✗', 'error'],
  open: ['–', 'faint'],
};

/** Whether a job can be run, with its mark, such as `– running not checked`. It always stands beside the verdict. */
export function markRun(report: Report, paint: Paint): string {
  const { mark, words } = stateRun(report);
  const [sign, tone] = STATED[mark];
  return paint(`${sign} ${words}`, tone);
}

/** What running it depends on and nobody said, by name: silence is no approval. */
function notCheckedLines({ statements: { notChecked } }: Report): string[] {
  if (notChecked.length === 0) return [];
  return wrap(`Not checked, since the job or the shop does not say: ${notChecked.join(', ')}.`, WIDTH - 2, 0).map(
    (line) => `  ${safe(line)}`,
  );
}

/** A report as a sheet to pin up by the machine: 80 columns, in the job's own unit. */
export function plainReport(report: Report, file: string, paint: Paint): string {
  const units = report.units === 'mm' ? 'lengths in mm' : 'lengths in inches';
  const title = safe(report.title);
  const lines = [
    ...wrap(title, WIDTH, 0).map((line) => paint(line, 'heading')),
    paint('═'.repeat(Math.min(WIDTH, title.length)), 'faint'),
    paint(`${safe(file)}, ${units}`, 'faint'),
    '',
    ...stockLines(report),
    '',
    paint('Cuts, in running order', 'heading'),
    ...cutTable(report),
    '',
    paint('Tongue', 'heading'),
    ...tongueLines(report),
    '',
    paint('Fit', 'heading'),
    ...fitLines(report),
    '',
    paint('Verdict', 'heading'),
    `  ${markVerdict(report, paint)}   ${markRun(report, paint)}`,
    ...wrap(verdictSentence(report), WIDTH - 2, 0).map((line) => `  ${line}`),
    ...notCheckedLines(report),
    ...spreadLines(report, WIDTH, paint),
    ...seasonLines(report, WIDTH, paint),
    '',
    paint('Problems', 'heading'),
    ...(report.problems.length === 0 ? ['  none found'] : listProblems(report.problems, WIDTH, paint)),
    '',
    ...wrap('A test piece decides: cut one in the same stock before the panels.', WIDTH, 0),
  ];
  return `${lines.join('\n')}\n`;
}

function stockLines({ panel, frame, ...voice }: Report): string[] {
  const say = (mm: number) => sayLength(mm, voice);
  const { groove, cope, backEdge } = frame;
  const closes = (gap: number) => (gap < 0.005 ? 'closes on the sticking' : `leaves up to ${say(gap)} open`);
  const measured = panel.measured === panel.thickness ? '' : `, measured ${say(panel.measured)}`;
  return setPairs([
    ['Panel', `${say(panel.thickness)} thick${measured}`],
    ['Frame', `${say(frame.thickness)} thick${frame.sticking === null ? '' : ', with a sticking on its lip'}`],
    ['Groove', `${say(groove.width)} wide, ${say(groove.depth)} deep, set back ${say(groove.setback)}`],
    ...(cope ? [['Cope', `stub tenon ${say(cope.tenon.length)} long; ${closes(cope.gap)}`] as const] : []),
    ...(backEdge ? [['Back edge', `${say(backEdge.reach)} in, ${say(backEdge.depth)} deep`] as const] : []),
    ['Swell gap', say(frame.swellGap)],
  ]);
}

function cutTable({ section, ...voice }: Report): string[] {
  const columns: Column[] = [
    { heading: 'cut', align: 'left' },
    { heading: 'side', align: 'left' },
    { heading: 'shape', align: 'left' },
    { heading: 'run', align: 'left' },
    ...['depth', 'reach', 'land', 'shoulder', voice.units === 'mm' ? 'takes mm²' : 'takes in²'].map(
      (heading): Column => ({ heading, align: 'right' }),
    ),
  ];
  const rows = section.cuts.map((cut) => {
    const drawn = cut.shape === 'outline';
    const lengths = [cut.depth, cut.reach, drawn ? null : cut.land, drawn ? null : cut.shoulder];
    return [
      shorten(safe(cut.name), 17),
      cut.side,
      cut.shape,
      runWords(cut.run, cut.presented),
      ...lengths.map((mm) => cellLength(mm, voice)),
      cellArea(cut.removedArea, voice),
    ];
  });
  return [...setTable(columns, rows), ...cutNotes({ section, ...voice })];
}

/** What the columns cannot hold: a depth that differs from the setting, wood taken twice or against the drawing. */
function cutNotes({ section, ...voice }: Pick<Report, 'section' | 'units' | 'language'>): string[] {
  return section.cuts.flatMap((cut) => {
    const notes: string[] = [];
    if (Math.abs(cut.depthCut - cut.depth) > 1e-9)
      notes.push(
        `cuts ${sayFigure(formatLength(cut.depthCut, voice.units), voice.language)} deep in the measured stock`,
      );
    if (cut.sharedArea > 1e-9) notes.push(`${cellArea(cut.sharedArea, voice)} of that is gone already`);
    if (cut.takenFromDrawing > 1e-9)
      notes.push(`${cellArea(cut.takenFromDrawing, voice)} of that is wood the drawing keeps`);
    return notes.length === 0 ? [] : wrap(`  ${safe(cut.name)}: ${notes.join('; ')}`, WIDTH, 4);
  });
}

function runWords(run: string, presented: number): string {
  if (presented === 0) return run;
  return presented === 90 ? 'on edge' : `${run} ${formatNumber(presented, 1)}°`;
}

function tongueLines({ tongue, ...voice }: Report): string[] {
  const say = (mm: number | null) => sayLength(mm, voice);
  return setPairs([
    ['Should go in', say(tongue.insertion)],
    ['At the tip', say(tongue.thicknessAtTip)],
    ['At the mouth', say(tongue.thicknessAtMouth)],
    ['Thinnest', say(tongue.thinnest)],
    ['Thickest', say(tongue.thickest)],
    ['Groove needed', say(tongue.grooveNeeded)],
  ]);
}

function fitLines({ fit, ...voice }: Report): string[] {
  const say = (mm: number | null) => sayLength(mm, voice);
  const face = (range: Report['fit']['frontFace']) => (range === null ? '–' : facePhrase(range, voice.units, voice));
  return setPairs([
    ['Clearance', say(fit.clearance)],
    ['Goes in at most', say(fit.deepestInsertion)],
    ['Gap at the bottom', say(fit.bottomGap)],
    ['Margin showing', say(fit.visibleMargin)],
    ['Front face', face(fit.frontFace)],
    ['Back face', face(fit.backFace)],
  ]);
}

function shorten(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}
