// What a maker does on the page, in a real browser: from nothing to a print, tapping, dragging, typing, comparing.
import { readFileSync } from 'node:fs';
import type { CDPSession, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { evaluate, readJob } from '../../packages/core/src/index.ts';
import { type Role, STYLES } from '../../packages/render/src/index.ts';
import { field, figureOf, middleOf, PHONE, setUpBench, tapDimension } from './open-page.ts';

const bench = setUpBench();

const radio = (page: Page, name: string) => page.getByRole('radio', { name, exact: true });
const menu = async (page: Page, name: 'Job' | 'Drawing', item: string) => {
  await page.locator('summary', { hasText: name }).click();
  await page.getByRole('button', { name: item }).click();
};

describe('on a phone', () => {
  it('a size that is typed keeps its field and the joint in sight above the keyboard', async () => {
    const page = await bench.goOn(PHONE);
    await page.setViewportSize({ width: 390, height: 430 });
    const depth = field(page, 'cuts[1].profile.depth');
    await depth.focus();
    await page.waitForTimeout(600);
    const shown = await page
      .locator('.drawing .dimension')
      .evaluateAll((all) => all.map((e) => e.getAttribute('data-of')));
    expect(shown).toEqual(['cuts[1].depth']);
    const [drawing, typed, strip] = await Promise.all([
      page.locator('.drawing').boundingBox(),
      depth.boundingBox(),
      page.locator('.key-strip').boundingBox(),
    ]);
    expect(drawing!.y).toBeGreaterThanOrEqual(-1);
    expect(typed!.y).toBeGreaterThanOrEqual(drawing!.y + drawing!.height - 1);
    expect(typed!.y + typed!.height).toBeLessThanOrEqual(strip!.y + 1);
    const wood = await page.locator('.drawing [data-key="panel"]').first().boundingBox();
    expect(wood!.width).toBeGreaterThan(390 / 3);
    await depth.blur();
  });
});

describe('a dimension on the drawing', () => {
  it('is tapped and typed over where it stands, and Escape gives it back', async () => {
    const page = await bench.goOn();
    const before = await middleOf(page, '.drawing [data-of="cuts[0].depth"] .target');
    await tapDimension(page, 'cuts[0].depth');
    const entry = page.locator('.dimension-entry input');
    expect(await entry.inputValue()).toBe('9');
    const at = await middleOf(page, '.dimension-entry');
    expect(Math.abs(at.x - before.x)).toBeLessThan(40);
    expect(Math.abs(at.y - before.y)).toBeLessThan(40);
    await entry.fill('9.5');
    expect(await figureOf(page, 'clearance')).toBeCloseTo(0.7, 9);
    await entry.press('Enter');
    expect(await field(page, 'cuts[0].profile.depth').inputValue()).toBe('9.5');
    await tapDimension(page, 'cuts[0].depth');
    await entry.fill('3');
    await entry.press('Escape');
    expect(await field(page, 'cuts[0].profile.depth').inputValue()).toBe('9.5');
    expect(await page.locator('.dimension-entry').count()).toBe(0);
  });

  it('that follows from one size moves that size; one that is worked out says from what', async () => {
    const page = await bench.goOn();
    await tapDimension(page, 'tongue.insertion');
    await page.locator('.dimension-entry input').fill('8');
    await page.keyboard.press('Enter');
    expect(await field(page, 'frame.swellGap').inputValue()).toBe('3');
    // A key that is pressed as soon as the words are seen belongs to them.
    const hasFocus = page.evaluate(
      () =>
        new Promise<boolean>((found) => {
          const watch = new MutationObserver(() => {
            const note = document.querySelector('.dimension-note');
            if (note !== null) found(note.contains(document.activeElement));
          });
          watch.observe(document.querySelector('.sheet')!, { childList: true });
        }),
    );
    await tapDimension(page, 'fit.clearance');
    expect(await page.locator('.dimension-note').innerText()).toContain('Make it fit');
    expect(await hasFocus).toBe(true);
  });

  it('is reached and changed by keyboard alone', async () => {
    const page = await bench.goOn();
    await page.locator('[data-of="frame.groove.width"]').focus();
    await page.keyboard.press('Enter');
    await page.locator('.dimension-entry input:focus').waitFor();
    await page.keyboard.type('6.6');
    await page.keyboard.press('Enter');
    expect(await figureOf(page, 'clearance')).toBeCloseTo(0.4, 9);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-of'))).toBe('frame.groove.width');
  });
});

describe('an arris', () => {
  it('is dragged with a mouse in steps of 0.1 mm while scale and place stay; only its size is shown', async () => {
    const page = await bench.goOn();
    const grip = '[data-handle="cuts[1] land"]';
    const { x, y } = await middleOf(page, `${grip} .ring`);
    const view = await page.locator('.drawing').getAttribute('viewBox');
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 3);
    await page.mouse.move(x + 1, y - 9, { steps: 4 });
    expect(await page.locator('.readout').innerText()).toMatch(/^depth \d+(\.\d)? mm$/);
    const shown = await page
      .locator('.drawing .dimension')
      .evaluateAll((all) => all.map((e) => e.getAttribute('data-of')));
    expect(shown).toEqual(['cuts[1].depth']);
    expect(await page.locator('.drawing').getAttribute('viewBox')).toBe(view);
    await page.mouse.up();
    // The fields follow in a task of their own.
    const depthNow = async () => Number(await field(page, 'cuts[1].profile.depth').inputValue());
    await expect.poll(depthNow).toBeGreaterThan(4.8);
    const depth = await depthNow();
    expect(depth * 10).toBeCloseTo(Math.round(depth * 10), 6);
    expect(await field(page, 'cuts[1].profile.land').inputValue()).toBe('9');
    expect(await page.locator('.drawing .dimension').count()).toBeGreaterThan(6);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await field(page, 'cuts[1].profile.depth').inputValue()).toBe('4.8');
  });

  it('is dragged by a finger', async () => {
    const page = await bench.goOn(PHONE);
    const touch = await page.context().newCDPSession(page);
    const { x, y } = await middleOf(page, '[data-handle="cuts[0] field"] .ring');
    await stroke(touch, [x, y], [x - 24, y + 1]);
    await expect.poll(async () => Number(await field(page, 'cuts[0].profile.reach').inputValue())).toBeLessThan(37);
    expect(await field(page, 'cuts[0].profile.shoulder').inputValue()).toBe('1.5');
    // Two fingers look closer, also where the first one lies on an arris.
    const reach = await field(page, 'cuts[0].profile.reach').inputValue();
    const wide = () => page.evaluate(() => document.querySelector<SVGSVGElement>('.drawing')!.getScreenCTM()!.a);
    const before = await wide();
    const held = await middleOf(page, '[data-handle="cuts[0] field"] .ring');
    const two = (type: 'touchStart' | 'touchMove', apart: number) =>
      touch.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: [
          { x: held.x - apart, y: held.y, id: 0 },
          { x: held.x + 50, y: held.y, id: 1 },
        ],
      });
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ ...held, id: 0 }] });
    await two('touchStart', 0);
    for (const apart of [20, 50, 90]) await two('touchMove', apart);
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await expect.poll(wide).toBeGreaterThan(1.5 * before);
    expect(await field(page, 'cuts[0].profile.reach').inputValue()).toBe(reach);
    const less = page.getByRole('button', { name: 'See more' });
    while ((await less.count()) > 0) await less.click();
  });

  it('is moved by arrow keys, finer with Shift, and says where it is', async () => {
    const page = await bench.goOn();
    const grip = page.locator('[data-handle="cuts[0] land"]');
    await grip.focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    expect(await field(page, 'cuts[0].profile.depth').inputValue()).toBe('9.2');
    await page.keyboard.press('Shift+ArrowUp');
    expect(await field(page, 'cuts[0].profile.depth').inputValue()).toBe('9.19');
    await page.keyboard.press('ArrowLeft');
    expect(await grip.getAttribute('aria-valuetext')).toBe('land 10.9 mm, depth 9.19 mm');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    expect(await field(page, 'cuts[0].profile.depth').inputValue()).toBe('9');
    // All of them are one stop; other keys than those that move it go to the next one.
    await page.keyboard.press('PageDown');
    const held = () => page.evaluate(() => (document.activeElement as SVGElement).dataset.handle);
    expect(await held()).toBe('cuts[1] field');
    expect(await page.locator('.grip[tabindex="0"]').count()).toBe(1);
    await page.keyboard.press('Tab');
    expect(await held()).toBeUndefined();
    await page.keyboard.press('Shift+Tab');
    expect(await held()).toBe('cuts[1] field');
    await page.keyboard.press('Home');
    expect(await held()).toBe('cuts[0] field');
  });

  it('moves by 1/64 in where inches are shown', async () => {
    const page = await bench.goOn();
    await radio(page, 'in').check();
    await page.locator('[data-handle="stock"]').focus();
    await page.keyboard.press('ArrowDown');
    expect(await field(page, 'panel.thickness').inputValue()).toBe('51/64');
    await radio(page, 'mm').check();
  });
});

