import type { Command, Option } from '../command.ts';
import { usageLines } from './usage.ts';
import { wrapColumns } from './wrap.ts';

const WIDTH = 88;
/** The widest column of options; a longer one has a line of its own. */
const COLUMN = 23;

/** What `fielded help NAME` prints. */
export function helpText(name: string, command: Command): string {
  const [all, error, wrong] = command.statuses;
  const statuses = [`0 ${all}`, ...(error === null ? [] : [`1 ${error}`]), `2 ${wrong}`];
  const blocks = [
    usageLines(name, command, WIDTH),
    ...command.about.map((text) => wrapColumns(text, WIDTH)),
    ...optionBlocks(command),
    ...(command.after ?? []).map((text) => wrapColumns(text, WIDTH)),
    wrapColumns(`Exit status: ${statuses.join(', ')}.`, WIDTH),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
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
  const lines = texts.flatMap((text) => wrapColumns(text, WIDTH - column));
  const indent = ' '.repeat(column);
  const own = start.length > column - 2;
  return own
    ? [start, ...lines.map((line) => indent + line)]
    : lines.map((line, index) => (index === 0 ? start.padEnd(column) : indent) + line);
}

/** `  --seed N`, `  -o, --output FILE`. */
function head(name: string, { value, short }: Option): string {
  return `  ${short === undefined ? '' : `-${short}, `}--${name}${value === undefined ? '' : ` ${value}`}`;
}

/** A line for each value that is described. */
function choiceTexts({ choices }: Option): string[] {
  if (choices === undefined || Array.isArray(choices)) return [];
  return Object.entries(choices).map(([choice, what]) => `${choice}: ${what}`);
}
