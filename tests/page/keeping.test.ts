// Nothing is lost and nothing is run: what the page keeps, opens and refuses, with a network and without, in a real browser.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateRawSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../packages/core/src/index.ts';
import { DESKTOP, field, figureOf, OFFLINE, ready, setUpBench } from './open-page.ts';
import { openAfresh } from './shared-tabs.ts';

const bench = setUpBench();

const depth = (page: Page) => field(page, 'cuts[1].profile.depth');
const open = (page: Page, name: string, text: string) =>
  page.locator('input[type="file"]').setInputFiles({ name, mimeType: 'text/yaml', buffer: Buffer.from(text) });
const linkTo = (held: unknown) =>
  `${bench.address}#job=${deflateRawSync(typeof held === 'string' ? held : JSON.stringify(held)).toString('base64url')}`;
/** What is shown between two links, which would else be one page: of the same origin, so that no other process is started. */
const between = () => new URL('icon.svg', bench.address).href;
/** In the page: notes whether anything of a hostile text is run. */
const noteAlerts = () => {
  Object.assign(globalThis, { alert: () => Object.assign(globalThis, { ran: true }) });
};
const ran = (page: Page) => page.evaluate(() => 'ran' in globalThis);

describe('what is typed', () => {
  it('is undone and redone step by step, a whole entry at a time', async () => {
    const page = await bench.goOn();
    for (const mm of ['4.9', '5', '4.7']) {
      await depth(page).fill(mm);
      await depth(page).blur();
    }
    const undo = page.getByRole('button', { name: 'Undo' });
    await undo.click();
    await undo.click();
    expect(await depth(page).inputValue()).toBe('4.9');
    await page.getByRole('button', { name: 'Redo' }).click();
    expect(await depth(page).inputValue()).toBe('5');
    await undo.click();
    await undo.click();
    expect(await undo.isDisabled()).toBe(true);
    expect(await depth(page).inputValue()).toBe('4.8');
  });

  it('survives a reload in the middle of an entry, read or not', async () => {
    const page = await bench.goOn();
    await depth(page).fill('4.65');
    await field(page, 'panel.thickness').fill('20 m');
    await field(page, 'panel.thickness').pressSequentially('m -');
    await page.reload();
    await ready(page);
    expect(await depth(page).inputValue()).toBe('4.65');
    expect(await field(page, 'panel.thickness').inputValue()).toBe('20 mm -');
    expect(await figureOf(page, 'clearance')).toBeCloseTo(0.05, 9);
  });

  it('in any part of the job is undone, and done again, by keys after a reload', async () => {
    const page = await bench.goOn();
    const state = () =>
      page.evaluate(() => {
        const text = localStorage.getItem(`fielded.desk.${sessionStorage.getItem('fielded.desk')}`);
        const { doc } = JSON.parse(text ?? '{"doc":{}}');
        return JSON.stringify([doc.data, doc.shop?.data]);
      });
    const go = (name: string) => page.locator('.rooms').getByRole('button', { name, exact: true }).click();
    const add = (what: string) => page.getByRole('button', { name: `Add a ${what}`, exact: true }).click();
    const acts: (readonly [part: string, act: () => Promise<unknown>])[] = [
      ['the sizes', () => depth(page).fill('4.9')],
      [
        'an outline',
        async () => {
          await page.getByRole('button', { name: 'Own outline… for the raise' }).click();
          await page.locator('summary', { hasText: 'As path data' }).click();
          await page.getByLabel(/^Path data/).fill('M 0 9 H 12 L 30 2 V 0');
          await page.getByRole('button', { name: 'Use this path' }).click();
        },
      ],
      ['the shop', () => go('Shop').then(() => add('head'))],
      ['its machines', () => add('machine')],
      ['the doors', () => go('Doors').then(() => add('door'))],
      ['the set-up', () => go('Set-up').then(() => page.locator('#head-of-1').selectOption('head'))],
      ['the quote', () => go('Quote').then(() => page.getByLabel(/^Currency/).fill('EUR'))],
    ];
    const states: string[] = [];
    for (const [part, act] of acts) {
      const before = states.at(-1) ?? (await state());
      await act();
      await expect.poll(state, { message: part }).not.toBe(before);
      states.push(await state());
    }
    await page.reload();
    await ready(page);
    for (let i = acts.length - 2; i >= 0; i--) {
      await page.keyboard.press('Control+z');
      await expect.poll(state, { message: `${acts[i + 1]![0]}, undone` }).toBe(states[i]);
    }
    await page.keyboard.press('Control+z');
    await expect.poll(() => depth(page).inputValue()).toBe('4.8');
    for (const [i, [part]] of acts.entries()) {
      await page.keyboard.press('Control+y');
      await expect.poll(state, { message: `${part}, done again` }).toBe(states[i]);
    }
    await go('Joint');
  });

  // One browser for all of it: each of its own costs as much as two loads.
  it('in two tabs stays two jobs, and is there again in a new tab after the last one was closed, and after New under Job', async () => {
    const one = await bench.openAlone();
    await depth(one).fill('4.9');
    await depth(one).blur();
    const two = await one.context().newPage();
    await two.goto(bench.address);
    await ready(two);
    expect(await two.locator('.notice').innerText()).toContain('Another tab has this job open');
    expect(await depth(two).inputValue()).toBe('4.9');
    await depth(two).fill('4.6');
    await depth(one).fill('4.95');
    await Promise.all([one.reload(), two.reload()]);
    await Promise.all([ready(one), ready(two)]);
    expect(await depth(one).inputValue()).toBe('4.95');
    expect(await depth(two).inputValue()).toBe('4.6');

    await two.close();
    await depth(one).fill('4.85');
    const again = await one.context().newPage();
    await one.close();
    await again.goto(between());
    const held = () => again.evaluate(async () => (await navigator.locks.query()).held);
    await expect.poll(held, { message: 'what closed tabs hold' }).toEqual([]);
    await again.goto(bench.address);
    await ready(again);
    expect(await depth(again).inputValue()).toBe('4.85');
    await again.locator('summary', { hasText: 'Job' }).click();
    await again.getByRole('button', { name: 'New' }).click();
    await again.getByRole('button', { name: 'Begin' }).click();
    await expect.poll(() => depth(again).inputValue()).toBe('6.2');
    await again.locator('summary', { hasText: 'Job' }).click();
    await again.locator('.earlier').first().click();
    await expect.poll(() => depth(again).inputValue()).toBe('4.85');
  });
});

