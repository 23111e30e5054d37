import { readFileSync, statSync } from 'node:fs';
import { extname } from 'node:path';
import { CUTTING_HEADINGS } from '../formats/cutting-csv.ts';
import { QUOTE_HEADINGS } from '../formats/quote-csv.ts';
import { explainFailure, type Refusal } from './read-text.ts';
import { writeWhole } from './write-whole.ts';

/** What marks a file as written here, one for each way a format can carry it: a comment, a PDF's producer, a PNG's software. */
const MADE_HERE = 'made by fielded';
const MARKS = [MADE_HERE, '(fielded)', 'Software\0fielded'];
/** Ordinates carry no comment: their headings are ours. */
const HEADINGS = ['s (mm),t (mm)', 's (in),t (in)', CUTTING_HEADINGS, QUOTE_HEADINGS];
/** Nothing that is written here comes near this many bytes. */
const LARGEST_OURS = 64_000_000;

/**
 * Writes what a command made, whole or not at all. A file that stands there already is replaced only if it is empty, was
 * written by this tool, or `force` is given. Gives what stood in the way, or null.
 */
export function writeOutput(path: string, content: string | Uint8Array, force: boolean): Refusal | null {
  try {
    if (!force && isSomeoneElses(path))
      return {
        refused: 'this file is there already, and fielded did not write it',
        instead: 'Choose another name, or give --force to replace it',
      };
  } catch (error) {
    // That a folder on the way is a file is for the writing to say.
    if ((error as NodeJS.ErrnoException).code !== 'ENOTDIR') return explainFailure(error);
  }
  return writeWhole(path, typeof content === 'string' ? mark(path, content) : content);
}

function isSomeoneElses(path: string): boolean {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined || !found.isFile() || found.size === 0) return false;
  if (found.size > LARGEST_OURS) return true;
  const text = readFileSync(path, 'latin1');
  return !MARKS.some((sign) => text.includes(sign)) && !HEADINGS.some((heading) => text.startsWith(heading));
}

/** The text with its mark, where the format has comments: group 999 in DXF, after the root in SVG and HTML. */
function mark(path: string, text: string): string {
  const ending = extname(path).toLowerCase();
  if (ending === '.dxf') return `999\n${MADE_HERE}\n${text}`;
  if (ending === '.svg' || ending === '.html') return `${text.trimEnd()}\n<!-- ${MADE_HERE} -->\n`;
  return text;
}
