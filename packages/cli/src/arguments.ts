import { extname } from 'node:path';
import { parseArgs } from 'node:util';
import { findNearest } from '@fielded/core';
import type { Command, Given, Option } from './command.ts';
import { placeTexts } from './command-texts.ts';
import { didYouMean, listed, seeHelp, thereAre, type Unsaid, UsageError, unsaid } from './usage-error.ts';

/**
 * What a command was given, checked against what it takes. Throws `UsageError` for an option that is not known (naming the
 * nearest), one without its value, a switch with a value, one given twice, a value that is not accepted, an output file with an
 * ending that is not among the formats, a required option left out, and for too few or too many files.
 */
export function readGiven(name: string, command: Command, argv: readonly string[]): Given {
  const help = seeHelp(name);
  const { texts, positionals } = splitWords(argv, command.options, help);
  const { least, most } = command.place;
  const { needs, takes } = placeTexts(name, command);
  if (positionals.length < least) throw new UsageError(needs, help);
  if (positionals.length > most) throw new UsageError(takes, help);
  const required = Object.entries(command.options).filter(([, option]) => option.required);
  if (required.some(([option]) => !texts.has(option))) {
    const wanted = required.map(([option, { value }]) => `--${option} ${value}`);
    throw new UsageError(unsaid('print.usage.needs-options', { command: name, options: listed(wanted, 'and') }), help);
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

/** The file named with --language, wherever it stands; undefined where none is. */
export function readLanguagePath(argv: readonly string[]): string | undefined {
  const { language } = parseArgs({
    args: [...argv],
    options: { language: { type: 'string' } },
    allowPositionals: true,
    strict: false,
  }).values;
  return typeof language === 'string' && language !== '' ? language : undefined;
}

/** Options as they were written, and the words between them. */
function splitWords(argv: readonly string[], options: Readonly<Record<string, Option>>, help: Unsaid) {
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
      throw new UsageError(
        unsaid('print.usage.option-not-here', { name: token.rawName }),
        didYouMean(near && `--${near}`),
        help,
      );
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
      ? unsaid('print.usage.twice', { option: name })
      : unsaid('print.usage.too-often', { option: name, times: String(times) }),
  );
}

/** Refuses an option without the value that it takes, and a switch with one. */
function checkValue(
  token: { name: string; rawName: string; value?: string | undefined },
  spec: Option,
  help: Unsaid,
): void {
  if (spec.value !== undefined && !token.value)
    throw new UsageError(unsaid('print.usage.needs-value', { option: token.rawName }), help);
  if (spec.value === undefined && token.value !== undefined)
    throw new UsageError(unsaid('print.usage.takes-no-value', { option: token.name }), help);
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
    unsaid('print.usage.unknown-value', { option: name, value: given }),
    didYouMean(near),
    thereAre(known),
  );
}

/** A whole number as people write it, with thousands separated by a space, a comma or an underscore. */
function readWhole(name: string, text: string, least: number, most: number): number {
  const plain = text.replaceAll(/(?<=\d)[ _,](?=\d{3}(?!\d))/g, '');
  const number = Number(plain);
  if (/^\d+$/.test(plain) && number >= least && number <= most) return number;
  throw new UsageError(
    unsaid('print.usage.not-whole', { option: name, least: String(least), most: String(most), value: text }),
  );
}

function readFormat(output: Text | undefined, formats: readonly string[]): string {
  if (typeof output !== 'string') return formats[0] ?? '';
  const ending = extname(output).toLowerCase();
  if (formats.length === 0 || formats.includes(ending)) return ending;
  throw new UsageError(unsaid('print.usage.ending', { file: output, endings: listed(formats, 'or') }));
}
