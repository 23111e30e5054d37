import { readFileSync } from 'node:fs';
import { findNearest } from '@fielded/core';
import { readGiven, readLanguagePath } from './arguments.ts';
import type { Command, Commands } from './command.ts';
import { COMMANDS } from './commands.ts';
import { forgetRead } from './files/files-read.ts';
import { type Io, processIo, safe, WriteError } from './io.ts';
import { didYouMean, UsageError, unsaid } from './usage-error.ts';
import { voiceOf } from './words/say.ts';

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
    await io.err(`fielded: ${safe(await sayFailure(error as Error, argv, io))}\n`);
    return 2;
  }
}

async function sayFailure(error: Error, argv: readonly string[], io: Io): Promise<string> {
  if (error instanceof UsageError) return error.say(voiceOf(await speakIfRead(argv, io)));
  return error instanceof WriteError ? error.message : `A fault in fielded itself: ${error.message}`;
}

async function runCommand(argv: readonly string[], io: Io): Promise<number> {
  const [name = '', ...rest] = argv;
  if (name === '' || name === '--help' || name === '-h') {
    const { overviewText } = await import('./help/overview.ts');
    await io[name === '' ? 'err' : 'out'](await overviewText(COMMANDS, voiceOf(await speak('', argv, io))));
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
    await io.out(helpText(name, command, voiceOf(await speak(name, rest, io))));
    return 0;
  }
  const given = readGiven(name, command, rest);
  return command.run(given, Object.hasOwn(command.options, 'language') ? await speak(name, rest, io) : io, COMMANDS);
}

/** The same streams, with the language read from the file that the arguments of a command name. */
async function speak(name: string, argv: readonly string[], io: Io): Promise<Io> {
  const path = readLanguagePath(argv);
  if (path === undefined) return io;
  const { openLanguage } = await import('./files/read-language.ts');
  return { ...io, language: await openLanguage(path, COMMANDS, heardFrom(name)) };
}

/** The commands whose help may be said: one's own, so that no other is loaded for it, or of all where it speaks of them. */
function heardFrom(name: string): Commands {
  const one = Object.hasOwn(COMMANDS, name) && !SPEAK_OF_OTHERS.includes(name);
  return one ? { [name]: COMMANDS[name]! } : COMMANDS;
}

const SPEAK_OF_OTHERS = ['help', 'completion', 'language'];

/** The same where something else is wrong already: in English where the language cannot be read. */
async function speakIfRead(argv: readonly string[], io: Io): Promise<Io> {
  try {
    return await speak(argv[0] ?? '', argv, io);
  } catch {
    return io;
  }
}

async function findCommand(name: string): Promise<Command> {
  if (Object.hasOwn(COMMANDS, name)) return COMMANDS[name]!();
  const near = findNearest(name.replace(/^-+/, ''), [...Object.keys(COMMANDS), 'version']);
  throw new UsageError(
    unsaid(name.startsWith('-') ? 'print.usage.unknown-option' : 'print.usage.unknown-command', { name }),
    didYouMean(near === 'version' ? '--version' : near),
    unsaid('print.usage.see-overview', {}),
  );
}

function version(): string {
  const file = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
  return (JSON.parse(file) as { version: string }).version;
}
