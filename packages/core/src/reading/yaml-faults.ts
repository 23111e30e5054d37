import type { LineCounter, YAMLParseError } from 'yaml';
import { tellFault } from '../problem/say-fault.ts';
import type { TextFault } from './tree.ts';

/** YAML's own complaints in a maker's words, one to a line of the file: the rest mostly follow from the first. */
export function explainYamlErrors(errors: readonly YAMLParseError[], lines: LineCounter, text: string): TextFault[] {
  const faults: TextFault[] = [];
  const seen = new Set<number>();
  for (const error of [...errors].sort((one, other) => one.pos[0] - other.pos[0])) {
    const { line, col } = lines.linePos(error.pos[0]);
    if (seen.has(line)) continue;
    seen.add(line);
    const written = readLine(text, lines, line);
    const told = tellFault(`fault.yaml-syntax.${kindOf(error, written)}`, {});
    faults.push({ at: '', line, column: col, text: shorten(written.trim()), ...told });
  }
  return faults;
}

/** Which of YAML's complaints it is. */
function kindOf({ code, message }: YAMLParseError, line: string) {
  // A line longer than any that a person writes is not searched for quotes: that takes its length squared.
  const shown = line.length > 1000 ? '' : line;
  if (code === 'TAB_AS_INDENT') return 'tab';
  if (/["'].*["']\s*(#.*)?$/.test(shown) && /scalar at node end|closing/.test(message)) return 'quotes';
  if (code === 'MISSING_CHAR' && /quote/.test(message)) return 'open-quote';
  if (/Flow (map|sequence)|flow (map|sequence)|flow collection/i.test(message)) return 'list';
  if (code === 'BAD_INDENT' || /same column|indent/i.test(message)) return 'indent';
  if (code === 'BLOCK_AS_IMPLICIT_KEY' || code === 'MULTILINE_IMPLICIT_KEY') return 'colon';
  if (code === 'BAD_SCALAR_START') return 'sign';
  if (code === 'BAD_ALIAS') return 'alias';
  return code === 'RESOURCE_EXHAUSTION' ? 'deep' : 'line';
}

function readLine(text: string, lines: LineCounter, line: number): string {
  const start = lines.lineStarts[line - 1] ?? 0;
  const end = text.indexOf('\n', start);
  return text.slice(start, end < 0 ? undefined : end).replace(/\r$/, '');
}

function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 38)}…` : text;
}
