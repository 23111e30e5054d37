import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, type YAMLMap } from 'yaml';
import { parseLength, type Units } from '../measure/length.ts';
import type { Language, Voice } from '../problem/language.ts';
import type { FileValue, FileWord } from '../problem/problem.ts';
import { say } from '../problem/say.ts';
import { withLineFeeds } from '../reading/line-feeds.ts';
import { joinPath } from '../reading/tree.ts';

/** A file with values changed, or why that cannot be done, as a sentence. */
export type Written = { readonly text: string } | { readonly refused: string };

/**
 * The text of a job file with some lengths and words changed, everything else byte for byte as it was: comments, order, spacing.
 *
 * A length keeps the unit it was written in: `4.6 mm` stays millimetres, a bare number stays in the file's `units`. A key
 * that is not there is put after the last of its group. Written to a billionth of the unit, without trailing noughts. Says
 * no, in `language`, where the value stands in an alias, which other places share.
 *
 * @example writeValues('swellGap: 2 # mm\n', [{ path: ['swellGap'], mm: 2.5 }], 'mm') // { text: 'swellGap: 2.5 # mm\n' }
 */
export function writeValues(
  text: string,
  values: readonly (FileValue | FileWord)[],
  units: Units,
  language?: Language,
): Written {
  const voice: Voice = { units, ...(language && { language }) };
  let now = text;
  for (const value of values) {
    const written = writeValue(now, value, voice);
    if ('refused' in written) return written;
    now = written.text;
  }
  return { text: now };
}

function writeValue(text: string, value: FileValue | FileWord, voice: Voice): Written {
  const { path } = value;
  const { units } = voice;
  const place = path.reduce<string>(joinPath, '');
  const shared = { refused: say('write.shared', { place }, voice) };
  let node: Node | null = parseDocument(withLineFeeds(text), { keepSourceTokens: true }).contents;
  for (const [depth, key] of path.entries()) {
    if (isAlias(node)) return shared;
    const inside: Node | null = isMap(node) || isSeq(node) ? ((node.get(key, true) as Node | undefined) ?? null) : null;
    const last = depth === path.length - 1;
    if (inside === null && last && isMap(node))
      return { text: addKey(text, node, String(key), 'word' in value ? value.word : bare(value.mm, units)) };
    if (inside === null) return { refused: say('write.missing', { place }, voice) };
    node = inside;
  }
  if (isAlias(node) || node?.anchor !== undefined) return shared;
  if (!isScalar(node) || !node.range) return { refused: say('write.not-plain', { place }, voice) };
  const [from, to] = node.range;
  const now = 'word' in value ? value.word : inUnitOf(text.slice(from, to), value.mm, units);
  return { text: text.slice(0, from) + now + text.slice(to) };
}

/** A length in the unit that the old text was in. */
function inUnitOf(old: string, mm: number, units: Units): string {
  const words = old.replace(/^(['"])(.*)\1$/, '$2');
  const unit = UNITS.find(({ spelt }) => spelt.test(words))?.unit;
  if (unit === undefined) return bare(mm, units);
  const size = parseLength(`1 ${unit}`, units);
  return 'mm' in size ? `${digits(mm / size.mm)} ${unit}` : `${digits(mm)} mm`;
}

const UNITS = [
  { unit: 'mm', spelt: /mm|millim/i },
  { unit: 'cm', spelt: /cm/i },
  { unit: 'in', spelt: /in|["″”]/i },
  { unit: 'm', spelt: /\dm|\bm/i },
  { unit: 'ft', spelt: /ft|f[oe]+t|['′’]/i },
] as const;

function bare(mm: number, units: Units): string {
  return digits(units === 'mm' ? mm : mm / 25.4);
}

/** A number to nine decimals, without trailing noughts. */
function digits(value: number): string {
  return value.toFixed(9).replace(/\.?0+$/, '');
}

/** The text with `key: value` after the last pair of a group, written the way the group is. */
function addKey(text: string, group: YAMLMap, key: string, value: string): string {
  const last = group.items.at(-1) as Pair<Node, Node | null> | undefined;
  if (group.flow || last === undefined) {
    const end = lastEnd(last) ?? group.range![0] + 1;
    // Keys in quotes are JSON's, and what was JSON stays it.
    const quoted = last !== undefined && text[last.key.range![0]] === '"' ? `"${key}"` : key;
    const entry = last === undefined ? ` ${key}: ${value} ` : `, ${quoted}: ${value}`;
    return text.slice(0, end) + entry + text.slice(end);
  }
  const first = (group.items[0] as Pair<Node, Node | null>).key.range![0];
  const indent = first - (text.lastIndexOf('\n', first - 1) + 1);
  const end = lastEnd(last)!;
  const line = text.indexOf('\n', end - 1);
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const entry = `${' '.repeat(indent)}${key}: ${value}${newline}`;
  // A last line without an end gets one.
  return line < 0 ? `${text}${newline}${entry}` : text.slice(0, line + 1) + entry + text.slice(line + 1);
}

/** Where a pair's value ends, before what follows on its line. */
function lastEnd(pair: Pair<Node, Node | null> | undefined): number | undefined {
  return pair === undefined ? undefined : (pair.value?.range?.[1] ?? pair.key.range![1]);
}
