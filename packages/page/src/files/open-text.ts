import type { Fault } from '@fielded/core';
import type { Doc, ShopDoc } from '../desk/doc.ts';
import type { Data } from '../job/data.ts';

/** A file as given to the page. */
export interface GivenFile {
  readonly name: string;
  readonly text: string;
}

/** What came of opening files: a job for the desk, or what is wrong, in lines; `wantsShop` where only a shop file lacks. */
export type Opened =
  | { readonly doc: Doc }
  | { readonly message: string; readonly lines: readonly string[]; readonly wantsShop?: string };

/** The largest file that is opened, bytes. */
const MOST_BYTES = 1_000_000;
const MOST_LINES = 12;

/** Reads chosen files, refusing what is too large before it is read. */
export async function readFiles(files: readonly File[]): Promise<GivenFile[] | { readonly message: string }> {
  const given: GivenFile[] = [];
  for (const file of files) {
    if (file.size > MOST_BYTES)
      return { message: `${file.name} is ${(file.size / 1e6).toFixed(0)} MB. Job files of up to 1 MB are opened.` };
    given.push({ name: file.name, text: (await file.text()).replace(/^\uFEFF/, '') });
  }
  return given;
}

/** Opens a job file, with the shop file that it names if that is among the files. YAML is read by a part fetched now. */
export async function openFiles(files: readonly GivenFile[]): Promise<Opened> {
  const { readFileData, readJob } = await import('./yaml-reading.ts');
  const jobs = files.filter(({ text }) => looksLikeJob(text));
  const job = jobs[0] ?? files[0];
  if (job === undefined) return { message: 'No file was chosen.', lines: [] };
  const others = files.filter((file) => file !== job);
  const wanted = { name: '' };
  const loadShop = (path: string) => {
    const base = path.replace(/^.*[\\/]/, '');
    const found = others.find(({ name }) => name === base) ?? (others.length === 1 ? others[0] : undefined);
    if (found !== undefined) return found.text;
    wanted.name = base;
    return { refused: 'it was not opened with the job', instead: 'Choose both files at once' };
  };
  const { faults } = readJob(job.text, { loadShop });
  if (faults.length > 0) {
    const onlyShop = wanted.name !== '' && faults.every(({ code }) => code === 'shop-unreadable');
    const message = onlyShop
      ? `${job.name} uses the shop file ${wanted.name}. Open the two together.`
      : `${job.name} cannot be opened; your job is as it was.`;
    return { message, lines: onlyShop ? [] : listFaults(faults), ...(wanted.name && { wantsShop: wanted.name }) };
  }
  const data = plain(readFileData(job.text).value);
  const shopPath = typeof data === 'object' && data !== null && 'shop' in data ? String(data.shop) : '';
  const shopText = shopPath === '' ? undefined : loadShop(shopPath);
  const shop: ShopDoc | null =
    typeof shopText === 'string' ? { name: shopPath, text: shopText, data: plain(readFileData(shopText).value) } : null;
  return { doc: { data, source: job.text, fileName: job.name, shop } };
}

/** A shop file has knives or heads and no panel. */
function looksLikeJob(text: string): boolean {
  return /^\s*["']?panel["']?\s*:/m.test(text) || /[{,]\s*["']?panel["']?\s*:/.test(text);
}

function listFaults(faults: readonly Fault[]): string[] {
  const lines = faults
    .slice(0, MOST_LINES)
    .map(({ line, message, file }) => `${file ? `${file}, ` : ''}${line > 0 ? `line ${line}: ` : ''}${message}`);
  return faults.length > MOST_LINES ? [...lines, `and ${faults.length - MOST_LINES} more`] : lines;
}

/** Data of the page's own, without the reader's bare objects. */
function plain(value: unknown): Data {
  return JSON.parse(JSON.stringify(value)) as Data;
}
