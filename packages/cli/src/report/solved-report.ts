import { type Change, formatLength, type Report, type Solved, type SolvedByTwo, verdictWord } from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint } from '../terminal/paint.ts';
import { indent, setPairs, wrap } from '../terminal/table.ts';
import { type Shown, sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';
import { WIDTH } from './plain-report.ts';

/** What was solved for, in words: the settings, the moves, what else changes; or why there is none. `written` names the file. */
export function solvedReport(solved: Solved | SolvedByTwo, voice: Shown, written: string | null, paint: Paint): string {
  const by = typeof solved.by === 'string' ? solved.by : solved.by.join(' and ');
  const lines = [
    paint(`${safe(by)} for ${safe(solved.for)} = ${sayLength(solved.value, voice)}`, 'heading'),
    ...('settings' in solved ? bothAnswers(solved, voice) : oneAnswer(solved, voice)),
    ...changeLines(solved, voice, paint),
    ...problemLines('Problems that go', solved.problems.gone, paint),
    ...problemLines('New problems', solved.problems.come, paint),
    ...(written === null ? [] : ['', `Written to ${safe(written)}.`]),
  ];
  return `${lines.join('\n')}\n`;
}

function oneAnswer(solved: Solved, voice: Shown): string[] {
  return solved.setting === null ? noAnswer(solved, voice) : answer(solved, solved.setting, voice);
}

function bothAnswers({ settings, reason, roundResidual, for: figure, value }: SolvedByTwo, voice: Shown): string[] {
  if (settings === null) return indent(wrap(safe(reason ?? ''), WIDTH - 2, 0));
  const sets = settings.flatMap(({ by, round, move }): [string, string][] => [
    [safe(by), `${sayLength(round, voice)}${move === null ? ', where it is' : ''}`],
    ...(move === null ? [] : [['  move', move] as [string, string]]),
  ]);
  return setPairs([...sets, [safe(figure), sayLength(value + (roundResidual ?? 0), voice)]]);
}

function answer({ change, round, nearest64, move, for: figure }: Solved, setting: number, voice: Shown): string[] {
  const say = (mm: number | null) => sayLength(mm, voice);
  const there = nearest64!.value === null ? '' : `: ${safe(figure)} is then ${say(nearest64!.value)}`;
  return setPairs([
    ['Set it to', `${say(round?.setting ?? setting)}${change === 0 ? ', where it is' : ''}`],
    ['Nearest 1/64 in', `${nearest64!.inches} (${formatLength(nearest64!.setting, 'mm')})${there}`],
    ['Move', move ?? 'nothing to move'],
  ]);
}

function noAnswer({ reason, nearest }: Solved, voice: Shown): string[] {
  const near: [string, string][] =
    nearest === null
      ? []
      : [['Nearest', `${sayLength(nearest.value, voice)}, with it set to ${sayLength(nearest.setting, voice)}`]];
  return [...indent(wrap(safe(reason!), WIDTH - 2, 0)), ...setPairs(near)];
}

function changeLines({ changes }: Pick<Solved, 'changes'>, voice: Shown, paint: Paint): string[] {
  if (changes.length === 0) return [];
  const say = (value: Change['before']) =>
    typeof value === 'number' ? sayLength(value, voice) : sayWord(value, voice);
  const rows = changes.map(({ name, before, after }): [string, string] => [name, `${say(before)} → ${say(after)}`]);
  return ['', paint('What else changes', 'heading'), ...setPairs(rows, 26)];
}

function sayWord(word: string | null, voice: Shown): string {
  return word === null ? '–' : verdictWord(word as Report['fit']['verdict'], voice);
}

function problemLines(heading: string, problems: Solved['problems']['gone'], paint: Paint): string[] {
  return problems.length === 0 ? [] : ['', paint(heading, 'heading'), ...listProblems(problems, WIDTH, paint)];
}
