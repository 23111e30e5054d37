// The shop on the page: opened from its file, changed, compared with a job, saved, and there again for the next job.
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { matchKnives, readJobData, readShop } from '../../packages/core/src/index.ts';
import { EXAMPLE } from '../../packages/page/src/job/start.ts';
import { axeFaults } from './axe.ts';
import { DESKTOP, PHONE, ready, setUpBench } from './open-page.ts';

const bench = setUpBench();
const SHOP = 'examples/shop/shop.yaml';
const go = (page: Page, name: string) => page.locator('.rooms').getByRole('button', { name, exact: true }).click();

it('is opened, changed and saved as a file that keeps its comments, and another job takes it up', async () => {
  const page = await bench.open(PHONE);
  await go(page, 'Shop');
  const picker = page.locator('.shop input[type="file"]');
  await picker.setInputFiles({
    name: 'bad.yaml',
    mimeType: 'text/yaml',
    buffer: Buffer.from('fielded: 1\nhedas: {}\n'),
  });
  await expect.poll(() => page.locator('.notice').innerText()).toMatch(/Line 2: .*hedas/);
  await picker.setInputFiles(SHOP);
  await page.locator('.shop summary', { hasText: 'ogee-38' }).click();
  expect(await page.locator('.shop summary .thumb').count()).toBe(8);
  await page.getByLabel('Land, ogee-38').fill('12');
  await page.getByLabel('Kept in the head, ogee-38').selectOption('small');
  await page.getByLabel('Shape, ogee-38').selectOption('ovolo');
  await page.getByLabel('Name of ogee-38').fill('big ovolo');
  await page.getByLabel('Name of ogee-38').blur();
  await page.getByRole('button', { name: 'Add a wood' }).click();
  await page.locator('.shop summary', { hasText: 'wood' }).click();
  await page.getByLabel('Density at 12 %, wood').fill('620');
  await page.locator('.shop summary', { hasText: 'Rules of the shop' }).click();
  await page.getByLabel('Rim speed, least and most, rules').fill('45, 65');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the shop as a file' }).click();
  const text = readFileSync(await (await saved).path(), 'utf8');
  expect(text).toContain('# Found in a drawer without a drawing');
  const { shop, faults } = readShop(text);
  expect(faults).toEqual([]);
  expect(shop!.knives['big ovolo']).toMatchObject({ head: 'small', profile: { shape: 'ovolo', land: 12, depth: 9 } });
  expect(shop!.woods!.wood).toMatchObject({ density: 620 });
  expect(shop!.rules.rimSpeed).toEqual([45, 65]);

  await page.locator('summary', { hasText: 'Job' }).click();
  await page.getByRole('button', { name: 'New' }).click();
  await page.getByRole('button', { name: 'Begin' }).click();
  await ready(page);
  await go(page, 'Shop');
  const take = page.getByRole('button', { name: 'Use the shop kept in this browser' });
  const taken = page.locator('.shop summary', { hasText: 'big ovolo' });
  // The one or the other comes with the part of the page, which is fetched.
  await take.or(taken).first().waitFor();
  if ((await take.count()) > 0) await take.click();
  await taken.waitFor();
});

it('compares its knives with a cut as the command line does, and sets the one that is chosen', async () => {
  const page = await bench.open({ ...DESKTOP, colorScheme: 'dark' });
  await go(page, 'Shop');
  await page.locator('.shop input[type="file"]').setInputFiles(SHOP);
  await page.getByText('is the shop now').waitFor();
  await page.getByRole('button', { name: 'Compare the knives' }).click();
  await page.locator('.matches').waitFor();
  const { shop } = readShop(readFileSync(SHOP, 'utf8'));
  const { job } = readJobData(EXAMPLE);
  const wanted = matchKnives({ ...job!, shop: shop! }, 'raise');
  const said = (await page.locator('.matches li').allInnerTexts()).map((words) => words.replaceAll('\u00A0', ' '));
  expect(said.length).toBe(wanted.length);
  wanted.forEach(({ knife, reach, deviation }, i) => {
    const mm = (value: number) => `${Number(value.toFixed(2))} mm`;
    expect(said[i]).toMatch(
      new RegExp(`^${knife}[\\s\\S]*Set to reach ${mm(reach)} it comes within ${mm(Math.max(deviation, 0.01))};`),
    );
  });
  expect(await page.locator('.drawn-over figcaption').innerText()).toContain(wanted[0]!.knife);
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole('button', { name: 'Use it: bevel-36 for the raise' }).click();
  await go(page, 'Joint');
  // What has just come into sight has no inner text before it is painted.
  await expect.poll(() => page.locator('.cut').first().innerText()).toContain('bevel-36');
  expect(Number(await page.locator('input[data-path="cuts[0].reach"]').inputValue())).toBeCloseTo(
    wanted.find(({ knife }) => knife === 'bevel-36')!.reach,
    2,
  );
});