describe('a job file', () => {
  it('begun here is one that the command line reads, with the same figures', async () => {
    const page = await bench.goOn();
    await depth(page).fill('4.9');
    await depth(page).blur();
    const download = page.waitForEvent('download');
    await page.keyboard.press('Control+s');
    const { job, faults } = readJob(readFileSync(await (await download).path(), 'utf8'));
    expect(faults).toEqual([]);
    expect(job?.cuts[1]?.depth).toBe(4.9);
  });

  it('keeps its comments, order and notation when saved with a change', async () => {
    const text = `# the boot room\n${readFileSync('examples/inch-rebate/job.yaml', 'utf8')}`;
    const page = await bench.goOn();
    await open(page, 'larder.yaml', text);
    await expect.poll(() => page.getByLabel('Title of the job').inputValue()).toBe('Larder doors in inches');
    await field(page, 'frame.groove.width').fill('17/64');
    await field(page, 'frame.groove.width').blur();
    const download = page.waitForEvent('download');
    await page.keyboard.press('Control+s');
    const saved = readFileSync(await (await download).path(), 'utf8');
    expect((await download).suggestedFilename()).toBe('larder.yaml');
    const lines = saved.split('\n');
    const changed = text.split('\n').filter((line, i) => line !== lines[i]);
    expect(changed).toEqual(['  groove: { width: 1/4, depth: 3/8, setback: 9/32 }']);
    expect(saved).toContain('  groove: { width: 17/64, depth: 3/8, setback: 9/32 }');
    expect(readJob(saved).faults).toEqual([]);
  });

  it('that is hostile is refused in words, nothing of it is run, and the job at hand stays', async () => {
    const page = await bench.goOn();
    await page.evaluate(noteAlerts);
    await depth(page).fill('4.9');
    await depth(page).blur();
    const refused = async (name: string, text: string, words: string) => {
      // From a folder: what is handed over as text goes to the browser as a message, ten times as long for ten million letters.
      writeFileSync(join(bench.folder, name), text);
      await page.locator('input[type="file"]').setInputFiles(join(bench.folder, name));
      await expect.poll(() => page.locator('.notice.fault').innerText(), { message: name }).toContain(words);
      expect(await depth(page).inputValue(), name).toBe('4.9');
      await page.getByRole('button', { name: 'Close', exact: true }).click();
    };
    await refused('large.yaml', `# ${'x'.repeat(10_000_000)}`, 'is 10 MB');
    await refused('types.yaml', 'fielded: 1\npanel: [20]\nframe: yes\ncuts: 7\n', 'Line 2');
    await refused(
      'bomb.yaml',
      `a: &a [x,x,x,x,x,x,x,x,x]\n${'bcdefghi'.replace(/./g, (c) => `${c}: &${c} [${Array(9).fill(`*${String.fromCharCode(c.charCodeAt(0) - 1)}`)}]\n`)}`,
      'cannot be opened',
    );
    await refused('deep.yaml', '['.repeat(5000), 'cannot be opened');
    await refused('binary.yaml', 'fielded\0: 1', 'cannot be opened');
    await refused('proto.json', '{"__proto__": {"panel": 1}, "constructor": 2}', 'cannot be opened');
    await refused('empty.yaml', '', 'cannot be opened');
    const script = `<img src=x onerror=alert(1)><script>alert(1)</script>`;
    const text = readFileSync('examples/ogee-cove/job.yaml', 'utf8').replace(/title: .*/, `title: '${script}'`);
    await open(page, '<b>x</b>.yaml', text.replaceAll('name: raise', `name: '"><svg onload=alert(1)>'`));
    await expect.poll(() => page.getByLabel('Title of the job').inputValue()).toBe(script);
    await page.locator('summary', { hasText: 'Drawing' }).click();
    await page.evaluate(() => {
      window.print = () => {};
    });
    await page.getByRole('button', { name: 'Print at full size' }).click();
    await page.locator('.print-sheet svg').first().waitFor({ state: 'attached' });
    expect(await ran(page)).toBe(false);
    expect(await page.locator('.page img, .page script, .print-sheet script').count()).toBe(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => depth(page).inputValue()).toBe('4.9');
  });
});

