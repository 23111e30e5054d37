import { type Language, readLanguageText } from '@fielded/core';
import type { Commands } from '../command.ts';
import { inEnglish, UsageError } from '../usage-error.ts';
import { allEnglish } from '../words/all-english.ts';
import { readTextFile } from './read-text.ts';

/**
 * The language in a file, YAML or JSON. Of the help of commands only that of those `heard` is checked: the others are not loaded.
 *
 * @throws UsageError for a file that cannot be read or taken.
 */
export async function openLanguage(path: string, commands: Commands, heard: Commands = commands): Promise<Language> {
  const text = readTextFile(path);
  if (typeof text !== 'string')
    throw new UsageError(inEnglish(`--language ${path}: ${text.refused}. ${text.instead}.`));
  const english = await allEnglish(heard);
  const unheard = (key: string) => {
    const [, name = ''] = /^help\.([\w-]+)/.exec(key) ?? [];
    // Options in the same words everywhere belong to no command: one may be of others alone.
    const others = name === 'option' ? !Object.hasOwn(english, key) : Object.hasOwn(commands, name);
    return others && !Object.hasOwn(heard, name);
  };
  const { language, faults } = readLanguageText(text, english, unheard);
  if (language !== null) return language;
  const more = faults.length > 1 ? ` (and ${faults.length - 1} more)` : '';
  throw new UsageError(inEnglish(`--language ${path}: ${faults[0]!.replace(/\.$/, '')}${more}.`));
}
