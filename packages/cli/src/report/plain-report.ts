import { facePhrase, type Report, verdictSentence } from '@fielded/core';
import { safe } from '../io.ts';
import { columnsOf, SHEET_WIDTH } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { indent, setPairs, wrap } from '../terminal/table.ts';
import { say } from '../words/say.ts';
import { cutTable } from './cut-table.ts';
import { type Shown, sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';
import { markRun, markVerdict } from './marks.ts';
import { seasonLines } from './season-lines.ts';
import { spreadLines } from './spread-lines.ts';

/** Names what the job or the shop would have to say before anyone can tell whether it can be run. */
function notCheckedLines({ statements: { notChecked }, ...voice }: Report): string[] {
  if (notChecked.length === 0) return [];
  return indent(wrap(say('print.not-checked', { paths: notChecked.join(', ') }, voice), SHEET_WIDTH - 2, 0));
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
    ...indent(wrap(safe(verdictSentence(report)), SHEET_WIDTH - 2, 0)),
    ...notCheckedLines(report),
    ...spreadLines(report, SHEET_WIDTH, paint),
    ...seasonLines(report, SHEET_WIDTH, paint),
    '',
    heading('print.problems'),
    ...(report.problems.length === 0
      ? indent([say('print.problems.none', {}, report)])
      : listProblems(report.problems, SHEET_WIDTH, report, paint)),
    '',
    ...wrap(say('print.test-piece', {}, report), SHEET_WIDTH, 0),
  ];
  return `${lines.join('\n')}\n`;
}

type Heading = 'print.cuts' | 'print.tongue' | 'print.fit' | 'print.verdict' | 'print.problems';

/** A job's title with a double line under it. */
export function titleLines(title: string, paint: Paint): string[] {
  const shown = safe(title);
  return [
    ...wrap(shown, SHEET_WIDTH, 0).map((line) => paint(line, 'heading')),
    paint('═'.repeat(Math.min(SHEET_WIDTH, columnsOf(shown))), 'faint'),
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
    ...(panel.film
      ? [[say('print.film.label', {}, voice), say('print.film', { film: length(panel.film) }, voice)] as const]
      : []),
  ]);
}

function copeWords({ tenon, gap }: NonNullable<Report['frame']['cope']>, voice: Shown): string {
  const length = sayLength(tenon.length, voice);
  // A gap smaller than the last figure shown counts as closed.
  if (gap < 0.005) return say('print.cope.closes', { length }, voice);
  return say('print.cope.open', { length, gap: sayLength(gap, voice) }, voice);
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
