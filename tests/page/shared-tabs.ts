// Tabs that go from test to test: to start one anew takes longer than the page itself.
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';

/** What a page is seen on: its size, whether it is touched, its letters, and what its reader prefers. */
export type Screen = Pick<
  BrowserContextOptions,
  'viewport' | 'deviceScaleFactor' | 'hasTouch' | 'isMobile' | 'locale' | 'reducedMotion' | 'colorScheme'
>;

export interface SharedTab {
  readonly kind: string;
  readonly page: Page;
}

/** Tabs that no test uses, by the kind of their screen. */
const idle = new Map<string, Page[]>();

/** What a tab keeps for as long as it lives. */
export const kindOf = ({ reducedMotion: _, colorScheme: __, viewport: ___, ...screen }: Screen) =>
  JSON.stringify({ locale: 'en-GB', ...screen });

/** A tab of the kind that a screen asks for: one that no test uses, or a new one. */
export async function takeTab(browser: Browser, options: Screen): Promise<Page> {
  const unused = idle.get(kindOf(options))?.pop();
  if (unused) return unused;
  const { reducedMotion: _, colorScheme: __, ...screen } = options;
  const context = await browser.newContext({ locale: 'en-GB', serviceWorkers: 'block', ...screen });
  return context.newPage();
}

/**
 * Opens the page at an address with nothing kept from before. What the page that the tab showed writes on leaving is written
 * before the new one begins, and goes as well; a reload of the new one keeps what it wrote.
 */
export async function openAfresh(page: Page, at: string): Promise<void> {
  // Within one page an address after # is gone to without a load.
  if (at.includes('#')) await page.goto(new URL('icon.svg', at).href);
  const forgetting = await page.addInitScript(() => {
    localStorage.clear();
    sessionStorage.clear();
  });
  await page.goto(at);
  await forgetting.dispose();
}

/** What tests listen for on a page. */
const HEARD = ['pageerror', 'console', 'request', 'response', 'dialog', 'download'];

/** Keeps a tab for the next test, as it stands; a second tab beside it goes with all it shares with the first. */
export async function putAside({ kind, page }: SharedTab): Promise<void> {
  const context = page.context();
  if (page.isClosed() || context.pages().length > 1) return context.close();
  await rest(page);
  idle.set(kind, [...(idle.get(kind) ?? []), page]);
}

/** Nobody listens to the page, and no pointer is over it. */
export async function rest(page: Page): Promise<void> {
  for (const type of HEARD) await page.removeAllListeners(type);
  await page.mouse.move(0, 0);
}

/** Brings the job on a page to what it was when it was opened, as its maker would, and the page to its top. */
export async function undoAll(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.evaluate(async () => {
    const undo = document.querySelector<HTMLElement>('button[aria-label="Undo"]')!;
    while (undo.ariaDisabled !== 'true') {
      undo.click();
      await new Promise((settle) => setTimeout(settle));
    }
    scrollTo(0, 0);
  });
}
