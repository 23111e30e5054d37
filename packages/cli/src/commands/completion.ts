import { findNearest } from '@fielded/core';
import { type Command, defineCommand } from '../command.ts';
import { bashScript } from '../completion/bash.ts';
import { fishScript } from '../completion/fish.ts';
import { type CommandWords, listWordsOf } from '../completion/words.ts';
import { zshScript } from '../completion/zsh.ts';
import { didYouMean, thereAre, UsageError, unsaid } from '../usage-error.ts';

const SHELLS: Readonly<Record<string, (commands: readonly CommandWords[]) => string>> = {
  bash: bashScript,
  zsh: zshScript,
  fish: fishScript,
};

/** `fielded completion`: a script that lets a shell complete commands, options, views and files. */
export const completion: Command = defineCommand(
  {
    summary: 'let the Tab key complete commands, options and files',
    place: {
      name: 'SHELL',
      least: 1,
      most: 1,
      needs: 'the name of a shell: bash, zsh or fish',
      takes: 'one shell at a time',
      choices: Object.keys(SHELLS),
    },
    about: [
      'Prints a script that lets the Tab key complete the commands of fielded, their options, what these may be, and the files they read.',
    ],
    options: {},
    after: [
      'bash: add eval "$(fielded completion bash)" to ~/.bashrc. zsh: the same with zsh, in ~/.zshrc after compinit. fish: fielded completion fish > ~/.config/fish/completions/fielded.fish.',
    ],
    statuses: ['printed', null, 'there is no such shell'],
  },
  async ({ path: shell }, io, commands) => {
    if (!Object.hasOwn(SHELLS, shell)) {
      const near = findNearest(shell, Object.keys(SHELLS));
      throw new UsageError(
        unsaid('print.usage.unknown-shell', { name: shell }),
        didYouMean(near),
        thereAre(Object.keys(SHELLS)),
      );
    }
    await io.out(SHELLS[shell]!(await listWordsOf(commands)));
    return 0;
  },
);
