import { type Change, formatLength, type Report, type Solved, type SolvedByTwo, verdictWord } from '@fielded/core';
import { safe } from '../io.ts';
import { SHEET_WIDTH } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { indent, setPairs, wrap } from '../terminal/table.ts';
import { say, sayAll } from '../words/say.ts';
import { type Shown, sayFigure, sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';

/** What was solved for, in words: the settings, the moves, what else changes; or why there is none. `written` names the file. */
export function solvedReport(solved: Solved | SolvedByTwo, voice: Shown, written: string | null, paint: Paint): string {
  const { by, for: figure, problems } = solved;
  const size = typeof by === 'string' ? by : sayAll(by, 'print.solve.sizes.and', voice);
  const lines = [
    paint(say('print.solve.head', { size, figure, value: sayLength(solved.value, voice) }, voice), 'heading'),
    ...('settings' in solved ? bothAnswers(solved, voice) : oneAnswer(solved, voice)),
    ...changeLines(solved, voice, paint),
    ...problemLines('print.solve.gone', problems.gone, voice, paint),
    ...problemLines('print.solve.come', problems.come, voice, paint),
    ...(written === null ? [] : ['', say('print.solve.written', { file: written }, voice)]),
  ];
  return `${lines.join('\n')}\n`;
}

function oneAnswer(solved: Solved, voice: Shown): string[] {
  return solved.setting === null ? noAnswer(solved, voice) : answer(solved, solved.setting, voice);
}

function bothAnswers({ settings, reason, roundResidual, for: figure, value }: SolvedByTwo, voice: Shown): string[] {
  if (settings === null) return indent(wrap(safe(reason ?? ''), SHEET_WIDTH - 2, 0));
  const sets = settings.flatMap(({ by, round, move }): [string, string][] => [
    [safe(by), settingWords(round, move !== null, voice)],
    ...(move === null ? [] : [[`  ${say('print.solve.move.of-two', {}, voice)}`, safe(move)] as [string, string]]),
  ]);
  return setPairs([...sets, [safe(figure), sayLength(value + (roundResidual ?? 0), voice)]]);
}

function settingWords(mm: number, moves: boolean, voice: Shown): string {
  const setting = sayLength(mm, voice);
  return moves ? setting : say('print.solve.set.there', { setting }, voice);
}

function answer(solved: Solved, setting: number, voice: Shown): string[] {
  const { change, round, move } = solved;
  return setPairs([
    [say('print.solve.set', {}, voice), settingWords(round?.setting ?? setting, change !== 0, voice)],
    [say('print.solve.inches', {}, voice), inchWords(solved, voice)],
    [say('print.solve.move', {}, voice), move === null ? say('print.solve.no-move', {}, voice) : safe(move)],
  ]);
}

function inchWords({ nearest64, for: figure }: Solved, voice: Shown): string {
  const { inches, setting, value } = nearest64!;
  const figures = { inches, millimetres: sayFigure(formatLength(setting, 'mm'), voice.language) };
  return value === null
    ? say('print.solve.inches.alone', figures, voice)
    : say('print.solve.inches.then', { ...figures, figure, value: sayLength(value, voice) }, voice);
}

function noAnswer({ reason, nearest }: Solved, voice: Shown): string[] {
  const why = indent(wrap(safe(reason!), SHEET_WIDTH - 2, 0));
  if (nearest === null) return why;
  const figures = { value: sayLength(nearest.value, voice), setting: sayLength(nearest.setting, voice) };
  return [
    ...why,
    ...setPairs([[say('print.solve.nearest', {}, voice), say('print.solve.nearest.at', figures, voice)]]),
  ];
}

function changeLines({ changes }: Pick<Solved, 'changes'>, voice: Shown, paint: Paint): string[] {
  if (changes.length === 0) return [];
  const sayOne = (value: Change['before']) =>
    typeof value === 'number' ? sayLength(value, voice) : sayWord(value, voice);
  const rows = changes.map(({ name, before, after }): [string, string] => [
    name,
    `${sayOne(before)} → ${sayOne(after)}`,
  ]);
  return ['', paint(say('print.solve.changes', {}, voice), 'heading'), ...setPairs(rows, 26)];
}

function sayWord(word: string | null, voice: Shown): string {
  return word === null ? '–' : safe(verdictWord(word as Report['fit']['verdict'], voice));
}

function problemLines(
  heading: 'print.solve.gone' | 'print.solve.come',
  problems: Solved['problems']['gone'],
  voice: Shown,
  paint: Paint,
): string[] {
  if (problems.length === 0) return [];
  return ['', paint(say(heading, {}, voice), 'heading'), ...listProblems(problems, SHEET_WIDTH, voice, paint)];
}
