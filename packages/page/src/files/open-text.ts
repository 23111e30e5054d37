import type { Fault, Refusal } from '@fielded/core';
import type { Desk } from '../desk/desk.ts';
import { asOpened, type Doc, type ShopDoc } from '../desk/doc.ts';
import { fetchPart } from '../desk/fetch-part.ts';
import { type Data, getAtKeys } from '../job/data.ts';
import { baseName } from './base-name.ts';
import { bytesOfAddress } from './data-address.ts';
import type { GivenFile } from './given-file.ts';

/** What came of opening files: a job for the desk, or what is wrong, in lines. */
export type Opened =
  | { readonly doc: Doc; readonly remark: string }
  | { readonly message: string; readonly lines: readonly string[] };

/** The largest job or shop file, and the largest drawing, that is opened, bytes. */
const MOST_BYTES = 1_000_000;
const MOST_DRAWING_BYTES = 8_000_000;
const DRAWING = /\.(?:svg|dxf)$/i;
const TEXT = /\.(?:ya?ml|json)$/i;
const PICTURE = /\.(?:png|jpe?g)$/i;
/** The most faults that are listed. */
const MOST_LINES = 12;

/** Reads chosen files, refusing what is too large before it is read. */
export async function readFiles(files: readonly File[]): Promise<GivenFile[] | { readonly message: string }> {
  const given: GivenFile[] = [];
  for (const file of files) {
    if (PICTURE.test(file.name) && files.some(({ name }) => TEXT.test(name))) {
      given.push({ name: file.name, text: '', bytes: new Uint8Array(await file.arrayBuffer()) });
      continue;
    }
    if (PICTURE.test(file.name))
      return {
        message: `${file.name} is a picture. To trace a sample, choose it under Own outline…, From a scan or photo….`,
      };
    const most = DRAWING.test(file.name) ? MOST_DRAWING_BYTES : MOST_BYTES;
    if (file.size > most) {
      const kinds = DRAWING.test(file.name) ? 'Drawings of up to 8 MB' : 'Job files of up to 1 MB';
      return { message: `${file.name} is ${(file.size / 1e6).toFixed(0)} MB. ${kinds} are opened.` };
    }
    const text = await readUtf8(file);
    if (text === null) return { message: `${file.name} is not in UTF-8. Save it as UTF-8; your job is as it was.` };
    given.push(...unpack({ name: file.name, text }));
  }
  return given;
}

/** The text of a file; null where its bytes are not UTF-8, so that no letter is guessed. */
async function readUtf8(file: File): Promise<string | null> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    return null;
  }
}

/** The files in a pack, which the page saved as one file; the file itself, for any other. */
function unpack(file: GivenFile): GivenFile[] {
  if (!/\.json$/i.test(file.name) || !file.text.includes('fieldedFiles')) return [file];
  try {
    const { fieldedFiles } = JSON.parse(file.text) as { fieldedFiles?: unknown };
    const files = Array.isArray(fieldedFiles) ? (fieldedFiles as Partial<GivenFile>[]) : [];
    const whole = files.filter(
      (inner): inner is GivenFile => typeof inner?.name === 'string' && typeof inner.text === 'string',
    );
    return whole.length > 0 ? whole.map(unpackOne) : [file];
  } catch {
    return [file];
  }
}

/** A file of a pack: a picture lies there as a data address. */
export function unpackOne({ name, text }: GivenFile): GivenFile {
  const bytes = bytesOfAddress(text);
  return bytes === null ? { name, text } : { name, text: '', bytes };
}

/** Whether these are drawings alone, without a job. */
export function areDrawings(files: readonly GivenFile[]): boolean {
  return files.length > 0 && files.every(({ name }) => DRAWING.test(name));
}

