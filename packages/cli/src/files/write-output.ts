import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { extname } from 'node:path';
import type { Refusal, Voice } from '@fielded/core';
import { csvRow } from '../formats/csv-row.ts';
import { cuttingHeadings } from '../formats/cutting-csv.ts';
import { quoteHeadings } from '../formats/quote-csv.ts';
import { wasRead } from './files-read.ts';
import { explainFailure } from './read-text.ts';
import { writeWhole } from './write-whole.ts';

/** What marks a file as written here, one for each way a format can carry it: a comment, a PDF's producer, a PNG's software. */
const MADE_HERE = 'made by fielded';
const MARKS = [MADE_HERE, '(fielded)', 'Software\0fielded'];
/** Nothing that is written here comes near this many bytes. */
const LARGEST_OURS = 64_000_000;

/**
 * Writes what a command made, whole or not at all. A file that stands there already is replaced only if it is empty, was
 * written by this tool and not changed by hand since, or `force` is given; one that this run has read, never. Gives what
 * stood in the way, or null.
 */
export function writeOutput(path: string, content: string | Uint8Array, force: boolean, voice: Voice): Refusal | null {
  try {
    const refusal = standsInTheWay(path, force, voice);
    if (refusal !== null) return refusal;
  } catch (error) {
    // writeWhole reports a path that leads through a file.
    if (!['ENOTDIR', 'ENAMETOOLONG'].includes((error as NodeJS.ErrnoException).code ?? ''))
      return explainFailure(error);
  }
  return writeWhole(path, typeof content === 'string' ? mark(path, content) : content);
}

function standsInTheWay(path: string, force: boolean, voice: Voice): Refusal | null {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined || !found.isFile()) return null;
  if (wasRead(found))
    return { refused: 'this file was read for what is to be written into it', instead: 'Choose another name' };
  if (force || found.size === 0) return null;
  const instead = 'Choose another name, or give --force to replace it';
  const text = found.size > LARGEST_OURS ? '' : readFileSync(path, 'latin1');
  if (!MARKS.some((sign) => text.includes(sign)) && !startsAsOurs(text, voice))
    return { refused: 'this file is there already, and fielded did not write it', instead };
  if (isChanged(text)) return { refused: 'this file has been changed since fielded wrote it', instead };
  return null;
}

/** Tables carry no comment: their headings are ours, in English or in the user's language. */
function startsAsOurs(latin1: string, voice: Voice): boolean {
  const tables = [voice, IN_ENGLISH].flatMap((each) => [cuttingHeadings(each), quoteHeadings(each)]);
  const known = [['s (mm)', 't (mm)'], ['s (in)', 't (in)'], ...tables];
  const starts = known.flatMap((headings) =>
    (['.', ','] as const).map((decimal) => csvRow(headings, decimal).trimEnd()),
  );
  return starts.some((start) => latin1.startsWith(Buffer.from(start, 'utf8').toString('latin1')));
}

const IN_ENGLISH: Voice = { units: 'mm' };

/** Whether a text with our mark was changed after its checksum was made. */
function isChanged(latin1: string): boolean {
  const found = new RegExp(`${MADE_HERE} \\[([0-9a-f]{12})\\]`).exec(latin1);
  if (found === null) return false;
  return sumOf(Buffer.from(latin1.replace(found[0], MADE_HERE), 'latin1')) !== found[1];
}

/** The first twelve hexadecimal digits of its SHA-256. */
function sumOf(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex').slice(0, 12);
}

/** The text with its mark and checksum, where the format has comments: group 999 in DXF, after the root in SVG and HTML, last in YAML. */
function mark(path: string, text: string): string {
  const ending = extname(path).toLowerCase();
  const marked =
    ending === '.dxf'
      ? `999\n${MADE_HERE}\n${text}`
      : ending === '.svg' || ending === '.html'
        ? `${text.trimEnd()}\n<!-- ${MADE_HERE} -->\n`
        : ending === '.yaml'
          ? `${text.trimEnd()}\n# ${MADE_HERE}\n`
          : null;
  if (marked === null) return text;
  // The mark stands first in DXF and last in the others: what is drawn may hold the same words.
  const at = ending === '.dxf' ? marked.indexOf(MADE_HERE) : marked.lastIndexOf(MADE_HERE);
  const end = at + MADE_HERE.length;
  return `${marked.slice(0, end)} [${sumOf(marked)}]${marked.slice(end)}`;
}
