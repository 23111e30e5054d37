import { type Change, formatLength, type Report, type Solved, verdictWord } from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint } from '../terminal/paint.ts';
import { indent, setPairs, wrap } from '../terminal/table.ts';
import { sayLength } from './figures.ts';
import { listProblems } from './list-problems.ts';
import { WIDTH } from './plain-report.ts';

type Units = Report['units'];

/** What was solved for, in words: the setting, the move, what else changes; or why there is none. `written` names the file. */
export function solvedReport(solved: Solved, units: Units, written: string | null, paint: Paint): string {
  const lines = [
    paint(`${safe(solved.by)} for ${safe(solved.for)} = ${sayLength(solved.value, units)}`, 'heading'),
    ...(solved.setting === null ? noAnswer(solved, units) : answer(solved, solved.setting, units)),
    ...changeLines(solved, units, paint),
    ...problemLines('Problems that go', solved.problems.gone, paint),
    ...problemLines('New problems', solved.problems.come, paint),
    ...(written === null ? [] : ['', `Written to ${safe(written)}.`]),
  ];
  return `${lines.join('\n')}\n`;
}

function answer({ change, residual, nearest64, move, for: figure }: Solved, setting: number, units: Units): string[] {
  const say = (mm: number | null) => sayLength(mm, units);
  const there = nearest64!.value === null ? '' : `: ${safe(figure)} is then ${say(nearest64!.value)}`;
  return setPairs([
    ['Set it to', `${say(setting)}${change === 0 ? ', where it is' : ''}`],
    ['Nearest 1/64 in', `${nearest64!.inches} (${formatLength(nearest64!.setting, 'mm')})${there}`],
    ['Move', move ?? 'nothing to move'],
    ['Off by', Math.abs(residual!) < 1e-6 ? 'nothing that could be measured' : formatLength(residual!, units, 6)],
  ]);
}

function noAnswer({ reason, nearest }: Solved, units: Units): string[] {
  const near: [string, string][] =
    nearest === null
      ? []
      : [['Nearest', `${sayLength(nearest.value, units)}, with it set to ${sayLength(nearest.setting, units)}`]];
  return [...indent(wrap(safe(reason!), WIDTH - 2, 0)), ...setPairs(near)];
}

function changeLines({ changes }: Solved, units: Units, paint: Paint): string[] {
  if (changes.length === 0) return [];
  const say = (value: Change['before']) => (typeof value === 'number' ? sayLength(value, units) : sayWord(value));
  const rows = changes.map(({ name, before, after }): [string, string] => [name, `${say(before)} → ${say(after)}`]);
  return ['', paint('What else changes', 'heading'), ...setPairs(rows, 26)];
}

function sayWord(word: string | null): string {
  return word === null ? '–' : verdictWord(word as Report['fit']['verdict']);
}

function problemLines(heading: string, problems: Solved['problems']['gone'], paint: Paint): string[] {
  return problems.length === 0 ? [] : ['', paint(heading, 'heading'), ...listProblems(problems, WIDTH, paint)];
}
