import type { LineCounter, YAMLParseError } from 'yaml';
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
    const [what, instead] = explain(error, written);
    faults.push({ code: 'yaml-syntax', at: '', line, column: col, text: shorten(written.trim()), what, instead });
  }
  return faults;
}

function explain(error: YAMLParseError, line: string): readonly [what: string, instead: string] {
  const { code, message } = error;
  // A line longer than any that a person writes is not searched for quotes: that takes its length squared.
  const shown = line.length > 1000 ? '' : line;
  if (code === 'TAB_AS_INDENT') return ['This line is indented with a tab', 'Use spaces'];
  if (/["'].*["']\s*(#.*)?$/.test(shown) && /scalar at node end|closing/.test(message))
    return ['The quotes on this line do not pair up', "Write inches as 3/4 in, or the whole in single quotes: '3/4\"'"];
  if (code === 'MISSING_CHAR' && /quote/.test(message))
    return ['A quoted text is opened and not closed', 'Close it with the mark it was opened with'];
  if (/Flow (map|sequence)|flow (map|sequence)|flow collection/i.test(message))
    return [
      'A list in [ ] or a group in { } does not end, or lacks a comma',
      'Part its entries with commas and close it',
    ];
  if (code === 'BAD_INDENT' || /same column|indent/i.test(message))
    return ['This line is not indented like the lines it belongs to', 'Line it up with them'];
  if (code === 'BLOCK_AS_IMPLICIT_KEY' || code === 'MULTILINE_IMPLICIT_KEY')
    return [
      'A colon too many, or a line that runs into the next',
      'Write one "key: value" to a line, and quote a value that holds a colon',
    ];
  if (code === 'BAD_SCALAR_START') return ['A value cannot start with that sign', 'Put the value in quotes'];
  if (code === 'BAD_ALIAS') return ['An alias or anchor (* or &) is not written right', 'Write the value out'];
  if (code === 'RESOURCE_EXHAUSTION') return ['The file is nested too deep to be read', 'Write it as in the examples'];
  return ['This line cannot be read as YAML', 'Write "key: value", with lists as "- item" lines, as in the examples'];
}

function readLine(text: string, lines: LineCounter, line: number): string {
  const start = lines.lineStarts[line - 1] ?? 0;
  const end = text.indexOf('\n', start);
  return text.slice(start, end < 0 ? undefined : end).replace(/\r$/, '');
}

function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 38)}…` : text;
}
