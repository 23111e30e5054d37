// The page for everyone: what it weighs, what it may load, how large its targets are, what a screen reader finds; from the
// command, from a folder of files and from a single file on disk.
import { readFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { main } from '../../packages/cli/src/index.ts';
import { inLongRun, LONG_RUN } from '../support/trials.ts';
import { axeFaults, colourFaults } from './axe.ts';
import { DESKTOP, field, figureOf, PHONE, ready, setUpBench, tapDimension } from './open-page.ts';

const bench = setUpBench();
const goTo = (page: Page, name: string) => page.locator('.rooms').getByRole('button', { name, exact: true }).click();

describe('the first load', () => {
  it('is at most 120 kB packed, letters apart, before anything is asked for', async () => {
    // The first test here has a page just opened; what an earlier one asked for would be too much.
    const page = await bench.goOn();
    // All that the page has asked for so far, also of what the browser still had.
    const loaded = () =>
      page.evaluate(() =>
        ['navigation', 'resource'].flatMap((type) =>
          performance.getEntriesByType(type).map(({ name }) => new URL(name).pathname),
        ),
      );
    // Letters come once the page is painted: on a busy machine the network rests before.
    await expect.poll(async () => (await loaded()).some((path) => path.endsWith('.woff2'))).toBe(true);
    await page.waitForLoadState('networkidle');
    const files = [...new Set(await loaded())].map((path) => (path === '/' ? 'index.html' : path.slice(1)));
    const sizes = files.map((file) => ({
      file,
      bytes: gzipSync(readFileSync(join(bench.built, file)), { level: 9 }).length,
    }));
    const letters = sizes.filter(({ file }) => file.endsWith('.woff2'));
    const rest = sizes.filter(({ file }) => !file.endsWith('.woff2'));
    expect(letters.length).toBeGreaterThan(0);
    expect(rest.length).toBeGreaterThan(3);
    expect(rest.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(120_000);
    expect(files.filter((file) => /sums|pdf|yaml|write-job|make-it-fit|slide-in/.test(file))).toEqual([]);
  });

  it('allows no script, style or address but its own, and heeds that on every path of the page', async () => {
    const page = await bench.goOn();
    const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    const served = await page.request.get(bench.address);
    expect(served.headers()['content-security-policy']).toContain("default-src 'none'");
    const refused: string[] = [];
    page.on('console', (message) => message.type() === 'error' && refused.push(message.text()));
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'globalThis.ran = true';
      document.head.append(script);
      document.body.insertAdjacentHTML(
        'beforeend',
        '<img src="https://example.org/x.png" onerror="globalThis.ran = true">',
      );
    });
    await expect.poll(() => refused.length).toBeGreaterThanOrEqual(2);
    expect(await page.evaluate(() => 'ran' in globalThis)).toBe(false);
    refused.length = 0;
    for (const name of ['Full-size sheets as PDF', 'This drawing as SVG', 'Outlines as DXF']) {
      await page.locator('summary', { hasText: 'Drawing' }).click();
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name }).click();
      const start = readFileSync(await (await download).path(), 'latin1').slice(0, 400);
      expect(start).toMatch(name.includes('PDF') ? /^%PDF-1/ : name.includes('SVG') ? /^<svg/ : /^\s*0\s+SECTION/);
    }
    expect(refused).toEqual([]);
    await page.locator('img[src^="https://example.org"]').evaluate((picture) => picture.remove());
  });
});

