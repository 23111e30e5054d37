import { cpSync } from 'node:fs';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { type Served, servePage } from '../../packages/cli/src/serve/serve-page.ts';
import { builtPage } from '../support/built-page.ts';
import { findBrowser, scratchFolder } from '../support/programs.ts';
import { kindOf, openAfresh, putAside, rest, type Screen, type SharedTab, takeTab, undoAll } from './shared-tabs.ts';

/** The page built from its sources, served, and a browser to open it in. */
export interface Bench {
  /** A folder of this file's own. */
  readonly folder: string;
  /** Where the page lies that is shown: for all test files, so to be read alone. */
  built: string;
  readonly browser: Browser;
  address: string;
  /**
   * A page with nothing kept from before, in a tab that is used again by the next test that asks for the same kind of
   * screen, of whatever size: to start one anew takes longer than the page itself.
   */
  open(options?: Screen, at?: string): Promise<Page>;
  /**
   * The page as the last test that asked for it so left it, everything undone and nothing open, or a new one where there is
   * none or that test failed: for tests that leave nothing behind but steps of undo. A load takes ten times what they take.
   */
  goOn(options?: Screen): Promise<Page>;
  /**
   * A page in a browser of its own, gone after the test: for tests that change more of the browser than one page keeps. It
   * keeps no worker for lack of a network unless OFFLINE is among the options: fetching everything anew takes a quarter of
   * the time of a page.
   */
  openAlone(options?: BrowserContextOptions, at?: string): Promise<Page>;
  /** Serves a copy of the page, put into this file's own folder. */
  serveCopy(): Promise<Served>;
}

export const PHONE: Screen = {
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  hasTouch: true,
  isMobile: true,
};
/** With the worker by which the page does without a network. */
export const OFFLINE: BrowserContextOptions = { serviceWorkers: 'allow' };
/**
 * Nothing moves unless a test asks for it: a colour on its way to another is none to judge, and is painted eight times at every
 * press, a seventh of what a press takes. Only colours and the panel that slides in move at all; a test of its own looks at that
 * with and without.
 */
const STILL = 'reduce';
export const DESKTOP: Screen = { viewport: { width: 1440, height: 900 } };

/**
 * No page lives long enough to win back what the slowest of the engine's compilers takes; the one before it does, but later than
 * usual, and not sooner for code that an earlier page ran. What several threads clear up together takes more: they wait for each
 * other. An engine that does not know one of these options takes none of those after it.
 */
const ENGINE =
  '--js-flags=--no-opt --single-threaded-gc --no-profile-guided-optimization --invocation-count-for-maglev=1500';

/** The browser of this process, for all its test files; it goes when the process does. */
let launched: Promise<Browser> | undefined;
/** The page served to it, at one address for all: what it has fetched of it stays fetched. */
let shown: Promise<Served> | undefined;

function launch(): Promise<Browser> {
  const args = ['--no-sandbox', '--disable-gpu', ENGINE];
  launched ??= chromium.launch({ executablePath: findBrowser().path, args });
  return launched;
}

/** Sets up a bench for one test file. Whatever goes wrong on a page that was opened fails the file. */
export function setUpBench(): Bench {
  const folder = scratchFolder();
  const closing: (() => Promise<unknown>)[] = [];
  const faults: string[] = [];
  let alone: BrowserContext[] = [];
  let shared: SharedTab[] = [];
  /** What the next test may go on with, by the kind of its screen. */
  const left = new Map<string, SharedTab>();
  const goingOn = new Set<Page>();
  const closed = new Set<BrowserContext>();
  const bench = { folder, built: '', address: '' } as { -readonly [K in keyof Bench]: Bench[K] };
  const noteFaults = (page: Page) =>
    page.on('pageerror', (error) => {
      // A page that is torn down with a fetch on its way is not at fault.
      if (!closed.has(page.context())) faults.push(`${error.message}\n${error.stack}`);
    });

  bench.openAlone = async (options = DESKTOP, at = bench.address) => {
    const context = await bench.browser.newContext({
      locale: 'en-GB',
      serviceWorkers: 'block',
      reducedMotion: STILL,
      ...options,
    });
    alone.push(context);
    context.on('page', noteFaults);
    const page = await context.newPage();
    await page.goto(at);
    await ready(page);
    return page;
  };
  const show = async (page: Page, screen: Screen) => {
    shared.push({ kind: kindOf(screen), page });
    const { reducedMotion = STILL, colorScheme = 'light', viewport } = screen;
    await page.emulateMedia({ reducedMotion, colorScheme, media: null });
    const now = page.viewportSize();
    if (viewport && (viewport.width !== now?.width || viewport.height !== now.height))
      await page.setViewportSize(viewport);
  };
  /** Puts aside what no test goes on with. */
  const letGo = async (kind: string) => {
    const tab = left.get(kind);
    left.delete(kind);
    if (tab) await putAside(tab);
  };
  bench.goOn = async (screen = DESKTOP) => {
    const kind = kindOf(screen);
    const kept = left.get(kind);
    left.delete(kind);
    const page = kept?.page ?? (await bench.open(screen));
    goingOn.add(page);
    if (kept) {
      await show(page, screen);
      await undoAll(page);
    }
    return page;
  };
  bench.open = async (options = DESKTOP, at = bench.address) => {
    await letGo(kindOf(options));
    const page = await takeTab(bench.browser, options);
    await show(page, options);
    noteFaults(page);
    await openAfresh(page, at);
    await ready(page);
    return page;
  };
  bench.serveCopy = async () => {
    cpSync(bench.built, folder, { recursive: true });
    const served = await servePage(folder, null);
    closing.push(() => served.close());
    return served;
  };
  beforeAll(async () => {
    bench.built = await builtPage();
    bench.browser = await launch();
    shown ??= servePage(bench.built, null);
    bench.address = (await shown).address;
  }, 60_000);
  // What a test leaves open goes on drawing beside the next one.
  afterEach(async ({ task }) => {
    const [contexts, tabs] = [alone, shared];
    [alone, shared] = [[], []];
    // Who failed in the middle of a drag leaves the button down.
    const spoilt = task.result?.state === 'fail';
    const kept = spoilt ? [] : tabs.filter(({ page }) => goingOn.has(page));
    goingOn.clear();
    if (spoilt) contexts.push(...tabs.map(({ page }) => page.context()));
    for (const context of contexts) closed.add(context);
    await Promise.all([
      ...contexts.map((context) => context.close()),
      ...(spoilt ? [] : tabs.map((tab) => !kept.includes(tab) && putAside(tab))),
    ]);
    for (const tab of kept) {
      left.set(tab.kind, tab);
      await rest(tab.page);
      noteFaults(tab.page);
    }
  });
  afterAll(async () => {
    for (const kind of [...left.keys()]) await letGo(kind);
    for (const close of closing.reverse()) await close().catch(() => {});
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
  const target = `.drawing [data-of="${of}"] .target`;
  const { x, y } = await middleAtRest(page, target);
  if (await page.evaluate(() => navigator.maxTouchPoints > 0)) await page.touchscreen.tap(x, y);
  else await page.mouse.click(x, y);
}

/** The middle of what is drawn once it stays there: after a change of the screen a drawing is fitted anew, step by step. */
async function middleAtRest(page: Page, selector: string): Promise<{ x: number; y: number }> {
  let last = await middleOf(page, selector);
  for (;;) {
    // The page's own clock: a busy one has not drawn anew yet.
    await page.evaluate(() => new Promise((rest) => setTimeout(rest, 100)));
    const now = await middleOf(page, selector);
    if (now.x === last.x && now.y === last.y) return now;
    last = now;
  }
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
