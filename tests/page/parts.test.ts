// Every part of the page fails to be fetched once: each time that is said in words, and the next try has it. Two parts are
// tried each day, in keeping.test.ts.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { inLongRun } from '../support/trials.ts';
import { field, setUpBench, tapDimension } from './open-page.ts';

const bench = setUpBench();
const KITCHEN = ['examples/kitchen/job.yaml', 'examples/kitchen/shop.yaml'];
const SHOP = 'examples/kitchen/shop.yaml';
/** What is there from the first, what comes with an address, a dropped folder, a shaped head or colours of the reader's own, and letters. */
const NOT_A_PART =
  /^(?:page|adopt-styles|letters|key-strip|rolldown-runtime|fonts|take-in-address|dropped-files|running|template-file|reader-styles)-/;

inLongRun(
  'each part that fails is said in words, and comes at the next try',
  async () => {
    const page = await bench.openAlone();
    // Someone who tries again at once, wherever the page says that a part is missing.
    await page.evaluate(() => {
      setInterval(() => {
        const again = [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Try again');
        if (again?.closest('.notice, .not-fetched')?.textContent?.includes('could not be fetched')) again.click();
      }, 100);
    });
    const nameOf = (url: string) => url.replace(/.*\//, '');
    const failed = new Set<string>();
    const fetched = new Set<string>();
    await page.route(/assets\/.*\.(?:js|css|ttf)$/, (route) => {
      const name = nameOf(route.request().url());
      if (failed.has(name)) fetched.add(name);
      const comes = failed.has(name);
      failed.add(name);
      return comes ? route.continue() : route.abort();
    });
    const button = (name: string | RegExp) => page.getByRole('button', { name }).first();
    const room = (name: string) => page.locator('.rooms').getByRole('button', { name, exact: true }).click();
    const menu = (name: string) => page.locator('.commands summary', { hasText: name }).click();
    const save = async (act: () => Promise<unknown>) => {
      const coming = page.waitForEvent('download');
      await act();
      await coming;
    };

    await page.locator('input[type="file"]').first().setInputFiles(KITCHEN);
    await page.locator('.statement:visible', { hasText: 'checked in part' }).waitFor();
    await save(() => page.keyboard.press('Control+s'));
    for (const name of ['Sticking on the frame', 'Wood and fit', 'Spread of stock and settings', 'Seasons']) {
      const fold = page.locator('.side details', { has: page.locator('summary', { hasText: name }) }).last();
      await fold.locator('summary').first().click();
      await fold.locator('input, select').first().waitFor();
    }
    // What follows a hand on the drawing is fetched at its first press, and asked for again at the next.
    for (let press = 1; press <= 2; press++) {
      await tapDimension(page, 'fit.clearance');
      await page.locator('.dimension-note').waitFor();
      await page.keyboard.press('Escape');
    }
    await button('Add a cut on the front').click();
    await page.getByLabel('Cut 3').waitFor();
    await page.keyboard.press('Control+z');
    // Another size asks for the spread, and so for its worker, once more.
    await field(page, 'panel.thickness').fill('10 + 9.9');
    await field(page, 'panel.thickness').blur();
    await expect.poll(() => field(page, 'panel.thickness').inputValue()).toBe('19.9');
    await page.keyboard.press('Control+z');
    await menu('Job');
    await button('New…').click();
    await button('Begin').waitFor();
    await button('Cancel').click();
    await menu('Job');
    await button('All jobs kept here…').click();
    await button('Back to the board').click();
    await menu('Job');
    await button(/^Keys/).click();
    await page.locator('table', { hasText: 'Ctrl Enter' }).waitFor();
    await page.locator('.rooms').getByRole('button', { name: 'Joint', exact: true }).click();
    for (const name of [/sheets as PDF/, /as SVG/, /as DXF/]) {
      await menu('Drawing');
      await save(() => button(name).click());
    }
    await button('Make it fit').click();
    await page.getByLabel('A sliding fit, the face').selectOption('proud');
    await page.getByLabel('Face proud by').fill('12');
    await page.locator('.fit-panel .answer .fault').waitFor();
    await page.getByRole('button', { name: 'Compare', exact: true }).click();
    await page.locator('.compare-panel').waitFor();
    // It slides on the stage alone: who leaves it before the second try comes asks no more.
    const slides = page.waitForResponse(/slide-in-/);
    await button('Slide it in').click();
    await slides;
    await button('Own outline… for the raise').click();
    await button('From a drawing…').waitFor();
    await room('Doors');
    await save(() => button('Cutting list as PDF').click());
    await room('Shop');
    await page.getByLabel('Shop file, with the drawings and the logo that it names').setInputFiles(SHOP);
    await page.getByText('is the shop now').waitFor();
    await save(() => button('Save the shop as a file').click());
    await room('Set-up');
    await save(() => button('Sheets as PDF').click());
    await room('Quote');
    await save(() => button('Quote as PDF').click());
    await page.getByText('In another language').click();
    await save(() => button('Save the English words').click());
    await save(() => button('Quote as DOCX').click());
    await page.getByText('Rates of the shop').click();
    const mark = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect width="40" height="20"/></svg>';
    const logo = { name: 'mark.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(mark) };
    await page.getByLabel('Logo, PNG, JPEG or SVG').setInputFiles(logo);
    await page.locator('.logo-field img').waitFor();
    const all = readdirSync(join(bench.built, 'assets')).filter((name) => /\.(?:js|ttf|css)$/.test(name));
    const parts = all.filter((name) => !NOT_A_PART.test(name));
    expect(parts.filter((name) => !failed.has(name))).toEqual([]);
    expect([...failed].filter((name) => !fetched.has(name))).toEqual([]);
  },
  60_000,
);
