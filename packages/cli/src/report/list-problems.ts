import type { Problem, Severity, Voice } from '@fielded/core';
import { safe } from '../io.ts';
import { columnsOf, padRight, SHEET_WIDTH } from '../terminal/columns.ts';
import type { Paint, PaintTone } from '../terminal/paint.ts';
import { wrap } from '../terminal/table.ts';
import { say } from '../words/say.ts';

const MARKS: Readonly<Record<Severity, readonly [mark: string, tone: PaintTone]>> = {
  error: ['✗', 'error'],
  warning: ['!', 'warning'],
  caution: ['·', 'faint'],
};

/** Columns for the word of a severity, unless another language has a longer one. */
const WORD = 8;

/** Problems one under the other, each with its mark, its severity in words, what to do, and where it is. */
export function listProblems(problems: readonly Problem[], width: number, voice: Voice, paint: Paint): string[] {
  const words = { error: '', warning: '', caution: '' };
  for (const severity of Object.keys(words) as Severity[])
    words[severity] = say(`print.severity.${severity}`, {}, voice);
  const columns = Math.max(WORD, ...Object.values(words).map(columnsOf));
  return problems.flatMap(({ severity, message, code, at }) => {
    const [mark, tone] = MARKS[severity];
    const head = `  ${mark} ${padRight(words[severity], columns)} `;
    const place = at === '' ? code : `${at}, ${code}`;
    const [first = '', ...rest] = wrap(safe(message), width - columnsOf(head), 0);
    const hang = ' '.repeat(columnsOf(head));
    return [paint(head, tone) + first, ...rest.map((line) => hang + line), paint(`${hang}(${place})`, 'faint')];
  });
}

/** Problems as they follow a drawing or a list on standard error; '' where there are none. */
export function remarkProblems(problems: readonly Problem[], voice: Voice): string {
  if (problems.length === 0) return '';
  return `${listProblems(problems, SHEET_WIDTH, voice, (text) => text).join('\n')}\n`;
}
