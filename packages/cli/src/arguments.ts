import { extname } from 'node:path';
import { parseArgs } from 'node:util';
import { findNearest } from '@fielded/core';
import type { Command, Given, Option } from './command.ts';

/** A wrong use of the command: the line to print. Thrown only inside the command line, and caught in `main`. */
export class UsageError extends Error {}

/**
 * What a command was given, checked against what it takes. Throws `UsageError` for an option that is not known (naming the
 * nearest), one without its value, a switch with a value, one given twice, a value that is not accepted, an output file with an
 * ending that is not among the formats, a required option left out, and for too few or too many files.
 */
export function readGiven(name: string, command: Command, argv: readonly string[]): Given {
  const help = `See fielded help ${name}.`;
  const { texts, positionals } = readWords(argv, command.options, help);
  const { least, most, needs, takes } = command.place;
  if (positionals.length < least) throw new UsageError(`${name} needs ${needs}. ${help}`);
  if (positionals.length > most) throw new UsageError(`${name} takes ${takes}. ${help}`);
  const required = Object.entries(command.options).filter(([, option]) => option.required);
  if (required.some(([option]) => !texts.has(option))) {
    const wanted = required.map(([option, { value }]) => `--${option} ${value}`);
    throw new UsageError(`${name} needs ${listWords(wanted, 'and')}. ${help}`);
  }
  const values = Object.fromEntries(
    Object.entries(command.options).map(([option, spec]) => [option, readValue(option, spec, texts.get(option))]),
  );
  return {
    paths: positionals,
    path: positionals[0] ?? '',
    values: values as Given['values'],
    format: readFormat(texts.get('output'), command.formats ?? []),
  };
}

/** Options as they were written, and the words between them. */
function readWords(argv: readonly string[], options: Readonly<Record<string, Option>>, help: string) {
  const known = Object.fromEntries(
    Object.entries(options).map(([name, { value, short }]) => [
      name,
      { type: value === undefined ? ('boolean' as const) : ('string' as const), ...(short && { short }) },
    ]),
  );
  // Node's own parser splits the words; what is unknown or repeated is refused below, with the nearest name.
  const { tokens } = parseArgs({
    args: [...argv],
    options: known,
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const texts = new Map<string, Text>();
  const positionals: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') positionals.push(token.value);
    if (token.kind !== 'option') continue;
    const spec = Object.hasOwn(options, token.name) ? options[token.name] : undefined;
    if (spec === undefined) {
      const near = findNearest(token.name, Object.keys(options));
      throw new UsageError(`${token.rawName} is no option here. ${near ? `Did you mean --${near}? ` : ''}${help}`);
    }
    checkTimes(token.name, texts.get(token.name), spec.times ?? 1);
    checkValue(token, spec, help);
    texts.set(token.name, spec.times === undefined ? (token.value ?? true) : addTo(texts.get(token.name), token.value));
  }
  return { texts, positionals };
}

/** Refuses an option that stands there more often than it may. */
function checkTimes(name: string, before: Text | undefined, times: number): void {
  if (before === undefined || (Array.isArray(before) && before.length < times)) return;
  throw new UsageError(
    times === 1
      ? `--${name} is given twice. Give it once.`
      : `--${name} is given more than ${times} times. Give it ${times} times at most.`,
  );
}

/** Refuses an option without the value that it takes, and a switch with one. */
function checkValue(
  token: { name: string; rawName: string; value?: string | undefined },
  spec: Option,
  help: string,
): void {
  if (spec.value !== undefined && !token.value)
    throw new UsageError(`${token.rawName} needs a value after it. ${help}`);
  if (spec.value === undefined && token.value !== undefined)
    throw new UsageError(`--${token.name} takes no value. ${help}`);
}

function addTo(before: Text | undefined, value: string | undefined): readonly string[] {
  return [...(Array.isArray(before) ? (before as readonly string[]) : []), value ?? ''];
}

/** What stands after an option: its value, true for a switch, all its values where it may be given several times. */
type Text = string | true | readonly string[];

function readValue(
  name: string,
  option: Option,
  text: Text | undefined,
): string | number | boolean | readonly string[] | undefined {
  if (option.times !== undefined) return Array.isArray(text) ? text : [];
  if (option.value === undefined) return text === true;
  if (typeof text !== 'string') return undefined;
  if (option.whole !== undefined) return readWhole(name, text, ...option.whole);
  if (option.choices !== undefined) return readChoice(name, text, choicesOf(option));
  return text;
}

/** The values an option may have; [] where it may be anything. */
export function choicesOf({ choices = [] }: Option): readonly string[] {
  return Array.isArray(choices) ? choices : Object.keys(choices);
}

function readChoice(name: string, given: string, known: readonly string[]): string {
  // Names of papers and views may be written in capitals.
  const found =
    known.find((each) => each === given) ?? known.find((each) => each.toLowerCase() === given.toLowerCase());
  if (found !== undefined) return found;
  const near = findNearest(given, known);
  throw new UsageError(
    `--${name} ${given} is not known. ${near ? `Did you mean ${near}? ` : ''}There are ${listWords(known, 'and')}.`,
  );
}

/** A whole number as people write it, with thousands separated by a space, a comma or an underscore. */
function readWhole(name: string, text: string, least: number, most: number): number {
  const plain = text.replaceAll(/(?<=\d)[ _,](?=\d{3}(?!\d))/g, '');
  const number = Number(plain);
  if (/^\d+$/.test(plain) && number >= least && number <= most) return number;
  throw new UsageError(`--${name} needs a whole number from ${least} to ${most}, not ${text}.`);
}

function readFormat(output: Text | undefined, formats: readonly string[]): string {
  if (typeof output !== 'string') return formats[0] ?? '';
  const ending = extname(output).toLowerCase();
  if (formats.length === 0 || formats.includes(ending)) return ending;
  throw new UsageError(`${output} does not say what to write: end the name in ${listWords(formats, 'or')}.`);
}

/** "a, b and c". */
export function listWords(words: readonly string[], last: 'and' | 'or'): string {
  return words.length < 2 ? words.join() : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}
