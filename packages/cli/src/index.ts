import { readFileSync } from 'node:fs';
import { findNearest } from '@fielded/core';
import { readArguments, UsageError } from './arguments.ts';
import { board } from './commands/board.ts';
import { check } from './commands/check.ts';
import { draw } from './commands/draw.ts';
import { HELP } from './commands/help.ts';
import { knife } from './commands/knife.ts';
import { open } from './commands/open.ts';
import { solve } from './commands/solve.ts';
import { type Io, processIo, safe } from './io.ts';

export type { Io } from './io.ts';

type Command = (argv: readonly string[], io: Io) => Promise<number>;

const COMMANDS: Readonly<Record<string, Command>> = { check, draw, solve, knife, board, open, help };

/**
 * Runs the command line; `argv` without the interpreter and the script. Gives the exit status: 0 all is well, 1 a job
 * has an error, 2 wrong use or an input that could not be read. Never throws: what goes wrong is one line of words.
 */
export async function main(argv: readonly string[], io: Io = processIo()): Promise<number> {
  try {
    return await runCommand(argv, io);
  } catch (error) {
    const said = error instanceof UsageError ? error.message : `A fault in fielded itself: ${(error as Error).message}`;
    await io.err(`fielded: ${safe(said)}\n`);
    return 2;
  }
}

async function runCommand(argv: readonly string[], io: Io): Promise<number> {
  const [name = '', ...rest] = argv;
  if (name === '' || name === '--help' || name === '-h') {
    await io[name === '' ? 'err' : 'out'](HELP['']!);
    return name === '' ? 2 : 0;
  }
  if (name === '--version' || name === '-V') {
    await io.out(`${version()}\n`);
    return 0;
  }
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name]! : unknownCommand(name);
  const asked = rest.slice(0, rest.includes('--') ? rest.indexOf('--') : undefined);
  if (asked.includes('--help') || asked.includes('-h')) return help([name], io);
  return command(rest, io);
}

async function help(argv: readonly string[], io: Io): Promise<number> {
  const { positionals } = readArguments(argv, {}, '');
  const [about = ''] = positionals;
  const text = about === 'help' ? HELP[''] : Object.hasOwn(HELP, about) ? HELP[about] : unknownCommand(about);
  await io.out(text!);
  return 0;
}

function unknownCommand(name: string): never {
  const known = Object.keys(COMMANDS);
  const near = findNearest(name.replace(/^-+/, ''), [...known, 'version']);
  const hint = near === undefined ? '' : `Did you mean ${near === 'version' ? '--version' : near}? `;
  const what = name.startsWith('-') ? 'option' : 'command';
  throw new UsageError(`${name} is no ${what}. ${hint}See fielded --help.`);
}

function version(): string {
  const file = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
  return (JSON.parse(file) as { version: string }).version;
}
