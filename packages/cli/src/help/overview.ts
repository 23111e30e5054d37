import type { Commands } from '../command.ts';
import { placeText, usageLines } from './usage.ts';

/** What `fielded --help` prints. */
export async function overviewText(commands: Commands): Promise<string> {
  const entries: [start: string, summary: string][] = [];
  for (const [name, load] of Object.entries(commands)) {
    const { place, summary } = await load();
    entries.push([`  fielded ${name} ${placeText(place)}`, summary]);
  }
  const column = Math.max(...entries.map(([start]) => start.length)) + 2;
  const lines = entries.map(([start, summary]) => start.padEnd(column) + summary);
  return `fielded: the section, the fit and the drawing of raised-and-fielded panels

${lines.join('\n')}
  fielded --version

JOB is a file in YAML or JSON; docs/job-file.md describes it and examples/ has some.
Exit status: 0 all is well, 1 a job has an error, 2 an input could not be read.
`;
}

/** How every command is written, for docs/command-line.md. */
export async function usageText(commands: Commands): Promise<string> {
  const lines: string[] = [];
  for (const [name, load] of Object.entries(commands)) lines.push(...usageLines(name, await load(), 100));
  return `${[...lines, 'fielded --version'].join('\n')}\n`;
}
