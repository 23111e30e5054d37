import { type Language, readLanguageText } from '@fielded/core';
import type { Commands } from '../command.ts';
import { inEnglish, UsageError } from '../usage-error.ts';
import { allEnglish } from '../words/all-english.ts';
import { readTextFile } from './read-text.ts';

/**
 * The language in a file, YAML or JSON.
 *
 * @throws UsageError for a file that cannot be read or taken.
 */
export async function openLanguage(path: string, commands: Commands): Promise<Language> {
  const text = readTextFile(path);
  if (typeof text !== 'string')
    throw new UsageError(inEnglish(`--language ${path}: ${text.refused}. ${text.instead}.`));
  const { language, faults } = readLanguageText(text, await allEnglish(commands));
  if (language !== null) return language;
  const more = faults.length > 1 ? ` (and ${faults.length - 1} more)` : '';
  throw new UsageError(inEnglish(`--language ${path}: ${faults[0]!.replace(/\.$/, '')}${more}.`));
}
