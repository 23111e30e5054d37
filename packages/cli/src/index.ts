import { readFileSync } from 'node:fs';
import { findNearest } from '@fielded/core';
import { readGiven, UsageError } from './arguments.ts';
import type { Command } from './command.ts';
import { COMMANDS } from './commands.ts';
import { forgetRead } from './files/files-read.ts';
import { type Io, processIo, safe, WriteError } from './io.ts';

export type { Io } from './io.ts';

/**
 * Runs the command line; `argv` without the interpreter and the script. Gives the exit status: 0 all is well, 1 a job
 * has an error, 2 wrong use, an input that could not be read or an output that could not be written. Never throws: what goes wrong is one line of words.
 */
export async function main(argv: readonly string[], io: Io = processIo()): Promise<number> {
  forgetRead();
  try {
    return await runCommand(argv, io);
  } catch (error) {
    const known = error instanceof UsageError || error instanceof WriteError;
    const said = known ? (error as Error).message : `A fault in fielded itself: ${(error as Error).message}`;
    await io.err(`fielded: ${safe(said)}\n`);
    return 2;
  }
}

async function runCommand(argv: readonly string[], io: Io): Promise<number> {
  const [name = '', ...rest] = argv;
  if (name === '' || name === '--help' || name === '-h') {
    const { overviewText } = await import('./help/overview.ts');
    await io[name === '' ? 'err' : 'out'](await overviewText(COMMANDS));
    return name === '' ? 2 : 0;
  }
  if (name === '--version' || name === '-V') {
    await io.out(`${version()}\n`);
    return 0;
  }
  const command = await findCommand(name);
  const asked = rest.slice(0, rest.includes('--') ? rest.indexOf('--') : undefined);
  if (asked.includes('--help') || asked.includes('-h')) {
    const { helpText } = await import('./help/help-text.ts');
    await io.out(helpText(name, command));
    return 0;
  }
  const given = readGiven(name, command, rest);
  return command.run(given, await speak(given.values.language, io), COMMANDS);
}

/** The same streams, with the language read from a file. */
async function speak(path: unknown, io: Io): Promise<Io> {
  if (typeof path !== 'string') return io;
  const { openLanguage } = await import('./files/read-language.ts');
  return { ...io, language: await openLanguage(path) };
}

async function findCommand(name: string): Promise<Command> {
  if (Object.hasOwn(COMMANDS, name)) return COMMANDS[name]!();
  const near = findNearest(name.replace(/^-+/, ''), [...Object.keys(COMMANDS), 'version']);
  const hint = near === undefined ? '' : `Did you mean ${near === 'version' ? '--version' : near}? `;
  const what = name.startsWith('-') ? 'option' : 'command';
  throw new UsageError(`${name} is no ${what}. ${hint}See fielded --help.`);
}

function version(): string {
  const file = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
  return (JSON.parse(file) as { version: string }).version;
}
