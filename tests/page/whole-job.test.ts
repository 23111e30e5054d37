// From nothing to doors, a cutting list, a set-up read at the machine and a quote's PDF: on a phone, without a network, by keyboard alone.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { runProgram } from '../support/programs.ts';
import { axeFaults, colourFaults } from './axe.ts';
import { OFFLINE, PHONE, setUpBench } from './open-page.ts';

const bench = setUpBench();
/** What does not come in so many ms does not come: less than the test has, so that what was waited for is said. */
const LONGEST = 20_000;
/** So many stops are made in search of one. */
const MOST_STOPS = 90;

/** Waits for something, and says what for where it does not come. */
async function there(what: string, come: Promise<unknown>): Promise<void> {
  try {
    await come;
  } catch (error) {
    throw new Error(`waited in vain for ${what}`, { cause: error });
  }
}

/** What a screen reader calls the element in focus, or the path of its field. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLInputElement | null;
    const words = at?.getAttribute('aria-label') ?? at?.labels?.[0]?.textContent ?? at?.textContent ?? '';
    return `${words.trim()} ${at?.dataset.path ?? ''}`.trim();
  });

/** Goes on with Tab until something of this name has the focus; how many stops that took. */
async function reach(page: Page, name: RegExp): Promise<number> {
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    if (name.test(await focused(page))) return stop;
    await page.keyboard.press('Tab');
  }
  throw new Error(`${name} is not among the next ${MOST_STOPS} stops`);
}

/** Presses Enter on something; whatever becomes of it, the focus is somewhere afterwards. */
async function press(page: Page, name: RegExp): Promise<void> {
  await page.keyboard.press('Tab');
  await reach(page, name);
  await page.keyboard.press('Enter');
  await there(
    `a focus after ${name}`,
    page.waitForFunction(() => document.activeElement !== document.body),
  );
}

async function type(page: Page, name: RegExp, text: string): Promise<void> {
  await reach(page, name);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
}

async function save(page: Page, name: RegExp): Promise<string> {
  const download = page.waitForEvent('download', { timeout: LONGEST });
  await Promise.all([there(`the file of ${name}`, download), press(page, name)]);
  return runProgram('pdftotext', ['-layout', await (await download).path(), '-']).toString();
}

/** Goes to a part of the job: Escape goes from whatever has nothing to take back to the row of parts. */
async function go(page: Page, part: string, first?: string): Promise<void> {
  await page.keyboard.press('Escape');
  for (let i = 0; i < 5 && (await focused(page)) !== part; i++) await page.keyboard.press('ArrowRight');
  expect(await focused(page)).toBe(part);
  await page.keyboard.press('Enter');
  // The part is fetched when it is first shown: no key goes to it before it is there.
  if (first !== undefined)
    await there(`${first} in ${part}`, page.getByRole('button', { name: first, exact: true }).waitFor());
}

