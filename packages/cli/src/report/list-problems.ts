import type { Problem, Severity } from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint, Tone } from '../terminal/paint.ts';
import { wrap } from '../terminal/table.ts';

const MARKS: Readonly<Record<Severity, readonly [mark: string, tone: Tone]>> = {
  error: ['✗', 'error'],
  warning: ['!', 'warning'],
  caution: ['·', 'faint'],
};

/** Problems one under the other, each with its mark, its severity in words, what to do, and where it is. */
export function listProblems(problems: readonly Problem[], width: number, paint: Paint): string[] {
  return problems.flatMap(({ severity, message, code, at }) => {
    const [mark, tone] = MARKS[severity];
    const head = `  ${mark} ${severity.padEnd(8)} `;
    const place = at === '' ? code : `${at}, ${code}`;
    const [first = '', ...rest] = wrap(safe(message), width - head.length, 0);
    const hang = ' '.repeat(head.length);
    return [paint(head, tone) + first, ...rest.map((line) => hang + line), paint(`${hang}(${place})`, 'faint')];
  });
}