/** Whether these are a shop file, perhaps with its drawings and logo, without a job. */
export function areShop(files: readonly GivenFile[]): boolean {
  const texts = files.filter(({ name, bytes }) => !DRAWING.test(name) && bytes === undefined);
  return (
    texts.length === 1 &&
    !looksLikeJob(texts[0]!.text) &&
    /^["']?(?:heads|knives|machines)["']?\s*:/m.test(texts[0]!.text)
  );
}

/**
 * Opens the job among files, with the shop file and the drawings that it names if they are there too; `read` reads it as the
 * desk will. YAML is read by a part fetched now.
 */
export async function openFiles(files: readonly GivenFile[], read: Desk['readDoc']): Promise<Opened> {
  const { readFileData, readJob } = await fetchPart(() => import('./yaml-reading.ts'));
  const drawn = files.some(({ name }) => DRAWING.test(name));
  const outlines = drawn ? await fetchPart(() => import('./outline-files.ts')) : null;
  const jobs = files.filter(({ name, text }) => !DRAWING.test(name) && looksLikeJob(text));
  const job = jobs[0] ?? files.find(({ bytes }) => bytes === undefined);
  if (job === undefined) return { message: 'No file was chosen.', lines: [] };
  const others = files.filter((file) => file !== job);
  const { loadShop, loadOutline, wanted } = createLoaders(others, outlines);

  let isSound = true;
  const dataOf = (text: string): Data => {
    const { value, faults } = readFileData(text);
    isSound &&= faults.length === 0;
    return outlines === null ? plain(value) : outlines.putOutlinesIn(plain(value), loadOutline);
  };
  const data = dataOf(job.text);
  const name = typeof data === 'object' && data !== null && 'shop' in data ? String(data.shop) : '';
  const text = name === '' ? undefined : loadShop(name);
  const shop: ShopDoc | null = typeof text === 'string' ? { name, text, data: dataOf(text) } : null;
  const doc = asOpened({ data, source: job.text, fileName: job.name, shop });
  if (!isSound || read(doc).faults.length > 0) {
    // Read again as a text: its faults then have their lines.
    const { faults } = readJob(job.text, { loadShop, loadOutline });
    if (faults.length > 0) return sayFaults(job.name, faults, wanted());
  }
  const { shop: withLogo, remark } = await takeShopLogo(shop, others);
  return { doc: withLogo === shop ? doc : { ...doc, shop: withLogo }, remark };
}

/** What finds the shop and the drawings that a job names among the files opened with it; `wanted` is the shop that was not there. */
function createLoaders(
  others: readonly GivenFile[],
  outlines: typeof import('./outline-files.ts') | null,
): {
  loadShop(path: string): string | Refusal;
  loadOutline(path: string): string | Refusal;
  wanted(): string;
} {
  let wanted = '';
  return {
    wanted: () => wanted,
    loadShop(path) {
      const base = baseName(path);
      const texts = others.filter(({ name, bytes }) => !DRAWING.test(name) && bytes === undefined);
      const found = texts.find(({ name }) => name === base) ?? (texts.length === 1 ? texts[0] : undefined);
      if (found !== undefined) return found.text;
      wanted = base;
      return { refused: 'it was not opened with the job', instead: 'Choose both files at once' };
    },
    loadOutline(path) {
      const base = baseName(path);
      const found = others.find(({ name }) => name === base);
      if (found !== undefined && outlines !== null) return outlines.readOutlineFile(found.name, found.text);
      return {
        refused: 'it was not opened with the job',
        instead: 'Choose the job and its drawings at once, or drop their folder',
      };
    },
  };
}

/** What is said of a job with faults; one that only lacks its shop file asks for that. */
function sayFaults(jobName: string, faults: readonly Fault[], wantsShop: string): Opened {
  if (wantsShop !== '' && faults.every(({ code }) => code === 'shop-unreadable'))
    return { message: `${jobName} uses the shop file ${wantsShop}. Open the two together.`, lines: [] };
  return { message: `${jobName} cannot be opened; your job is as it was.`, lines: listFaults(faults) };
}

/** The shop with the logo that its file names, if that was opened with it; `remark` says what is wrong with that, '' for nothing. */
export async function takeShopLogo<S extends ShopDoc | null>(
  shop: S,
  files: readonly GivenFile[],
): Promise<{ readonly shop: S; readonly remark: string }> {
  const name = getAtKeys(shop?.data, ['logo']);
  const base = typeof name === 'string' ? baseName(name) : '';
  const file = files.find((each) => each.name === base);
  if (shop === null || file === undefined) return { shop, remark: '' };
  const { takeLogo } = await fetchPart(() => import('./take-logo.ts'));
  const taken = await takeLogo(file.name, file.bytes ?? new TextEncoder().encode(file.text));
  return 'id' in taken ? { shop: { ...shop, logo: taken.id }, remark: '' } : { shop, remark: taken.fault };
}

/** Whether a text is a job file: it has a panel, which no shop file has. */
function looksLikeJob(text: string): boolean {
  return /^\s*["']?panel["']?\s*:/m.test(text) || /[{,]\s*["']?panel["']?\s*:/.test(text);
}

function listFaults(faults: readonly Fault[]): string[] {
  const lines = faults
    .slice(0, MOST_LINES)
    .map(
      ({ line, message, file }) =>
        `${file ? `${file}, ` : ''}${line > 0 ? `${file ? 'l' : 'L'}ine ${line}: ` : ''}${message}`,
    );
  return faults.length > MOST_LINES ? [...lines, `and ${faults.length - MOST_LINES} more`] : lines;
}

/** The reader's data as ordinary objects. */
function plain(value: unknown): Data {
  return JSON.parse(JSON.stringify(value)) as Data;
}
