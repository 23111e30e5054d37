import {
  facePhrase,
  formatLength,
  type Report,
  type Stated,
  stateRun,
  verdictSentence,
  verdictWord,
} from '@fielded/core';
import { safe } from '../io.ts';
import { columnsOf } from '../terminal/columns.ts';
import type { Paint, PaintTone } from '../terminal/paint.ts';
import { type Column, indent, left, right, setPairs, setTable, wrap } from '../terminal/table.ts';
import { say, sayAll } from '../words/say.ts';
import { cellArea, cellLength, type Shown, sayFigure, sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';
import { seasonLines } from './season-lines.ts';
import { spreadLines } from './spread-lines.ts';

export const WIDTH = 80;

/** A mark of its own shape for each verdict, so that colour is not needed to tell them apart. */
const MARKS: Readonly<Record<string, readonly [mark: string, tone: PaintTone]>> = {
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
  return paint(`${mark} ${safe(verdictWord(verdict, voice))}`, tone);
}

/** A mark of its own shape for each answer to a statement. */
const STATED: Readonly<Record<Stated['mark'], readonly [mark: string, tone: PaintTone]>> = {
  yes: ['✓', 'good'],
  no: ['✗', 'error'],
  open: ['–', 'faint'],
};

/** Whether a job can be run, with its mark, such as `– running not checked`. It always stands beside the verdict. */
export function markRun(report: Report, paint: Paint): string {
  const { mark, words } = stateRun(report);
  const [sign, tone] = STATED[mark];
  return paint(`${sign} ${safe(words)}`, tone);
}

/** Names what the job or the shop would have to say before anyone can tell whether it can be run. */
function notCheckedLines({ statements: { notChecked }, ...voice }: Report): string[] {
  if (notChecked.length === 0) return [];
  return indent(wrap(say('print.not-checked', { paths: notChecked.join(', ') }, voice), WIDTH - 2, 0));
}

/** A report as a sheet to pin up by the machine: 80 columns, in the job's own unit. */
export function plainReport(report: Report, file: string, paint: Paint): string {
  const heading = (line: Heading) => paint(say(line, {}, report), 'heading');
  const lines = [
    ...titleLines(report.title, paint),
    paint(say(`print.head.${report.units}`, { file }, report), 'faint'),
    '',
    ...stockLines(report),
    '',
    heading('print.cuts'),
    ...cutTable(report),
    '',
    heading('print.tongue'),
    ...tongueLines(report),
    '',
    heading('print.fit'),
    ...fitLines(report),
    '',
    heading('print.verdict'),
    `  ${markVerdict(report, paint)}   ${markRun(report, paint)}`,
    ...indent(wrap(safe(verdictSentence(report)), WIDTH - 2, 0)),
    ...notCheckedLines(report),
    ...spreadLines(report, WIDTH, paint),
    ...seasonLines(report, WIDTH, paint),
    '',
    heading('print.problems'),
    ...(report.problems.length === 0
      ? indent([say('print.problems.none', {}, report)])
      : listProblems(report.problems, WIDTH, report, paint)),
    '',
    ...wrap(say('print.test-piece', {}, report), WIDTH, 0),
  ];
  return `${lines.join('\n')}\n`;
}

type Heading = 'print.cuts' | 'print.tongue' | 'print.fit' | 'print.verdict' | 'print.problems';

/** A job's title with a double line under it. */
export function titleLines(title: string, paint: Paint): string[] {
  const shown = safe(title);
  return [
    ...wrap(shown, WIDTH, 0).map((line) => paint(line, 'heading')),
    paint('═'.repeat(Math.min(WIDTH, columnsOf(shown))), 'faint'),
  ];
}

function stockLines({ panel, frame, ...voice }: Report): string[] {
  const length = (mm: number) => sayLength(mm, voice);
  const { groove, cope, backEdge } = frame;
  const thickness = length(panel.thickness);
  const isMeasured = panel.measured !== panel.thickness;
  return setPairs([
    [
      say('print.panel.label', {}, voice),
      isMeasured
        ? say('print.panel.measured', { thickness, measured: length(panel.measured) }, voice)
        : say('print.panel', { thickness }, voice),
    ],
    [
      say('print.frame.label', {}, voice),
      say(
        frame.sticking === null ? 'print.frame' : 'print.frame.sticking',
        { thickness: length(frame.thickness) },
        voice,
      ),
    ],
    [
      say('print.groove.label', {}, voice),
      say(
        'print.groove',
        { width: length(groove.width), depth: length(groove.depth), setback: length(groove.setback) },
        voice,
      ),
    ],
    ...(cope ? [[say('print.cope.label', {}, voice), copeWords(cope, voice)] as const] : []),
    ...(backEdge
      ? [
          [
            say('print.back-edge.label', {}, voice),
            say('print.back-edge', { reach: length(backEdge.reach), depth: length(backEdge.depth) }, voice),
          ] as const,
        ]
      : []),
    [say('print.swell-gap', {}, voice), length(frame.swellGap)],
  ]);
}

function copeWords({ tenon, gap }: NonNullable<Report['frame']['cope']>, voice: Shown): string {
  const length = sayLength(tenon.length, voice);
  // A gap smaller than the last figure shown counts as closed.
  if (gap < 0.005) return say('print.cope.closes', { length }, voice);
  return say('print.cope.open', { length, gap: sayLength(gap, voice) }, voice);
}

function cutTable({ section, ...voice }: Report): string[] {
  const columns: Column[] = [
    ...(['name', 'side', 'shape', 'run'] as const).map((key) => left(say(`print.cut.${key}`, {}, voice))),
    ...(['depth', 'reach', 'land', 'shoulder', `takes.${voice.units}`] as const).map((key) =>
      right(say(`print.cut.${key}`, {}, voice)),
    ),
  ];
  const rows = section.cuts.map((cut) => {
    const drawn = cut.shape === 'outline';
    const lengths = [cut.depth, cut.reach, drawn ? null : cut.land, drawn ? null : cut.shoulder];
    return [
      shorten(safe(cut.name), 17),
      say(`print.side.${cut.side}`, {}, voice),
      say(`print.shape.${cut.shape}`, {}, voice),
      runWords(cut.run, cut.presented, voice),
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
    if (Math.abs(cut.depthCut - cut.depth) > 1e-9) {
      const depth = sayFigure(formatLength(cut.depthCut, voice.units), voice.language);
      notes.push(say('print.cut.depth-cut', { depth }, voice));
    }
    if (cut.sharedArea > 1e-9) notes.push(say('print.cut.shared', { area: cellArea(cut.sharedArea, voice) }, voice));
    if (cut.takenFromDrawing > 1e-9)
      notes.push(say('print.cut.against-drawing', { area: cellArea(cut.takenFromDrawing, voice) }, voice));
    if (notes.length === 0) return [];
    const words = say('print.cut.notes', { cut: cut.name, notes: sayAll(notes, 'print.cut.notes.and', voice) }, voice);
    return wrap(`  ${words}`, WIDTH, 4);
  });
}

function runWords(run: 'under' | 'over', presented: number, voice: Shown): string {
  if (presented === 0) return say(`print.run.${run}`, {}, voice);
  if (presented === 90) return say('print.run.on-edge', {}, voice);
  return say(`print.run.${run}.tilted`, { tilt: presented }, voice);
}

function tongueLines({ tongue, ...voice }: Report): string[] {
  return setPairs([
    [say('print.tongue.insertion', {}, voice), sayLength(tongue.insertion, voice)],
    [say('print.tongue.tip', {}, voice), sayLength(tongue.thicknessAtTip, voice)],
    [say('print.tongue.mouth', {}, voice), sayLength(tongue.thicknessAtMouth, voice)],
    [say('print.tongue.thinnest', {}, voice), sayLength(tongue.thinnest, voice)],
    [say('print.tongue.thickest', {}, voice), sayLength(tongue.thickest, voice)],
    [say('print.tongue.groove', {}, voice), sayLength(tongue.grooveNeeded, voice)],
  ]);
}

function fitLines({ fit, ...voice }: Report): string[] {
  const face = (range: Report['fit']['frontFace']) =>
    range === null ? '–' : safe(facePhrase(range, voice.units, voice));
  return setPairs([
    [say('print.fit.clearance', {}, voice), sayLength(fit.clearance, voice)],
    [say('print.fit.deepest', {}, voice), sayLength(fit.deepestInsertion, voice)],
    [say('print.fit.bottom-gap', {}, voice), sayLength(fit.bottomGap, voice)],
    [say('print.fit.margin', {}, voice), sayLength(fit.visibleMargin, voice)],
    [say('print.fit.front-face', {}, voice), face(fit.frontFace)],
    [say('print.fit.back-face', {}, voice), face(fit.backFace)],
  ]);
}

function shorten(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}