describe('a length', () => {
  it('is read in every notation and as a sum, and kept as typed', async () => {
    const page = await bench.goOn();
    const stock = field(page, 'panel.thickness');
    for (const [typed, mm] of [
      ['3/4 in', 19.05],
      ['1-1/4"', 31.75],
      ['1.9 cm', 19],
      ['20 mm - 1/32 in', 19.206],
      ['(26 + 12) / 2', 19],
    ] as const) {
      await stock.fill(typed);
      await stock.blur();
      await expect.poll(() => stock.inputValue()).toBe(String(mm));
    }
    await stock.fill('3/4');
    await stock.blur();
    expect(await page.locator('.field.faulty .fault').innerText()).toBe(
      '3/4 is a fraction with no unit. Write 3/4 in.',
    );
    expect(await stock.inputValue()).toBe('3/4');
    await stock.fill('alert(1)+2');
    await stock.blur();
    await expect.poll(() => page.locator('.field.faulty .fault').innerText()).toContain('cannot be worked out');
    expect(await figureOf(page, 'tip')).not.toBeNull();
    await stock.fill('20');
  });

  it('that would make a job that cannot be stays in its field with the reason', async () => {
    const page = await bench.goOn();
    await field(page, 'cuts[0].profile.land').fill('50');
    expect(await page.locator('.field.faulty .fault').innerText()).toContain('leaves nothing of the reach');
    expect(await figureOf(page, 'clearance')).toBeCloseTo(0.2, 9);
    await field(page, 'cuts[0].profile.land').fill('11');
  });

  it('is shown in mm or inches without changing the job', async () => {
    const page = await bench.goOn();
    const tip = await figureOf(page, 'tip');
    await radio(page, 'in').check();
    expect(await page.locator('[data-figure="clearance"]').innerText()).toContain('in');
    expect(await figureOf(page, 'tip')).toBe(tip);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Reach, raise: more' }).click();
    expect(await field(page, 'cuts[0].profile.reach').inputValue()).toBe('1-1/2');
    await radio(page, 'mm').check();
    expect(await field(page, 'cuts[0].profile.reach').inputValue()).toBe('38.1');
    await page.getByRole('button', { name: 'Depth, raise: less' }).click();
    expect(await field(page, 'cuts[0].profile.depth').inputValue()).toBe('8.5');
  });
});

