import { findNearest } from '@fielded/core';
import { UsageError } from '../arguments.ts';
import { type Command, defineCommand } from '../command.ts';
import { helpText } from '../help/help-text.ts';
import { overviewText } from '../help/overview.ts';

/** `fielded help`: what there is, or more about one command. */
export const help: Command = defineCommand(
  {
    summary: 'say more about one of these',
    place: {
      name: 'COMMAND',
      least: 0,
      most: 1,
      needs: 'a command',
      takes: 'one command at a time',
      choices: 'commands',
    },
    about: ['Says what a command does and what may be given to it; without one, what commands there are.'],
    options: {},
    statuses: ['said', null, 'there is no such command'],
  },
  async ({ path: about }, io, commands) => {
    if (about === '') {
      await io.out(await overviewText(commands));
      return 0;
    }
    if (!Object.hasOwn(commands, about)) {
      const near = findNearest(about, Object.keys(commands));
      throw new UsageError(
        `${about} is no command. ${near === undefined ? '' : `Did you mean ${near}? `}See fielded --help.`,
      );
    }
    await io.out(helpText(about, await commands[about]!()));
    return 0;
  },
);
