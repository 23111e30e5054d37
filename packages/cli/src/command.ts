import type { Io } from './io.ts';

/** What may be given by place: `JOB`, `JOB…` or `[JOB]`. */
export interface PlacedArgument {
  /** As it stands in the help: JOB, SHOP, COMMAND. */
  readonly name: string;
  /** 0 where it may be left out, else 1. */
  readonly least: 0 | 1;
  /** How many may be given; Infinity for any number. */
  readonly most: number;
  /** Completes "check needs …" where one is missing: "a job file, or a folder of them"; left out where none is needed. */
  readonly needs?: string;
  /** Completes "draw takes …" where there are too many: "one job at a time"; left out where any number is taken. */
  readonly takes?: string;
  /** The endings of the files that it may be; none for a word. */
  readonly endings?: readonly string[];
  /** Words to choose from; `commands` for the names of the commands. */
  readonly choices?: readonly string[] | 'commands';
}

/** One option of a command: with `value` it takes one, without it is a switch. */
export interface Option {
  /** What stands for its value in the help: FILE, N, WORDS. */
  readonly value?: string;
  readonly short?: string;
  /** The command cannot do without it. */
  readonly required?: true;
  /** How often it may be given at most; its value is then a list. */
  readonly times?: number;
  /** What it does, for the help; broken into lines there. */
  readonly says: string;
  /** The only values there are; one that is described gets a line of its own in the help. */
  readonly choices?: readonly string[] | Readonly<Record<string, string>>;
  /** The value is a whole number within these, both included. */
  readonly whole?: readonly [least: number, most: number];
  /** Completed with files of these endings; [] for any file. */
  readonly endings?: readonly string[];
  /** A heading that the options below stand under, up to the next one with a heading. */
  readonly heading?: string;
}

type Options = Readonly<Record<string, Option>>;

type Choice<C> = C extends readonly (infer Word)[] ? Word : keyof C & string;

type Text<O extends Option> = O extends { readonly whole: readonly [number, number] }
  ? number
  : O extends { readonly choices: infer C }
    ? Choice<C>
    : string;

type Value<O extends Option> = O extends { readonly times: number }
  ? readonly string[]
  : O extends { readonly value: string }
    ? O extends { readonly required: true }
      ? Text<O>
      : Text<O> | undefined
    : boolean;

/** What a command was given, read and checked against what it takes. */
export interface Given<O extends Options = Options, F extends string = string> {
  /** What stands by place, in order. */
  readonly paths: readonly string[];
  /** The first of them; '' where there is none, which only a command whose `least` is 0 meets. */
  readonly path: string;
  /** By the option's name: a word, a number where it is `whole`, true or false for a switch; undefined where not given. */
  readonly values: { readonly [K in keyof O]: Value<O[K]> };
  /** The ending of the file to write, one of `formats`: the first of them where no file is named. */
  readonly format: F;
}

/** Everything about a command: reading what it is given, its help, its completion and its place in the docs follow from it. */
export interface CommandSpec<O extends Options, F extends string> {
  /** One line for the overview, up to 60 characters. */
  readonly summary: string;
  readonly place: PlacedArgument;
  /** What it does, in paragraphs. */
  readonly about: readonly string[];
  /** In the order of the help; `output` is -o, and its ending is checked against `formats`. */
  readonly options: O;
  /** The endings that `--output` may have, the usual one first. */
  readonly formats?: readonly F[];
  /** Said after the options. */
  readonly after?: readonly string[];
  /** What the exit status 0, 1 and 2 mean for it; null where it does not occur. */
  readonly statuses: readonly [all: string, error: string | null, wrong: string];
}

/** A command of the table, whatever it takes. */
export interface Command extends CommandSpec<Options, string> {
  /** Does it; gives the exit status. Throws `UsageError` for wrong use. */
  run(given: Given, io: Io, commands: Commands): Promise<number>;
}

/** The commands by name, each loaded only when it is wanted: `check` starts without what draws. */
export type Commands = Readonly<Record<string, () => Promise<Command>>>;

/** Makes a command whose `run` gets its values with the types of its own options and formats. */
export function defineCommand<const O extends Options, const F extends string = never>(
  spec: CommandSpec<O, F>,
  run: (given: Given<O, F>, io: Io, commands: Commands) => Promise<number>,
): Command {
  // The values were read by this spec, so their types hold.
  return { ...spec, run: run as unknown as Command['run'] };
}