it('an amount typed for a fit says the same in inches, and what it asks stays on a small laptop', async () => {
  const page = await bench.goOn({ viewport: { width: 1180, height: 820 } });
  await page.getByRole('button', { name: 'Make it fit' }).click();
  const amount = page.locator('.ask .line input');
  await amount.fill('2');
  await radio(page, 'in').check();
  await expect.poll(() => amount.inputValue()).toBe('0.07874');
  await expect.poll(() => page.locator('.fit-panel .move').innerText()).toMatch(/^Take the raise from .+\sin/);
  const { y, height } = (await page.getByRole('button', { name: 'Make the move' }).boundingBox())!;
  expect(y + height).toBeLessThanOrEqual(820);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  await page.getByRole('button', { name: 'Make it fit' }).click();
  await radio(page, 'mm').check();
});

describe('on the stage', () => {
  it('the figures are those of the command line, on every example', async () => {
    const page = await bench.goOn();
    for (const example of [
      'bead-on-edge',
      'bevel-wedge',
      'dry-winter',
      'hall-doors',
      'inch-rebate',
      'ogee-cove',
      'shop',
    ]) {
      const files = [`examples/${example}/job.yaml`, ...(example === 'shop' ? ['examples/shop/shop.yaml'] : [])];
      await page.locator('input[type="file"]').setInputFiles(files);
      const text = readFileSync(files[0]!, 'utf8');
      const { job, faults } = readJob(text, { loadShop: () => readFileSync('examples/shop/shop.yaml', 'utf8') });
      expect(faults).toEqual([]);
      const { fit, tongue, title } = evaluate(job!);
      await expect.poll(() => page.getByLabel('Title of the job').inputValue(), { message: example }).toBe(title);
      expect(await figuresOf(page), example).toEqual({
        tip: tongue.thicknessAtTip,
        mouth: tongue.thicknessAtMouth,
        clearance: fit.clearance,
        face: fit.frontFace?.most ?? null,
        verdict: fit.verdict ?? 'none',
      });
    }
  });

  it('every view of a job with everything is drawn', async () => {
    const page = await bench.goOn();
    await page.locator('input[type="file"]').setInputFiles(['examples/shop/job.yaml', 'examples/shop/shop.yaml']);
    // The views of doors come with the part of the page that answers the whole job.
    const listed = () => page.locator('.views button[aria-pressed]').allInnerTexts();
    await expect.poll(listed).toEqual(expect.arrayContaining(['Joint', 'Section', 'Detail', 'Cuts', 'Panel', 'Door']));
    const views = await listed();
    const roles = new Set<string>();
    const noteRoles = async () => {
      const drawn = await page
        .locator('.drawing [class^="role-"]')
        .evaluateAll((all) => all.map((each) => each.classList[0]!.slice('role-'.length)));
      for (const role of drawn) roles.add(role);
    };
    for (const name of views) {
      await page.locator('.views').getByRole('button', { name, exact: true }).click();
      await expect.poll(() => page.locator('.drawing path[d]').count(), { message: name }).toBeGreaterThan(5);
      // Drawings that are tried for their size go without grain; those that are shown have it.
      const grain = page.locator('.drawing path.role-grain[d^="M"]');
      if (name === 'Panel' || name === 'Door') await expect.poll(() => grain.count()).toBeGreaterThan(0);
      await noteRoles();
    }
    const knives = page.getByLabel('Knives');
    for (const name of ['Knife, raise', 'Limiter, back relief']) {
      await knives.selectOption(name);
      await expect.poll(() => page.locator('.drawing').getAttribute('aria-label')).toContain(name);
      await expect.poll(() => page.locator('.drawing text').count(), { message: name }).toBeGreaterThan(20);
      await noteRoles();
    }
    // A colour that the page does not have would be drawn as black, or not at all.
    const colours = new Set([...roles].flatMap((role) => [STYLES[role as Role].fill, STYLES[role as Role].stroke]));
    colours.delete(undefined);
    expect(colours.size).toBeGreaterThan(4);
    const style = (name: string) => readFileSync(`packages/page/src/style/${name}.css`, 'utf8');
    const [light, dark] = style('base').split('prefers-color-scheme: dark');
    for (const sheet of [light, dark, style('forced-colours')])
      for (const colour of colours) expect(sheet).toContain(`--${colour}: `);
    await page.getByRole('button', { name: 'Two drawings' }).click();
    await expect.poll(() => page.locator('.drawing').count()).toBe(2);
    await page.getByRole('button', { name: 'One drawing' }).click();
    await page.locator('.views').getByRole('button', { name: 'Joint', exact: true }).click();
  });

  it('an earlier joint is compared with, and shapes are chosen from drawings of themselves', async () => {
    const page = await bench.goOn();
    await page.getByRole('button', { name: 'Compare' }).click();
    await page.locator('.cut').first().getByRole('radio', { name: 'bevel' }).check();
    await field(page, 'cuts[1].profile.depth').fill('5');
    const list = await page.locator('.compare-panel li').allInnerTexts();
    expect(list).toContain('Shape of the raise: from ogee to bevel');
    expect(list).toContain('Depth of the back relief: from 4.8 mm to 5 mm');
    expect(await page.locator('.trace path').count()).toBe(2);
    await page.getByRole('button', { name: 'Compare' }).click();
  });

  it('the panel slides into the groove when asked, and stands still for those who want no motion', async () => {
    // Every frame of the motion is painted: no more of it than the joint takes.
    const page = await bench.goOn({ viewport: { width: 1000, height: 640 } });
    const panel = page.locator('.ink > [data-key="panel"]');
    for (const [reducedMotion, moving] of [
      ['no-preference', true],
      ['reduce', false],
    ] as const) {
      await page.emulateMedia({ reducedMotion });
      // How far before its groove the panel is seen, while it is looked at.
      await page.evaluate(() => {
        const away: number[] = [];
        Object.assign(globalThis, { away });
        const look = () => {
          if ((globalThis as unknown as { away: number[] }).away !== away) return;
          const { transform } = document.querySelector<SVGGElement>('.ink > [data-key="panel"]')!;
          away.push(transform.baseVal.consolidate()?.matrix.e ?? 0);
          requestAnimationFrame(look);
        };
        look();
      });
      const seen = () => page.evaluate(() => (globalThis as unknown as { away: number[] }).away);
      // What moves it comes with the first motion.
      const fetched = moving ? page.waitForResponse(/slide-in-/) : null;
      await page.getByRole('button', { name: 'Slide it in' }).click();
      await fetched;
      if (moving) await expect.poll(async () => Math.max(...(await seen()))).toBeGreaterThan(20);
      await page.waitForTimeout(moving ? 1600 : 300);
      const away = await seen();
      expect(Math.max(...away) > 20).toBe(moving);
      // It only ever goes towards the groove, and stands where it stood with everything else in sight.
      const on = away.slice(away.indexOf(Math.max(...away)));
      expect(on.every((x, i) => i === 0 || x <= on[i - 1]! + 1e-9)).toBe(true);
      expect(await panel.getAttribute('transform')).toBeNull();
      expect(await page.locator('.ink [opacity], .grips[opacity]').count()).toBe(0);
    }
    await page.evaluate(() => Object.assign(globalThis, { away: [] }));
  });
});