describe.each([
  { device: 'phone', options: PHONE },
  { device: 'desktop', options: DESKTOP },
])('on a $device', ({ device, options }) => {
  /** Each day every room is looked at on one of the two. */
  const itOn = (daily: 'phone' | 'desktop') => (device === daily ? it : inLongRun);

  it('every target is at least 44 px wide and high, and nothing reaches beyond the screen', async () => {
    const page = await bench.goOn(options);
    await page.locator('.running li').first().waitFor();
    const small = await page
      .locator(
        'button, summary, select, .units label, .words label, .shape, .line input, .title input, .grip, .dimension .target',
      )
      .evaluateAll((elements) =>
        elements.flatMap((element) => {
          const { width, height } = element.getBoundingClientRect();
          const name = element.getAttribute('aria-label') ?? element.textContent ?? element.className;
          return width === 0 || (width >= 43.5 && height >= 43.5) ? [] : [`${name}: ${width} × ${height}`];
        }),
      );
    expect(small).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  });

  itOn('phone')(
    'axe finds nothing wrong in Shop and Set-up, their notices included',
    async () => {
      const page = await bench.goOn(options);
      await goTo(page, 'Shop');
      await page.getByRole('button', { name: 'Add a head' }).click();
      await page.getByRole('button', { name: 'Add a machine' }).click();
      await page.getByRole('button', { name: /profiles to the knives/ }).click();
      for (const summary of await page.locator('.shop summary').all()) await summary.click();
      expect(await axeFaults(page), 'Shop').toEqual([]);
      await goTo(page, 'Set-up');
      await page.locator('#head-of-1').selectOption('head');
      await page.locator('.machine-sheet').waitFor();
      expect(await axeFaults(page), 'Set-up').toEqual([]);
      await goTo(page, 'Joint');
    },
    60_000,
  );

  itOn('phone')(
    'axe finds nothing wrong in light or dark',
    async () => {
      const page = await bench.goOn(options);
      for (const details of await page.locator('.side details > summary').all()) await details.click();
      await page.getByRole('button', { name: 'Make it fit' }).click();
      await page.getByRole('button', { name: 'Make the move' }).waitFor();
      await page.getByRole('button', { name: 'Compare' }).click();
      await field(page, 'panel.thickness').fill('3/4');
      await field(page, 'cuts[0].profile.depth').fill('12');
      await page.locator('summary', { hasText: 'Drawing' }).click();
      await page.locator('.menu-list button').first().waitFor();
      const spoilt = { name: 'spoilt.yaml', mimeType: 'text/yaml', buffer: Buffer.from('fielded: 1\npanel: 20\n') };
      await page.locator('input[type="file"]').first().setInputFiles(spoilt);
      await page.locator('.notice.fault li').first().waitFor();
      expect(await axeFaults(page), 'light').toEqual([]);
      await page.emulateMedia({ colorScheme: 'dark' });
      expect(await (LONG_RUN ? axeFaults : colourFaults)(page), 'dark').toEqual([]);
    },
    60_000,
  );

  itOn('desktop')(
    'axe finds nothing wrong in New and in the list of jobs, its notices included',
    async () => {
      const page = await bench.open(options);
      const job = page.locator('summary', { hasText: 'Job' });
      await job.click();
      await page.getByRole('button', { name: 'New' }).click();
      await page.locator('.preview').waitFor();
      expect(await axeFaults(page), 'New').toEqual([]);
      await page.getByRole('button', { name: 'Begin' }).click();
      await job.click();
      await page.getByRole('button', { name: 'All jobs kept here' }).click();
      await page.getByRole('button', { name: /^Delete/ }).click();
      await page.getByRole('button', { name: 'Bring it back' }).waitFor();
      expect(await axeFaults(page), 'Jobs').toEqual([]);
    },
    60_000,
  );

  itOn('desktop')('axe finds nothing wrong in Doors, its notices included', async () => {
    const page = await bench.goOn(options);
    await goTo(page, 'Doors');
    await page.getByRole('button', { name: 'Add a door' }).click();
    await page.getByText('Cutting list', { exact: true }).waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await goTo(page, 'Joint');
  });
});

it('prints, by the browser’s own command, in ink on white from a dark screen', async () => {
  const page = await bench.goOn({ ...DESKTOP, colorScheme: 'dark' });
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.sizes').first().isVisible()).toBe(true);
  // What can only be pressed is not on paper.
  expect(await page.locator('.commands, .tools, .side button').filter({ visible: true }).count()).toBe(0);
  expect(await page.locator('body').evaluate((body) => getComputedStyle(body).color)).toBe('rgb(29, 36, 48)');
});

describe('a page enlarged four times, 320 px wide', () => {
  it('scrolls one way only, and takes colours of the reader’s own', async () => {
    // WCAG 2.2, 1.4.10: 1280 px wide at 400 %; tables and drawings may be wider.
    const page = await bench.goOn({ viewport: { width: 320, height: 700 } });
    const wider = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(await wider()).toBeLessThanOrEqual(0);
    await goTo(page, 'Shop');
    await page.getByRole('button', { name: 'Add a machine' }).click();
    for (const summary of await page.locator('.shop summary').all()) await summary.click();
    expect(await wider()).toBeLessThanOrEqual(1);
    await page.emulateMedia({ forcedColors: 'active' });
    const ink = () => page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--ink'));
    await expect.poll(ink).toBe('CanvasText');
    await page.emulateMedia({ forcedColors: null });
    await goTo(page, 'Joint');
  });
});

