import { findNearest } from '@fielded/core';
import { type Command, defineCommand } from '../command.ts';
import { helpText } from '../help/help-text.ts';
import { overviewText } from '../help/overview.ts';
import { didYouMean, UsageError, unsaid } from '../usage-error.ts';
import { voiceOf } from '../words/say.ts';
import { LANGUAGE } from './shared-options.ts';

/** `fielded help`: what there is, or more about one command. */
export const help: Command = defineCommand(
  {
    summary: 'say more about one of these',
    place: {
      name: 'COMMAND',
      least: 0,
      most: 1,
      takes: 'one command at a time',
      choices: 'commands',
    },
    about: ['Says what a command does and what may be given to it; without one, what commands there are.'],
    options: { language: LANGUAGE },
    statuses: ['said', null, 'there is no such command'],
  },
  async ({ path: about }, io, commands) => {
    if (about === '') {
      await io.out(await overviewText(commands, voiceOf(io)));
      return 0;
    }
    if (!Object.hasOwn(commands, about)) {
      const near = findNearest(about, Object.keys(commands));
      throw new UsageError(
        unsaid('print.usage.unknown-command', { name: about }),
        didYouMean(near),
        unsaid('print.usage.see-overview', {}),
      );
    }
    await io.out(helpText(about, await commands[about]!(), voiceOf(io)));
    return 0;
  },
);
