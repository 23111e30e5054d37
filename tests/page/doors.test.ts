// Doors at 390 px, without reading docs: an opening, rows, a shaped head, figures of the elevation typed over, a template saved.
import { readFileSync } from 'node:fs';
import { readDxf } from '@fielded/exchange';
import { expect, it } from 'vitest';
import { axeFaults } from './axe.ts';
import { field, PHONE, setUpBench } from './open-page.ts';

const bench = setUpBench();

it('a door is given by its opening, its rows and its head; every figure drawn of it can be typed over, by keyboard', async () => {
  const page = await bench.open(PHONE);
  await page.locator('.rooms').getByRole('button', { name: 'Doors', exact: true }).click();
  await page.getByRole('button', { name: 'Add a door' }).click();
  const doors = page.locator('.doors');
  await doors.getByRole('radio', { name: 'the opening it hangs in' }).check();
  await field(page, 'doors[0].opening.height').fill('1604');
  await doors.getByRole('radio', { name: 'overlay' }).focus();
  await page.keyboard.press('Space');
  await field(page, 'doors[0].overlay').fill('10');
  // Two panels up: the lower one has what the upper one leaves.
  await field(page, 'doors[0].up').fill('2');
  await field(page, 'doors[0].rows[0]').fill('900');
  // 1604 and 10 at either end, less two rails, a mid rail and 900.
  await doors.getByText('544 mm: its share of the rest').waitFor();
  expect(await field(page, 'doors[0].rows[1]').getAttribute('placeholder')).toBe('rest');
  await doors.getByRole('radio', { name: 'cathedral' }).focus();
  await page.keyboard.press('Space');
  await field(page, 'doors[0].head.ears').fill('70');
  const figure = (of: string) => page.locator(`.drawing [data-of="doors[0].${of}"]`);
  await expect.poll(() => figure('head.ears').textContent()).toContain('R 70');
  // While it is typed it stands alone.
  await field(page, 'doors[0].head.ears').blur();
  // Every figure opens as a field, none as a note that it is worked out.
  for (const of of ['opening.width', 'openings[1].height', 'head.crown', 'height']) {
    await figure(of).focus();
    await page.keyboard.press('Enter');
    await page.locator('.dimension-entry input').waitFor();
    if (of !== 'opening.width') await page.keyboard.press('Escape');
    else {
      await page.locator('.dimension-entry input').fill('410');
      await page.keyboard.press('Enter');
    }
  }
  // Two stiles of 60 beside 410, less what the leaf laps over at either side.
  await expect.poll(() => field(page, 'doors[0].opening.width').inputValue()).toBe('510');
  // A lower opening typed over takes what it needs from the door's height: the upper one keeps its own.
  await figure('openings[1].height').focus();
  await page.keyboard.press('Enter');
  await page.locator('.dimension-entry input').fill('500');
  await page.keyboard.press('Enter');
  await expect.poll(() => field(page, 'doors[0].opening.height').inputValue()).toBe('1560');

  await doors.locator('summary', { hasText: 'Templates at full size' }).click();
  const download = page.waitForEvent('download');
  await doors.getByRole('button', { name: 'Save as DXF' }).click();
  const { outlines } = readDxf(readFileSync(await (await download).path(), 'utf8'));
  const radii = outlines[0]!.chain.filter(({ turn }) => turn !== 0).map(({ r }) => Math.round(r));
  const insertion = 70 - Math.min(...radii);
  expect(insertion).toBeGreaterThan(0);
  expect(radii.filter((r) => r === 70 - insertion)).toHaveLength(2);

  // A pointed head is as high as the arch was, and nothing of it rises above its point.
  await doors.getByRole('radio', { name: 'pointed' }).focus();
  await page.keyboard.press('Space');
  await expect.poll(() => doors.getByRole('radio', { name: 'pointed' }).isChecked()).toBe(true);
  const [, rise] = /^M 0 (\S+) A/.exec(await field(page, 'doors[0].head.path').inputValue())!;
  expect(await figure('head.rise').textContent()).toContain(rise);

  expect(await axeFaults(page, '.doors', '.stage')).toEqual([]);

  // The last door goes from under its drawing, and the keyboard goes on where it was.
  await doors.getByRole('button', { name: /^Remove / }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toBe('doors');
  expect(await page.locator('.drawing text').count()).toBeGreaterThan(0);
}, 60_000);
