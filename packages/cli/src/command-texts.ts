import type { Catalogue, Language, Voice } from '@fielded/core';
import type { Command, Commands, Option } from './command.ts';
import { FORCE, JSON_OUT, LANGUAGE, SHOP } from './commands/shared-options.ts';
import { safe } from './io.ts';
import type { Unsaid } from './usage-error.ts';

// What the table of commands says of each of them, as entries of the catalogue: `help.COMMAND` with what it is about.

/** Gives the words to use for a text of the table, from its key in the catalogue and its English. */
type SayText = (key: string, english: string) => string;

/** Options in the same words everywhere: one entry for all commands. */
const SHARED: readonly Option[] = [SHOP, LANGUAGE, FORCE, JSON_OUT];

/** A command with every text of its help in a language. */
export function translateCommand(name: string, command: Command, language: Language | undefined): Command {
  return language === undefined ? command : replaceTexts(name, command, textIn(language));
}

/** Every text of the commands by its key, in English. */
export async function commandTexts(commands: Commands): Promise<Catalogue> {
  const texts: Record<string, string> = {};
  const note: SayText = (key, english) => {
    texts[key] = english;
    return english;
  };
  for (const [name, load] of Object.entries(commands)) {
    const command = await load();
    replaceTexts(name, command, note);
    for (const [key, sentence] of Object.entries(placeSentences(name, command))) note(key, sentence);
  }
  return texts;
}

/** What to say where too little or too much stands by place; null where a command takes that. */
export function placeTexts(name: string, command: Command): { readonly needs: Unsaid | null; takes: Unsaid | null } {
  const sentences = placeSentences(name, command);
  const unsaidText = (key: string): Unsaid | null => {
    const english = sentences[key];
    return english === undefined ? null : ({ language }: Voice) => textIn(language)(key, english);
  };
  return { needs: unsaidText(`help.${name}.needs`), takes: unsaidText(`help.${name}.takes`) };
}

function placeSentences(name: string, { place: { needs, takes } }: Command): Catalogue {
  return {
    ...(needs !== undefined && { [`help.${name}.needs`]: `${name} needs ${needs}.` }),
    ...(takes !== undefined && { [`help.${name}.takes`]: `${name} takes ${takes}.` }),
  };
}

function textIn(language: Language | undefined): SayText {
  const sentences = language?.sentences ?? {};
  return (key, english) => (Object.hasOwn(sentences, key) ? safe(sentences[key]!) : english);
}

function replaceTexts(name: string, command: Command, say: SayText): Command {
  const key = `help.${name}`;
  const sayEach = (part: string, texts: readonly string[]) =>
    texts.map((text, place) => say(`${key}.${part}.${place + 1}`, text));
  const [all, error, wrong] = command.statuses;
  return {
    ...command,
    summary: say(key, command.summary),
    about: sayEach('about', command.about),
    options: Object.fromEntries(
      Object.entries(command.options).map(([option, spec]) => [
        option,
        replaceOption(`${SHARED.includes(spec) ? 'help' : key}.option.${option}`, spec, say),
      ]),
    ),
    ...(command.after && { after: sayEach('after', command.after) }),
    statuses: [
      say(`${key}.status.0`, all),
      error === null ? null : say(`${key}.status.1`, error),
      say(`${key}.status.2`, wrong),
    ],
  };
}

function replaceOption(key: string, option: Option, say: SayText): Option {
  const { says, heading, choices } = option;
  return {
    ...option,
    says: say(key, says),
    ...(heading !== undefined && { heading: say(`${key}.heading`, heading) }),
    ...(isDescribed(choices) && {
      choices: Object.fromEntries(
        Object.entries(choices).map(([choice, what]) => [choice, say(`${key}.${choice}`, what)]),
      ),
    }),
  };
}

/** Whether each value of an option has a line of its own. */
export function isDescribed(choices: Option['choices']): choices is Readonly<Record<string, string>> {
  return choices !== undefined && !Array.isArray(choices);
}