describe('a newcomer', () => {
  // After all others on this page: a job that is begun is no step of undo.
  it('goes from nothing to sheets printed at full size with a bar of 100 mm', async () => {
    const page = await bench.goOn();
    expect(await page.locator('.greeting').innerText()).toContain('Tap a figure on the drawing');
    await menu(page, 'Job', 'New');
    await page.getByLabel('Name', { exact: true }).fill('Pantry doors');
    await page.getByLabel('Stock, planed').fill('18');
    await page.getByRole('radio', { name: 'bevel' }).first().check();
    expect(await page.locator('.preview').innerText()).toContain('It fits, and the face is flush');
    await page.getByRole('button', { name: 'Begin' }).click();
    await expect.poll(() => page.locator('[data-verdict]').getAttribute('data-verdict')).toBe('sliding');
    // The example slid too: the job is there when its title is.
    await expect.poll(() => page.getByLabel('Title of the job').inputValue()).toBe('Pantry doors');
    await field(page, 'frame.groove.width').fill('6.6');
    expect(await figureOf(page, 'clearance')).toBeCloseTo(0.8, 9);
    await page.getByRole('button', { name: 'Make it fit' }).click();
    await expect.poll(() => page.locator('.fit-panel .move').innerText()).toMatch(/^Take the .+ from .+ deep: it then/);
    await page.getByRole('button', { name: 'Make the move' }).click();
    expect(await figureOf(page, 'clearance')).toBeCloseTo(0.2, 9);
    expect(await page.locator('.sentence').innerText()).toContain('slides into the groove');

    await page.evaluate(() => {
      window.print = () => {};
    });
    await menu(page, 'Drawing', 'Print at full size');
    const sheets = page.locator('.print-sheet svg');
    await sheets.first().waitFor({ state: 'attached' });
    expect(await sheets.first().getAttribute('width')).toBe('210mm');
    // The bar as the printer gets it: CSS counts 96 px to the inch.
    await page.emulateMedia({ media: 'print' });
    const bar = await page.evaluate(() => {
      const text = [...document.querySelectorAll('.print-sheet text')].find((t) => /100 mm/.test(t.textContent ?? ''));
      const paths = [...(text?.parentElement?.querySelectorAll('path') ?? [])];
      return Math.max(...paths.map((path) => path.getBoundingClientRect().width));
    });
    expect(bar / (96 / 25.4)).toBeGreaterThan(99.5);
    expect(bar / (96 / 25.4)).toBeLessThan(100.8);
    const count = await sheets.count();
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, w, h]) => [Number(w), Number(h)]);
    expect(boxes.length).toBe(count);
    for (const [width, height] of boxes) {
      expect(width! / (72 / 25.4)).toBeCloseTo(210, 0);
      expect(height! / (72 / 25.4)).toBeCloseTo(297, 0);
    }
  });
});

/** What stands above the sheet, figures in mm, read at one moment; null for one that there is none of. */
function figuresOf(page: Page): Promise<Record<string, number | string | null>> {
  return page.evaluate(() => {
    const figure = (name: string) => {
      const value = document.querySelector(`[data-figure="${name}"]`)!.getAttribute('value');
      return value === '' || value === null ? null : Number(value);
    };
    const figures = ['tip', 'mouth', 'clearance', 'face'].map((name) => [name, figure(name)]);
    return {
      ...Object.fromEntries(figures),
      verdict: document.querySelector('[data-verdict]')!.getAttribute('data-verdict'),
    };
  });
}

/** One finger from here to there. */
async function stroke(touch: CDPSession, from: [number, number], to: [number, number]): Promise<void> {
  const at = (part: number) => [{ x: from[0] + (to[0] - from[0]) * part, y: from[1] + (to[1] - from[1]) * part }];
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
  for (let part = 0.1; part <= 1; part += 0.1)
    await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(part) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}
