import { choicesOf } from '../arguments.ts';
import type { Command, Commands, Option } from '../command.ts';

/** A command as completion needs it: plain lists. */
export interface CommandWords {
  readonly name: string;
  readonly summary: string;
  readonly options: readonly OptionWords[];
  /** What may stand by place: words, or files of these endings; [] for neither. */
  readonly choices: readonly string[];
  readonly endings: readonly string[];
  readonly many: boolean;
}

interface OptionWords {
  readonly name: string;
  readonly short: string | undefined;
  /** What stands for its value; undefined for a switch. */
  readonly value: string | undefined;
  readonly says: string;
  readonly choices: readonly string[];
  /** Files of these endings may be its value; [] for any file, null for none. */
  readonly endings: readonly string[] | null;
}

/** What completion may offer for every command of the table. */
export async function listWordsOf(commands: Commands): Promise<CommandWords[]> {
  const words: CommandWords[] = [];
  for (const [name, load] of Object.entries(commands)) words.push(wordsOf(name, await load(), Object.keys(commands)));
  return words;
}

function wordsOf(name: string, { summary, options, place, formats }: Command, names: readonly string[]): CommandWords {
  return {
    name,
    summary,
    options: Object.entries(options).map(([option, spec]) => ({
      name: option,
      short: spec.short,
      value: spec.value,
      says: shorten(spec),
      choices: choicesOf(spec),
      endings: option === 'output' ? (formats ?? []) : (spec.endings ?? null),
    })),
    choices: place.choices === 'commands' ? names : (place.choices ?? []),
    endings: place.endings ?? [],
    many: place.most > 1,
  };
}

/** What an option does in a few words: its help up to the first stop. */
function shorten({ says, choices, value = '' }: Option): string {
  const [first = ''] = says.split(/[;:.] |: |, (?=\.)/);
  if (first !== '') return first.length > 60 ? `${first.slice(0, first.lastIndexOf(' ', 58))} …` : first;
  return choices === undefined ? value : choicesOf({ says, choices }).join(', ');
}