describe('a screen reader', () => {
  it('is told nothing wrong by a field on the drawing or the note of a figure that is worked out', async () => {
    const page = await bench.goOn();
    for (const [of, opened] of [
      ['frame.groove.depth', '.dimension-entry'],
      ['fit.clearance', '.dimension-note'],
    ] as const) {
      await tapDimension(page, of);
      await page.locator(opened).waitFor();
      expect(await axeFaults(page, '.sheet')).toEqual([]);
      await page.keyboard.press('Escape');
    }
  });

  it('finds names on everything that can be worked, and hears the verdict once the hand rests', async () => {
    const page = await bench.open();
    const unnamed = await page.locator('button, input, select, summary, [role="slider"], [role="button"]').evaluateAll(
      (all) =>
        all.filter((element) => {
          const input = element as HTMLInputElement;
          const words = [element.getAttribute('aria-label'), element.textContent, input.labels?.[0]?.textContent];
          return words.every((word) => !word?.trim());
        }).length,
    );
    expect(unnamed).toBe(0);
    const heard = page.getByRole('log');
    await field(page, 'frame.groove.width').fill('6');
    expect(await heard.textContent()).toBe('');
    await expect.poll(() => heard.textContent()).toContain('will not enter');
    // What is half typed is no fault yet (WCAG 2.2, 3.3.1); what stays wrong is told once, after its field.
    await page.getByRole('radio', { name: 'in', exact: true }).check({ force: true });
    await field(page, 'panel.thickness').focus();
    await page.keyboard.type('1 3/8');
    await expect.poll(() => heard.textContent()).toMatch(/tip is about .*inches/);
    await page.keyboard.type('x');
    await expect.poll(() => heard.textContent()).toContain('Stock, planed: 1 3/8x');
    expect(await heard.textContent()).not.toMatch(/half a fraction|more than one figure/);
    // Its unit and what is wrong describe it.
    const described = (path: string) =>
      field(page, path).evaluate((input) =>
        (input.getAttribute('aria-describedby') ?? '')
          .split(' ')
          .map((id) => document.getElementById(id))
          .map((element) => element?.getAttribute('aria-label') ?? element?.textContent ?? '')
          .join(' ')
          .trim(),
      );
    expect(await described('frame.groove.depth')).toBe('inches');
    expect(await described('panel.thickness')).toMatch(/^inches 1 3\/8x cannot be worked out/);
    // What cannot be read is left in its field, and nothing of it in the job.
    await page.keyboard.press('Tab');
    await expect.poll(() => figureOf(page, 'tip')).toBeCloseTo(6.2, 6);
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await page.locator('.icon[aria-label="Undo"]').press('Enter');
    await expect.poll(() => heard.textContent()).toContain('Undone.');
    const drawing = page.locator('svg.drawing');
    expect(await drawing.getAttribute('aria-description')).toContain('raise on the front, ogee');
  });
});

describe('the page', () => {
  it('is served by fielded open to this machine alone, with the job and its shop on it', async () => {
    let address = '';
    let said = '';
    let stop = () => {};
    const stopped = new Promise<void>((settle) => {
      stop = settle;
    });
    const io = {
      out: async (text: string) => {
        address += text;
      },
      err: async (text: string) => {
        said += text;
      },
      outIsTerminal: false,
      errIsTerminal: false,
      columns: 80,
      colour: false,
      stopped: () => stopped,
    };
    const status = main(['open', 'examples/shop/job.yaml', '--no-browser'], io);
    await expect.poll(() => address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/#file\n$/);
    const page = await bench.open(DESKTOP, address.trim());
    expect(await page.getByLabel('Title of the job').inputValue()).toBe('Linen cupboard, ogee panels');
    const { port } = new URL(address);
    const ask = (path: string, host: string) =>
      new Promise<number | undefined>((settle, fail) => {
        request({ host: '127.0.0.1', port, path, headers: { host } }, (answer) => {
          answer.resume();
          settle(answer.statusCode);
        })
          .on('error', fail)
          .end();
      });
    expect(await ask('/', `127.0.0.1:${port}`)).toBe(200);
    expect(await ask('/job.json', 'shop.example')).toBe(421);
    for (const path of [
      '/../package.json',
      '/%2e%2e/package.json',
      '/..%5cpackage.json',
      '/.git/config',
      '/assets',
      '/%',
    ])
      expect(await ask(path, `127.0.0.1:${port}`), path).toBe(404);
    // A second one at the same time finds a port of its own; one that is asked for by number and taken is refused.
    const other = { ...io, out: async () => {}, stopped: () => Promise.resolve() };
    expect(await main(['open', '--no-browser'], other)).toBe(0);
    expect(await main(['open', '--no-browser', '--port', port], other)).toBe(2);
    expect(said).toContain('is taken');
    stop();
    expect(await status).toBe(0);
  });

  it('works from a single file on disk, with everything that is fetched later in it', async () => {
    const page = await bench.openAlone(DESKTOP, pathToFileURL(join(bench.built, 'fielded.html')).href);
    const refused: string[] = [];
    page.on('console', (message) => message.type() === 'error' && refused.push(message.text()));
    expect(await page.locator('script[src], link[rel="stylesheet"]').count()).toBe(0);
    await field(page, 'panel.thickness').fill('(30 + 9) / 2');
    await field(page, 'panel.thickness').blur();
    await expect.poll(() => field(page, 'panel.thickness').inputValue()).toBe('19.5');
    await page.locator('input[type="file"]').setInputFiles('examples/bevel-wedge/job.yaml');
    await expect.poll(() => page.getByLabel('Title of the job').inputValue()).toBe('Tack-room locker panels');
    await page.locator('summary', { hasText: 'Drawing' }).click();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Full-size sheets as PDF' }).click();
    expect(readFileSync(await (await download).path(), 'latin1').slice(0, 5)).toBe('%PDF-');
    await page.reload();
    await ready(page);
    expect(await page.getByLabel('Title of the job').inputValue()).toBe('Tack-room locker panels');
    expect(await figureOf(page, 'clearance')).not.toBeNull();
    expect(refused).toEqual([]);
  });
});
