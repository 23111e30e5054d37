import type { Command, Option, PlacedArgument } from '../command.ts';

/** How a command is written, in lines of at most `width`, the later ones under its first option. */
export function usageLines(name: string, command: Command, width: number): string[] {
  const start = `fielded ${name}`;
  const indent = ' '.repeat(start.length);
  const lines = [start];
  for (const part of usageParts(command)) {
    if (lines.at(-1)!.length + 1 + part.length <= width) lines[lines.length - 1] += ` ${part}`;
    else lines.push(`${indent} ${part}`);
  }
  return lines;
}

/** What follows the name: `JOB…`, `[--json]`, in parts that are not broken over lines. */
function usageParts({ place, options, formats = [] }: Command): string[] {
  const parts = Object.entries(options).map(([name, option]) => {
    const text = name === 'output' ? `-o FILE${formats.join('|')}` : optionText(name, option);
    return option.required ? text : `[${text}]${(option.times ?? 1) > 1 ? '…' : ''}`;
  });
  return place.most === 0 ? parts : [placeText(place), ...parts];
}

/** `JOB`, `JOB…` or `[JOB]`. */
export function placeText({ name, least, most }: PlacedArgument): string {
  const many = most > 1 ? `${name}…` : name;
  return least === 0 ? `[${many}]` : many;
}

/** `--seed N`. */
function optionText(name: string, { value }: Option): string {
  return value === undefined ? `--${name}` : `--${name} ${value}`;
}
