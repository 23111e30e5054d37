import { basename, dirname, join } from 'node:path';
import { readFileData } from '@fielded/core';
import { type Command, defineCommand } from '../command.ts';
import { shopLoader } from '../files/load-shop.ts';
import { readLogo } from '../files/read-logo.ts';
import { readTextFile } from '../files/read-text.ts';
import type { Io } from '../io.ts';
import { refusalLine } from '../report/list-faults.ts';
import { openBrowser } from '../serve/open-browser.ts';
import { type GivenFile, type Served, servePage } from '../serve/serve-page.ts';
import { findSite } from '../serve/site.ts';
import { inEnglish, UsageError, unsaid } from '../usage-error.ts';
import { FILE_ENDINGS } from './shared-options.ts';

/**
 * `fielded open`: the page, served on this machine alone until the command is stopped, with a job on it if one is named.
 * Gives 0 when stopped, 2 for wrong use, a job that cannot be read or a page that is not there.
 */
export const open: Command = defineCommand(
  {
    summary: 'the page: change sizes on the drawing itself, in a browser',
    place: { name: 'JOB', least: 0, most: 1, takes: 'one job', endings: FILE_ENDINGS },
    about: [
      'Serves the page on this machine alone, prints its address and opens it in the browser; with a job, that job lies on it. The job file itself is only read: save from the page. Ctrl+C stops it.',
    ],
    options: {
      'no-browser': { says: 'only serve, and print the address' },
      port: {
        value: 'NUMBER',
        whole: [1, 65_535],
        says: 'at this port; otherwise 8347, or any that is free where that is taken. What the browser keeps of your jobs belongs to the address',
      },
    },
    statuses: ['stopped', null, 'wrong use or the job could not be read'],
  },
  async ({ path, values }, io) =>
    openPage(path === '' ? undefined : path, values.port ?? null, !values['no-browser'], io),
);

async function openPage(path: string | undefined, port: number | null, browser: boolean, io: Io): Promise<number> {
  const folder = findSite();
  if (folder === null) {
    await io.err('fielded: the page has not been built. Run npm run build first.\n');
    return 2;
  }
  if (path !== undefined) {
    const text = readTextFile(path);
    if (typeof text !== 'string') {
      await io.err(refusalLine(path, text));
      return 2;
    }
  }
  const served = await serve(folder, path, port);
  const address = path === undefined ? served.address : `${served.address}#file`;
  try {
    await io.out(`${address}\n`);
    if (browser && !(await openBrowser(address)))
      await io.err('fielded: no browser could be opened from here. Open the address above in one.\n');
    await io.err('fielded: the page is served to this machine alone. Ctrl+C stops it.\n');
    await io.stopped();
  } finally {
    // Closes the server also when its address could not be printed.
    await served.close();
  }
  return 0;
}

/** What a browser keeps belongs to an address: at the same port again, earlier jobs are there again. */
const USUAL_PORT = 8347;

async function serve(folder: string, path: string | undefined, port: number | null): Promise<Served> {
  const files = path === undefined ? null : filesReader(path);
  try {
    return await servePage(folder, files, port ?? USUAL_PORT);
  } catch (error) {
    const taken = (error as NodeJS.ErrnoException).code === 'EADDRINUSE';
    if (taken && port === null) return servePage(folder, files);
    throw new UsageError(
      taken
        ? unsaid('print.usage.port', { port: String(port) })
        : inEnglish(`the page cannot be served: ${String(error)}`),
    );
  }
}

/** Gives the job's file as it is now, and the shop file that it names, if that may be read; a job that has not changed is not parsed again. */
export function filesReader(path: string): () => GivenFile[] {
  let known: { readonly text: string; readonly shop: string | null } | null = null;
  return () => {
    const text = readTextFile(path);
    if (typeof text !== 'string') return [];
    if (known?.text !== text) known = { text, shop: namedIn(text, 'shop') };
    const job = { name: basename(path), text };
    if (known.shop === null) return [job];
    const loaded = shopLoader(path)(known.shop);
    if (typeof loaded !== 'string') return [job];
    const shopPath = join(dirname(path), known.shop);
    return [job, { name: basename(shopPath), text: loaded }, ...logoOf(shopPath, loaded)];
  };
}

/** The logo that a shop file names, as the page reads it beside the two. */
function logoOf(shopPath: string, text: string): GivenFile[] {
  const name = namedIn(text, 'logo');
  const bytes = name === null ? null : readLogo(shopPath, name);
  if (name === null || bytes === null || 'refused' in bytes) return [];
  return [{ name: basename(name), text: `data:;base64,${Buffer.from(bytes).toString('base64')}` }];
}

/** The file that a key at the top level names. */
function namedIn(text: string, key: 'shop' | 'logo'): string | null {
  const value = (readFileData(text).value as { shop?: unknown; logo?: unknown } | null)?.[key];
  return typeof value === 'string' ? value : null;
}
