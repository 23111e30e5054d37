import type { Voice } from '@fielded/core';
import type { Command, Option } from '../command.ts';
import { isDescribed, translateCommand } from '../command-texts.ts';
import { padRight } from '../terminal/columns.ts';
import { wrap } from '../terminal/table.ts';
import { say } from '../words/say.ts';
import { usageLines } from './usage.ts';

const WIDTH = 88;
/** The widest column of options; a longer one has a line of its own. */
const COLUMN = 23;

/** What `fielded help NAME` prints. */
export function helpText(name: string, given: Command, voice: Voice): string {
  const command = translateCommand(name, given, voice.language);
  const blocks = [
    usageLines(name, command, WIDTH),
    ...command.about.map((text) => fill(text, WIDTH)),
    ...optionBlocks(command),
    ...(command.after ?? []).map((text) => fill(text, WIDTH)),
    fill(statusText(command, voice), WIDTH),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function statusText({ statuses: [all, error, wrong] }: Command, voice: Voice): string {
  return error === null
    ? say('print.help.status.two', { all, wrong }, voice)
    : say('print.help.status.three', { all, error, wrong }, voice);
}

/** Text in lines, broken at any blank. */
function fill(text: string, width: number): string[] {
  return wrap(text, width, 0, / /);
}

/** The options in blocks, one for each heading. */
function optionBlocks({ options }: Command): string[][] {
  const entries = Object.entries(options);
  const column = Math.min(COLUMN, Math.max(...entries.map(([name, option]) => head(name, option).length)) + 2);
  const blocks: string[][] = [];
  for (const [name, option] of entries) {
    if (option.heading !== undefined) blocks.push([option.heading]);
    else if (blocks.length === 0) blocks.push([]);
    blocks.at(-1)!.push(...optionLines(name, option, column));
  }
  return blocks;
}

function optionLines(name: string, option: Option, column: number): string[] {
  const start = head(name, option);
  const texts = [option.says, ...choiceTexts(option)].filter((text) => text !== '');
  const lines = texts.flatMap((text) => fill(text, WIDTH - column));
  const indent = ' '.repeat(column);
  const own = start.length > column - 2;
  return own
    ? [start, ...lines.map((line) => indent + line)]
    : lines.map((line, index) => (index === 0 ? padRight(start, column) : indent) + line);
}

/** `  --seed N`, `  -o, --output FILE`. */
function head(name: string, { value, short }: Option): string {
  return `  ${short === undefined ? '' : `-${short}, `}--${name}${value === undefined ? '' : ` ${value}`}`;
}

/** A line for each value that is described. */
function choiceTexts({ choices }: Option): string[] {
  return isDescribed(choices) ? Object.entries(choices).map(([choice, what]) => `${choice}: ${what}`) : [];
}
