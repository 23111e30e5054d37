// From nothing to doors, a cutting list, a set-up read at the machine and a quote's PDF: on a phone, without a network, by keyboard alone.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { runProgram } from '../support/programs.ts';
import { axeFaults } from './axe.ts';
import { OFFLINE, PHONE, setUpBench } from './open-page.ts';

const bench = setUpBench();
/** So many stops are made in search of one. */
const MOST_STOPS = 90;

/** What a screen reader calls the element in focus, or the path of its field. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLInputElement | null;
    const words = at?.getAttribute('aria-label') ?? at?.labels?.[0]?.textContent ?? at?.textContent ?? '';
    return `${words.trim()} ${at?.dataset.path ?? ''}`.trim();
  });

/** Goes on with Tab until something of this name has the focus. */
async function reach(page: Page, name: RegExp): Promise<void> {
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    if (name.test(await focused(page))) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`${name} is not among the next ${MOST_STOPS} stops`);
}

async function press(page: Page, name: RegExp): Promise<void> {
  await page.keyboard.press('Tab');
  await reach(page, name);
  await page.keyboard.press('Enter');
}

async function type(page: Page, name: RegExp, text: string): Promise<void> {
  await reach(page, name);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
}

async function save(page: Page, name: RegExp): Promise<string> {
  const download = page.waitForEvent('download');
  await press(page, name);
  return runProgram('pdftotext', ['-layout', await (await download).path(), '-']).toString();
}

/** Goes to a part of the job: its name stands in the row of parts. */
async function go(page: Page, part: string, first?: string): Promise<void> {
  await page.locator('.rooms button').first().focus();
  await press(page, new RegExp(`^${part}$`));
  // The part is fetched when it is first shown: no key goes to it before it is there.
  if (first !== undefined) await page.getByRole('button', { name: first, exact: true }).waitFor();
}

it('goes from nothing to the quote', async () => {
  const page = await bench.openAlone({ ...PHONE, ...OFFLINE, reducedMotion: 'reduce' });
  const faults: string[] = [];
  const check = async (state: string) => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      faults.push(...(await axeFaults(page)).map((fault) => `${state}, ${colorScheme}: ${fault}`));
    }
    if (await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)) faults.push(`${state}: too wide`);
  };
  await page.evaluate(() => navigator.serviceWorker.ready);
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  await page.context().setOffline(true);

  await press(page, /^Job$/);
  await page.locator('.menu-list button').first().waitFor();
  await press(page, /^New/);
  await page.locator('.preview').waitFor();
  await type(page, /^Name$/, 'Pantry');
  await press(page, /^Begin$/);

  await go(page, 'Doors', 'Add a door');
  await press(page, /^Add a door$/);
  await page.locator('[data-path="doors[0].quantity"]').waitFor();
  await type(page, /doors\[0\]\.quantity/, '4');
  await type(page, /doors\[0\]\.width/, '450');
  const list = await save(page, /^Cutting list as PDF$/);
  expect(list).toMatch(/stile\s+8\s+700/);
  await check('doors');

  await go(page, 'Shop', 'Add a head');
  await press(page, /^Add a head$/);
  await press(page, /^Add a machine$/);

  await go(page, 'Set-up');
  const choices = page.locator('.head-choices select');
  await choices.first().waitFor();
  while ((await choices.count()) > 0) {
    await reach(page, /^(?:raise|back relief)/);
    await page.keyboard.type('head');
    await page.keyboard.press('Tab');
    await page.locator('.rooms [aria-current]').focus();
  }
  await page.locator('.section-view svg').first().waitFor();
  await reach(page, /^Set up "machine"/);
  await page.keyboard.press('Space');
  const sheet = page.locator('.machine-sheet').first();
  const wanted = Number(/measure\s([\d.]+)/.exec(await sheet.locator('.test-piece p').first().innerText())?.[1]);
  await type(page, /^It measures/, String(wanted + 0.2));
  expect(await sheet.locator('.correction').innerText()).toMatch(/Spindle (up|down) 0\.2\smm/);
  expect(await page.locator('.steps input').first().isChecked()).toBe(true);
  await check('set-up');

  await go(page, 'Quote');
  await page.getByLabel(/^For: client/).waitFor();
  await type(page, /^For: client/, 'M. Fennimore');
  await type(page, /^Currency/, 'EUR');
  await type(page, /^An hour/, '40');
  await type(page, /^Each door/, '0.5');
  await page.locator('.price').waitFor();
  await check('quote');
  const quote = await save(page, /^Quote as PDF$/);
  // Four doors, half an hour each at 40.
  expect(quote).toMatch(/M\. Fennimore[\s\S]*Making and gluing up \(4\).*€80\.00/);
  expect(quote).toContain('Pantry');
  expect(faults).toEqual([]);
}, 60_000);
