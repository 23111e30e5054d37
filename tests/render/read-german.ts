import { readFileSync } from 'node:fs';
import { type Language, readLanguageText } from '@fielded/core';
import { COMMANDS } from '../../packages/cli/src/commands.ts';
import { allEnglish } from '../../packages/cli/src/words/all-english.ts';

/** The German of the examples, whose words are longer than English ones. */
export async function readGerman(): Promise<Language> {
  const text = readFileSync('examples/languages/german.yaml', 'utf8');
  const { language, faults } = readLanguageText(text, await allEnglish(COMMANDS));
  if (language === null) throw new Error(faults.join('\n'));
  return language;
}
