import { cpSync } from 'node:fs';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { type GivenFile, type Served, servePage } from '../../packages/cli/src/serve/serve-page.ts';
import { builtPage } from '../support/built-page.ts';
import { findBrowser, scratchFolder } from '../support/programs.ts';

/** The page built from its sources, served, and a browser to open it in; all gone when the test file is done. */
export interface Bench {
  readonly folder: string;
  readonly browser: Browser;
  address: string;
  /**
   * A page in a browser of its own: nothing kept from before, and gone after the test. It keeps no worker for lack of a
   * network unless OFFLINE is among the options: fetching everything anew takes a quarter of the time of a page.
   */
  open(options?: BrowserContextOptions, at?: string): Promise<Page>;
  /** Serves the page with files for its desk. */
  serve(files: readonly GivenFile[]): Promise<Served>;
}

export const PHONE: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  hasTouch: true,
  isMobile: true,
};
/** With the worker by which the page does without a network. */
export const OFFLINE: BrowserContextOptions = { serviceWorkers: 'allow' };
export const DESKTOP: BrowserContextOptions = { viewport: { width: 1440, height: 900 } };

/** Sets up a bench for one test file. Whatever goes wrong on a page that was opened fails the file. */
export function setUpBench(): Bench {
  const folder = scratchFolder();
  const closing: (() => Promise<unknown>)[] = [];
  const faults: string[] = [];
  let contexts: BrowserContext[] = [];
  const closed = new Set<BrowserContext>();
  const bench = { folder, address: '' } as { -readonly [K in keyof Bench]: Bench[K] };
  bench.open = async (options = DESKTOP, at = bench.address) => {
    const context = await bench.browser.newContext({ locale: 'en-GB', serviceWorkers: 'block', ...options });
    contexts.push(context);
    context.on('page', (page) =>
      page.on('pageerror', (error) => {
        // A page that is torn down with a fetch on its way is not at fault.
        if (!closed.has(context)) faults.push(`${error.message}\n${error.stack}`);
      }),
    );
    const page = await context.newPage();
    await page.goto(at);
    await ready(page);
    return page;
  };
  bench.serve = async (files) => {
    const served = await servePage(folder, () => files);
    closing.push(() => served.close());
    return served;
  };
  beforeAll(async () => {
    cpSync(await builtPage(), folder, { recursive: true });
    bench.browser = await chromium.launch({
      executablePath: findBrowser().path,
      args: ['--no-sandbox', '--disable-gpu'],
    });
    const served = await servePage(folder, null);
    bench.address = served.address;
    closing.push(() => served.close());
  }, 60_000);
  // What a test leaves open goes on drawing beside the next one.
  afterEach(async () => {
    const open = contexts;
    contexts = [];
    for (const context of open) closed.add(context);
    await Promise.all(open.map((context) => context.close()));
  });
  afterAll(async () => {
    for (const close of closing.reverse()) await close().catch(() => {});
    await bench.browser?.close();
    if (faults.length > 0) throw new Error(`The page failed:\n${faults.join('\n')}`);
  });
  return bench;
}

/** Waits until the drawing stands. */
export async function ready(page: Page): Promise<void> {
  await page.locator('.drawing .dimension').first().waitFor();
}

/** A figure above the sheet, mm; null for one that there is none of. */
export async function figureOf(page: Page, name: string): Promise<number | null> {
  const value = await page.locator(`[data-figure="${name}"]`).getAttribute('value');
  return value === '' || value === null ? null : Number(value);
}

/** Taps the figure of a dimension. */
export async function tapDimension(page: Page, of: string): Promise<void> {
  const { x, y } = await middleOf(page, `.drawing [data-of="${of}"] .target`);
  if (await page.evaluate(() => navigator.maxTouchPoints > 0)) await page.touchscreen.tap(x, y);
  else await page.mouse.click(x, y);
}

export async function middleOf(page: Page, selector: string): Promise<{ x: number; y: number }> {
  const box = await page.locator(selector).first().boundingBox();
  if (box === null) throw new Error(`${selector} is not on the page`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** The field of a size by its path in the job file. */
export function field(page: Page, path: string) {
  return page.locator(`input[data-path="${path}"]`);
}