describe('a link', () => {
  it('carries the whole job, and the job that was there is kept', async () => {
    const page = await bench.goOn();
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await depth(page).fill('4.9');
    await depth(page).blur();
    await page.locator('summary', { hasText: 'Job' }).click();
    await page.getByRole('button', { name: 'Copy a link to it' }).click();
    await page.locator('.notice').waitFor();
    const link = await page.evaluate(() => navigator.clipboard.readText());
    expect(link.startsWith(`${bench.address}#job=`)).toBe(true);
    await page.goto(between());
    await page.goto(linkTo({ data: { ...JSON.parse(EXAMPLE), title: 'From a friend' } }));
    await ready(page);
    expect(await page.getByLabel('Title of the job').inputValue()).toBe('From a friend');
    await page.locator('summary', { hasText: 'Job' }).click();
    await page.locator('.earlier').first().click();
    await expect.poll(() => depth(page).inputValue()).toBe('4.9');
    // Followed where the page is open already, it is not loaded anew.
    await page.goto(linkTo({ data: { ...JSON.parse(EXAMPLE), title: 'From another friend' } }));
    await expect.poll(() => page.getByLabel('Title of the job').inputValue()).toBe('From another friend');
    expect(new URL(page.url()).hash).toBe('');
    await page.locator('summary', { hasText: 'Job' }).click();
    expect(await page.locator('.earlier').first().innerText()).toContain('Boot-room cupboard doors');
    // Where nothing is kept, as in another's browser.
    await openAfresh(page, link);
    await ready(page);
    expect(await depth(page).inputValue()).toBe('4.9');
    expect(new URL(page.url()).hash).toBe('');
    await page.context().clearPermissions();
  });

  it('that is hostile is refused in words and nothing of it is run', async () => {
    const page = await bench.goOn();
    await page.evaluate(noteAlerts);
    const watched = await page.addInitScript(noteAlerts);
    await depth(page).fill('4.9');
    await depth(page).blur();
    const links = [
      // A job that could be read, but for the 30 MB that it unpacks to.
      linkTo(JSON.stringify({ data: JSON.parse(EXAMPLE) }) + ' '.repeat(30_000_000)),
      linkTo({ data: { fielded: 1, panel: { thickness: { toString: 1 } } } }),
      linkTo({ data: '<script>alert(1)</script>' }),
      linkTo({ data: { ...JSON.parse(EXAMPLE), cuts: Array(200).fill(JSON.parse(EXAMPLE).cuts[0]) } }),
      linkTo(`{"data":${'['.repeat(4000)}${']'.repeat(4000)}}`),
      `${bench.address}#job=%3Cscript%3E`,
      `${bench.address}#job=${'A'.repeat(500_000)}`,
    ];
    const refused = async () => {
      const notice = page.locator('.notice.fault');
      await expect.poll(() => notice.innerText()).toMatch(/as it was/);
      expect(await depth(page).inputValue()).toBe('4.9');
      expect(await ran(page)).toBe(false);
      await page.getByRole('button', { name: 'Close', exact: true }).click();
    };
    // In the page that is open, where nothing is loaded anew.
    for (const link of links) {
      await page.goto(link);
      await refused();
    }
    // At a load: one that is not unpacked, and one that is read as a job and is none.
    for (const link of [links[0]!, links[3]!]) {
      await page.goto(between());
      await page.goto(link);
      await ready(page);
      await refused();
    }
    await watched.dispose();
  }, 60_000);
});

