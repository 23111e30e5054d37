import { parseArgs } from 'node:util';
import { findNearest } from '@fielded/core';

/** What a command may be given: its options, and whether each takes a value. */
export interface OptionSpec {
  readonly type: 'string' | 'boolean';
  readonly short?: string;
}

export interface Arguments {
  readonly values: Readonly<Record<string, string | boolean>>;
  readonly positionals: readonly string[];
}

/** A wrong use of the command: the line to print. Thrown only inside the command line, and caught in `main`. */
export class UsageError extends Error {}

/**
 * Options and the rest. Throws `UsageError` for an option that is not known (naming the nearest), one without its
 * value, one with a value that takes none, and one given twice.
 */
export function readArguments(
  argv: readonly string[],
  options: Readonly<Record<string, OptionSpec>>,
  command: string,
): Arguments {
  const { tokens } = parseArgs({ args: [...argv], options, allowPositionals: true, strict: false, tokens: true });
  const values: Record<string, string | boolean> = {};
  const positionals: string[] = [];
  const help = `See fielded help${command === '' ? '' : ` ${command}`}.`;
  for (const token of tokens) {
    if (token.kind === 'positional') positionals.push(token.value);
    if (token.kind !== 'option') continue;
    const spec = Object.hasOwn(options, token.name) ? options[token.name] : undefined;
    if (spec === undefined) {
      const near = findNearest(token.name, Object.keys(options));
      throw new UsageError(`${token.rawName} is no option here. ${near ? `Did you mean --${near}? ` : ''}${help}`);
    }
    if (Object.hasOwn(values, token.name)) throw new UsageError(`--${token.name} is given twice. Give it once.`);
    if (spec.type === 'string' && (token.value === undefined || token.value === ''))
      throw new UsageError(`${token.rawName} needs a value after it. ${help}`);
    if (spec.type === 'boolean' && token.value !== undefined)
      throw new UsageError(`--${token.name} takes no value. ${help}`);
    values[token.name] = token.value ?? true;
  }
  return { values, positionals };
}
