import { writeLanguage } from '@fielded/core';
import { type Command, defineCommand } from '../command.ts';
import { openLanguage } from '../files/read-language.ts';
import { allEnglish } from '../words/all-english.ts';
import { FILE_ENDINGS } from './shared-options.ts';

/** `fielded language`: every sentence, to be translated; or what a translation still lacks. */
export const language: Command = defineCommand(
  {
    summary: 'every sentence as a file to translate, or check one',
    place: {
      name: 'FILE',
      least: 0,
      most: 1,
      takes: 'one language at a time',
      endings: FILE_ENDINGS,
    },
    about: [
      'Prints every sentence of problems, reports, lists, plans and drawings in English, by its key, as a file to be translated. Given such a file it checks every sentence in it, and prints those that it lacks.',
      'What stands in { } is filled in and stays as it is, in any order. Sentences that a language lacks are said in English. Other commands take the file with --language.',
    ],
    options: {},
    statuses: ['printed, or nothing is lacking', 'sentences are lacking', 'the file cannot be taken'],
  },
  async ({ paths }, io, commands) => {
    const [path] = paths;
    const english = await allEnglish(commands);
    if (path === undefined) {
      await io.out(writeLanguage(english));
      return 0;
    }
    const { sentences } = await openLanguage(path, commands);
    const lacking = Object.entries(english).filter(([key]) => !Object.hasOwn(sentences, key));
    if (lacking.length > 0) await io.out(writeLanguage(Object.fromEntries(lacking)));
    const count = Object.keys(english).length;
    await io.err(`${count - lacking.length} of ${count} sentences are translated.\n`);
    return lacking.length > 0 ? 1 : 0;
  },
);
