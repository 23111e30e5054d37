// What a quote on the page says against what the command line says of the same job, without a network.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { run } from '../cli/command.ts';
import { runProgram } from '../support/programs.ts';
import { axeFaults } from './axe.ts';
import { DESKTOP, PHONE, ready, setUpBench } from './open-page.ts';

const bench = setUpBench();
/** The kitchen with a pair of doors and its fronts across the grain, without what a quote does not read: each change is answered sooner. */
const SMALL_KITCHEN = readFileSync('examples/kitchen/job.yaml', 'utf8').replace(
  /^(?: *- \{ name: (?:wall|sink|narrow|bottles|small)|spread:|season:).*\n/gm,
  '',
);
const MARK = '<svg xmlns="http://www.w3.org/2000/svg" width="80" height="20"><path d="M0 0H80L40 20Z"/></svg>';
const GIVEN = ['--client', 'M. Fennimore\\n4 <i>Nowhere</i>', '--number', 'Q-117', '--date', '2026-03-14'];

const go = (page: Page, name: string) => page.locator('.rooms').getByRole('button', { name, exact: true }).click();
const download = async (page: Page, name: string) => {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name }).click();
  return (await coming).path();
};
const textOf = (file: string) => runProgram('pdftotext', ['-layout', file, '-']).toString();

it('is the command line’s own, as PDF and as DOCX, and is printed', async () => {
  const page = await bench.open(PHONE);
  const put = (name: string, text: string) => {
    writeFileSync(join(bench.folder, name), text);
    return join(bench.folder, name);
  };
  const job = put('job.yaml', SMALL_KITCHEN);
  const shop = put('shop.yaml', `${readFileSync('examples/kitchen/shop.yaml', 'utf8')}\nlogo: mark.svg\n`);
  const logo = put('mark.svg', MARK);
  await page.locator('input[type="file"]').setInputFiles([job, shop, logo]);
  await expect
    .poll(() => page.getByLabel('Title of the job').inputValue(), { timeout: 10_000 })
    .toBe('Kitchen in cherry');
  await go(page, 'Quote');
  await page.getByLabel('For: client').fill('M. Fennimore\n4 <i>Nowhere</i>');
  await page.getByLabel('Number').fill('Q-117');
  await page.getByLabel('Date').fill('2026-03-14');
  for (const ending of ['pdf', 'docx']) {
    const own = join(bench.folder, `own.${ending}`);
    expect((await run(['quote', job, ...GIVEN, '-o', own, '--force'])).status).toBe(0);
    const given = await download(page, `Quote as ${ending.toUpperCase()}`);
    if (ending === 'pdf') {
      expect(textOf(given)).toBe(textOf(own));
      // The logo, and as large: its name, width and height in pixels.
      const pictures = (file: string) =>
        runProgram('pdfimages', ['-list', file])
          .toString()
          .split('\n')
          .slice(2)
          .map((line) => line.slice(0, 40));
      const shown = pictures(own);
      expect(pictures(given)).toEqual(shown);
      expect(shown[0]).toMatch(/image +940 +235/);
    } else {
      const [here, there] = [given, own].map((file) => unzipSync(readFileSync(file)));
      // Pictures are painted by another program, so their names, made from their bytes, differ.
      const words = (parts: typeof here) =>
        strFromU8(parts!['word/document.xml']!).replace(/rId\w+|[0-9a-f]{40}\.\w+/g, 'picture');
      expect(words(here)).toBe(words(there));
      expect(Object.keys(here!).filter((name) => name.endsWith('.png')).length).toBeGreaterThan(3);
    }
  }
  const words = join(bench.folder, 'words.yaml');
  writeFileSync(words, 'language: de-DE\nquote: Angebot\ntotal: Gesamtpreis\n');
  await page.getByText('In another language').click();
  const picker = page.getByLabel('Fixed words of a quote in another language');
  await picker.setInputFiles({ name: 'x.yaml', mimeType: 'text/yaml', buffer: Buffer.from('qoute: x') });
  await expect.poll(() => page.locator('.notice').innerText()).toContain('Did you mean quote?');
  await picker.setInputFiles(words);
  await page.getByText('The document is in German').waitFor();
  const german = join(bench.folder, 'german.pdf');
  expect((await run(['quote', job, ...GIVEN, '--words', words, '-o', german, '--force'])).status).toBe(0);
  const inGerman = textOf(await download(page, 'Quote as PDF'));
  expect(inGerman).toBe(textOf(german));
  expect(inGerman).toMatch(/Angebot[\s\S]*14\. März 2026[\s\S]*Gesamtpreis/);
  await page.getByRole('button', { name: 'Back to English' }).click();
  await page.evaluate(() => {
    window.print = () => {};
  });
  await page.getByRole('button', { name: 'Print the quote' }).click();
  await page.locator('.print-sheet svg').first().waitFor({ state: 'attached' });
  expect(await page.locator('.print-sheet').count()).toBe(3);
  expect(await page.locator('.print-sheets').textContent()).toContain('Q-117');
  expect(await page.locator('.print-sheet image').count()).toBe(1);
  const html = readFileSync(await download(page, 'Quote as HTML'), 'utf8');
  expect(html).toMatch(/<header><div><img alt="[^"]+" src="data:image\/png;base64,/);
});

it('prices by the shop’s rates, says what is not priced, and keeps what was typed beside the job', async () => {
  const page = await bench.open({ ...DESKTOP, colorScheme: 'dark' });
  await go(page, 'Doors');
  await page.getByRole('button', { name: 'Add a door' }).click();
  await go(page, 'Quote');
  // Without a currency there is nothing to price in; the rates stand open.
  const rate = (name: string) => page.getByLabel(`${name}, rates`, { exact: true });
  await rate('Currency, such as EUR').fill('EU');
  expect(await page.locator('.field.faulty .fault').innerText()).not.toBe('');
  await rate('Currency, such as EUR').fill('EUR');
  const price = page.locator('.price');
  await price.waitFor();
  expect(await price.innerText()).toContain('not priced');
  expect(await axeFaults(page)).toEqual([]);
  await rate('Each door').fill('0.5');
  await page.getByRole('button', { name: 'Give what is missing for Making and gluing up' }).click();
  await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-shop'))).toBe('rates.hour');
  await page.keyboard.type('40');
  await rate('Tax').fill('20');
  await rate('Name of the tax').fill('VAT');
  // One door, half an hour at 40; 20 % on it.
  expect((await price.innerText()).replace(/\s+/g, ' ')).toMatch(
    /Making and gluing up \(1\).*€20\.00.*VAT, 20 % €4\.00 Total €24\.00/,
  );
  await page.getByLabel('For: client').fill('M. Fennimore');
  await page.reload();
  await ready(page);
  await go(page, 'Quote');
  expect(await page.getByLabel('For: client').inputValue()).toBe('M. Fennimore');
  expect(await price.innerText()).toContain('€24.00');
  await go(page, 'Shop');
  await page.locator('.shop summary', { hasText: 'Rates' }).click();
  expect(await rate('An hour’s work').inputValue()).toBe('40');
});