it('goes from nothing to the quote', async () => {
  const page = await bench.openAlone({ ...PHONE, ...OFFLINE });
  page.setDefaultTimeout(LONGEST);
  const seen = (what: string, selector: string) => there(what, page.locator(selector).first().waitFor());
  const faults: string[] = [];
  const check = async (state: string) => {
    for (const [colorScheme, findFaults] of [['light', axeFaults] as const, ['dark', colourFaults] as const]) {
      await page.emulateMedia({ colorScheme });
      faults.push(...(await findFaults(page)).map((fault) => `${state}, ${colorScheme}: ${fault}`));
    }
    if (await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)) faults.push(`${state}: too wide`);
  };
  const kept = () => navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null);
  await there('the worker that keeps the page', page.waitForFunction(kept));
  await page.context().setOffline(true);

  expect(await reach(page, /panel\.thickness/)).toBeLessThanOrEqual(5);
  // What keys do is fetched at the first of them.
  await page.keyboard.press('Escape');
  await expect.poll(() => focused(page)).toBe('Joint');
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('ArrowDown');
  await there('the first command of the menu', page.locator('.menu-list button:focus').waitFor());
  await page.keyboard.press('Enter');
  await seen('the preview of a new job', '.preview');
  await type(page, /^Name$/, 'Pantry');
  // Enter goes on, through the sizes and the shapes.
  for (let i = 0; i < 12 && (await focused(page)) !== 'Begin'; i++) await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await seen('the new job', '.sizes');

  await type(page, /panel\.thickness/, '21');
  await page.keyboard.press('Enter');
  expect(await focused(page)).toContain('panel.measured');
  await page.keyboard.press('Control+Enter');
  await seen('a move to make', '.fit-panel .main:not(:disabled)');
  await page.keyboard.press('Control+Enter');
  await there('a joint that fits', page.locator('.statement.yes', { hasText: 'fits' }).first().waitFor());
  expect(await focused(page)).toContain('panel.measured');

  await go(page, 'Doors', 'Add a door');
  await press(page, /^Add a door$/);
  await seen('the fields of the door', '[data-path="doors[0].quantity"]');
  await type(page, /doors\[0\]\.quantity/, '4');
  await type(page, /doors\[0\]\.width/, '450');
  // The whole door is in sight, its sizes at the foot too.
  await there('the whole door', page.locator('.sheet:not(.scrolls) [data-view="door"] .dimension').first().waitFor());
  expect(await page.locator('.cutting').innerText()).toMatch(/8\s+stile\s+700/);
  const list = await save(page, /^Cutting list as PDF$/);
  expect(list).toMatch(/stile\s+8\s+700/);
  await check('doors');

  await go(page, 'Shop', 'Add a head');
  await press(page, /^Add a head$/);
  await press(page, /^Add a machine$/);

  await go(page, 'Set-up');
  await seen('the heads to choose from', '.head-choices select');
  for (const cut of [/^raise/, /^back relief/]) {
    await reach(page, cut);
    await page.keyboard.press('ArrowDown');
  }
  await seen('the section of the set-up', '.section-view svg');
  await reach(page, /^Set up "machine"/);
  await page.keyboard.press('Space');
  const sheet = page.locator('.machine-sheet').first();
  await seen('the test piece of the machine', '.machine-sheet .test-piece p');
  const figures = sheet.locator('.set dd');
  expect(await figures.count()).toBe(5);
  // 10 mm at 96 px to the inch, and no less.
  const size = await figures.first().evaluate((figure) => Number.parseFloat(getComputedStyle(figure).fontSize));
  expect(size).toBeGreaterThan(37);
  const wanted = Number(/measure\s([\d.]+)/.exec(await sheet.locator('.test-piece p').first().innerText())?.[1]);
  await type(page, /^It measures/, String(wanted + 0.2));
  await seen('the correction by the test piece', '.machine-sheet .correction');
  expect(await sheet.locator('.correction').innerText()).toMatch(/Spindle (up|down) 0\.2\smm/);
  await type(page, /^It measures/, String(wanted));
  await there('nothing to correct', sheet.locator('.correction', { hasText: 'nothing to move' }).waitFor());
  await seen('the steps of the set-up', '.steps input');
  expect(await page.locator('.steps input').first().isChecked()).toBe(true);
  await check('set-up');

  await go(page, 'Quote');
  await there('the field for the client', page.getByLabel(/^For: client/).waitFor());
  await type(page, /^For: client/, 'M. Fennimore');
  await type(page, /^Currency/, 'EUR');
  await type(page, /^An hour/, '40');
  await type(page, /^Each door/, '0.5');
  await seen('the price', '.price');
  await check('quote');
  const quote = await save(page, /^Quote as PDF$/);
  // Four doors, half an hour each at 40.
  expect(quote).toMatch(/M\. Fennimore[\s\S]*Making and gluing up \(4\).*€80\.00/);
  expect(quote).toContain('Pantry');
  const docx = page.waitForEvent('download', { timeout: LONGEST });
  await press(page, /^Quote as DOCX$/);
  expect((await docx).suggestedFilename()).toMatch(/\.docx$/);
  await page.evaluate(() => {
    const note = () => Object.assign(globalThis, { printed: document.querySelector('.print-sheet')?.textContent });
    Object.assign(globalThis, { print: note });
  });
  await press(page, /^Print the quote$/);
  const printed = () => page.evaluate(() => String((globalThis as { printed?: string }).printed));
  await expect.poll(printed).toContain('M. Fennimore');
  expect(faults).toEqual([]);

  // Without a network the page is there again, with what was ticked at the machine.
  await page.reload();
  await seen('the drawing after a reload', '.drawing .dimension');
  await reach(page, /panel\.thickness/);
  await go(page, 'Set-up');
  await seen('the steps that were ticked', '.steps input:checked');
}, 60_000);
