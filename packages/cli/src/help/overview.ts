import type { Voice } from '@fielded/core';
import type { Commands } from '../command.ts';
import { translateCommand } from '../command-texts.ts';
import { padRight } from '../terminal/columns.ts';
import { wrap } from '../terminal/table.ts';
import { say } from '../words/say.ts';
import { placeText, usageLines } from './usage.ts';

const WIDTH = 90;

/** What `fielded --help` prints. */
export async function overviewText(commands: Commands, voice: Voice): Promise<string> {
  const entries: [start: string, summary: string][] = [];
  for (const [name, load] of Object.entries(commands)) {
    const { place, summary } = translateCommand(name, await load(), voice.language);
    entries.push([`  fielded ${name} ${placeText(place)}`, summary]);
  }
  const column = Math.max(...entries.map(([start]) => start.length)) + 2;
  const lines = entries.flatMap(([start, summary]) => wrap(padRight(start, column) + summary, WIDTH, column));
  return `${say('print.help.title', {}, voice)}

${lines.join('\n')}
  fielded --version

${say('print.help.job', {}, voice)}
${say('print.help.statuses', {}, voice)}
`;
}

/** How every command is written, for docs/command-line.md. */
export async function usageText(commands: Commands): Promise<string> {
  const lines: string[] = [];
  for (const [name, load] of Object.entries(commands)) lines.push(...usageLines(name, await load(), 100));
  return `${[...lines, 'fielded --version'].join('\n')}\n`;
}