describe('without a network', () => {
  it('the page opens after one visit, with what is fetched later too, and keeps the job over an update', async () => {
    const { address } = await bench.serveCopy();
    const page = await bench.openAlone({ ...DESKTOP, ...OFFLINE }, address);
    await page.evaluate(() => navigator.serviceWorker.ready);
    await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
    await depth(page).fill('4.9');
    await page.context().setOffline(true);
    await page.reload();
    await ready(page);
    expect(await depth(page).inputValue()).toBe('4.9');
    await field(page, 'panel.thickness').fill('10 mm + 10 mm');
    await field(page, 'panel.thickness').blur();
    await expect.poll(() => field(page, 'panel.thickness').inputValue()).toBe('20');
    await open(page, 'job.yaml', readFileSync('examples/bevel-wedge/job.yaml', 'utf8'));
    await expect.poll(() => page.getByLabel('Title of the job').inputValue()).toBe('Tack-room locker panels');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.context().setOffline(false);

    // A newer version is put out: the same page under another name. It keeps its first file alone, which is sooner fetched.
    const worker = join(bench.folder, 'worker.js');
    const before = readFileSync(worker, 'utf8');
    const [version] = /[0-9a-f]{12}/.exec(before)!;
    const newer = before.replace(version, 'a-newer-one').replace(/\["\.\/",[^\]]*\]/, '["./"]');
    expect(newer.length).toBeLessThan(before.length / 2);
    writeFileSync(worker, newer);
    try {
      await depth(page).fill('4.95');
      await page.evaluate(() => navigator.serviceWorker.getRegistration().then((found) => found?.update()));
      await page.getByRole('button', { name: 'Use it' }).click();
      await expect
        .poll(() => page.evaluate(() => caches.keys()).catch(() => []), { timeout: 10_000 })
        .toEqual(['fielded a-newer-one']);
      await ready(page);
      expect(await depth(page).inputValue()).toBe('4.95');
    } finally {
      writeFileSync(worker, before);
    }
  }, 60_000);
});

const EXAMPLE = JSON.stringify({
  fielded: 1,
  title: 'Boot-room cupboard doors',
  panel: { thickness: 20 },
  frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
  cuts: [{ name: 'raise', side: 'front', profile: { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5 } }],
});

describe('a part of the page that cannot be fetched', () => {
  it('says so where it belongs, and is there at the second try', async () => {
    const page = await bench.goOn();
    await page.route('**/doors-panel-*.js', (route) => route.abort());
    await page.locator('.rooms').getByRole('button', { name: 'Doors', exact: true }).click();
    const failed = page.locator('.not-fetched');
    expect(await failed.innerText()).toContain('could not be fetched');
    await page.unroute('**/doors-panel-*.js');
    await failed.getByRole('button', { name: 'Try again' }).click();
    await page.getByRole('button', { name: 'Add a door' }).first().waitFor();
    expect(await failed.count()).toBe(0);
  });

  it('is told in words, no tick stands for what it would have checked, and asking again fetches it', async () => {
    const page = await bench.open();
    await page.route('**/whole-report-*', (route) => route.abort());
    await field(page, 'cuts[1].profile.depth').fill('1');
    await field(page, 'cuts[1].profile.depth').blur();
    const notice = page.getByText('could not be fetched');
    await notice.waitFor();
    expect(await page.locator('.statement.yes').count()).toBe(0);
    await page.unroute('**/whole-report-*');
    const fetched = page.waitForResponse(/whole-report-/);
    await page.getByRole('button', { name: 'Try again' }).click();
    expect((await fetched).ok()).toBe(true);
    expect(await notice.count()).toBe(0);
  });
});
