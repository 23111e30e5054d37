// The page on a phone, upright and on its side, with the keyboard up: the joint stays large, and nothing lies over anything.
import { readFileSync } from 'node:fs';
import type { Page, Route } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { field, middleOf, PHONE, setUpBench, tapDimension } from './open-page.ts';

const bench = setUpBench();
const ON_ITS_SIDE = { ...PHONE, viewport: { width: 844, height: 390 } };

/** Places on the screen, px: the wood's height, the figures of the sizes in hand, the sheet, the field and what lies above the keyboard. */
async function measure(page: Page) {
  return page.evaluate(() => {
    const box = (element: Element | null | undefined) => {
      const { top, bottom, left, right } = element?.getBoundingClientRect() ?? { top: 0, bottom: 0, left: 0, right: 0 };
      return { top, bottom, left, right };
    };
    const wood = ['panel', 'frame'].map((key) => box(document.querySelector(`.ink > [data-key="${key}"]`)));
    return {
      wood: Math.max(...wood.map(({ bottom }) => bottom)) - Math.min(...wood.map(({ top }) => top)),
      across: Math.max(...wood.map(({ right }) => right)) - Math.min(...wood.map(({ left }) => left)),
      figures: [...document.querySelectorAll('.ink .dimension text')].map(box),
      drawing: box(document.querySelector('.drawing')),
      chip: box(document.querySelector('.chip')),
      fit: box([...document.querySelectorAll('.chip button')].find((button) => button.textContent === 'Make it fit')),
      field: box(document.activeElement),
      strip: box(
        [...document.querySelectorAll('.key-strip')].find((strip) => strip.getBoundingClientRect().height > 0),
      ),
      height: innerHeight,
      width: innerWidth,
    };
  });
}

/** The screen as a keyboard leaves it; the row of keys above it is fetched when a field is first gone to. */
async function raiseKeyboard(page: Page, width: number, height: number): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.locator('.key-strip:visible').first().waitFor();
  await page.waitForTimeout(450);
}

function expectTypingIsSeen(seen: Awaited<ReturnType<typeof measure>>, name: string): void {
  expect(seen.wood, `${name}: wood`).toBeGreaterThanOrEqual(seen.height / 3 - 1);
  expect(seen.figures.length, `${name}: figures`).toBeGreaterThan(0);
  for (const { top, bottom, left, right } of seen.figures) {
    expect(top, `${name}: figure`).toBeGreaterThanOrEqual(Math.max(0, seen.drawing.top) - 1);
    expect(bottom, `${name}: figure`).toBeLessThanOrEqual(seen.drawing.bottom + 1);
    expect(left, `${name}: figure`).toBeGreaterThanOrEqual(-1);
    expect(right, `${name}: figure`).toBeLessThanOrEqual(seen.drawing.right + 1);
  }
  // The line of the verdict stands under the drawing, not on it; the field is clear of both and of the keys.
  expect(seen.chip.top, `${name}: verdict`).toBeGreaterThanOrEqual(seen.drawing.bottom - 1);
  expect(seen.fit.right - seen.fit.left, `${name}: Make it fit`).toBeGreaterThan(43);
  expect(seen.fit.bottom, `${name}: Make it fit`).toBeLessThanOrEqual(seen.height + 5);
  expect(Math.abs(seen.strip.bottom - seen.height), `${name}: keys at the foot`).toBeLessThanOrEqual(1);
  expect(seen.field.bottom, `${name}: keys`).toBeLessThanOrEqual(seen.strip.top + 1);
  expect(seen.field.bottom - seen.field.top, `${name}: field`).toBeGreaterThan(20);
  const besideSheet = seen.field.left >= seen.drawing.right - 1;
  expect(besideSheet || seen.field.top >= seen.chip.bottom - 1, `${name}: field clear of the sheet`).toBe(true);
}

describe('a phone upright, while a figure is typed', () => {
  it.each(['en-US', 'en-GB'])(
    'keeps the wood a third of the height and the figure in hand in sight in %s',
    async (locale) => {
      const page = await bench.goOn({ ...PHONE, locale });
      for (const path of [
        'frame.groove.width',
        'frame.groove.depth',
        'panel.thickness',
        'cuts[0].profile.depth',
        'cuts[0].profile.reach',
        'cuts[1].profile.depth',
      ]) {
        // As the keyboard's own key for the next field does.
        await field(page, path).focus();
        await raiseKeyboard(page, 390, 400);
        expectTypingIsSeen(await measure(page), path);
      }
      // A groove too narrow parts the joint: the figure that is typed stays in sight, and one tap leads on from it.
      await field(page, 'frame.groove.width').fill('1/8 in');
      await raiseKeyboard(page, 390, 400);
      expectTypingIsSeen(await measure(page), 'parted');
      await page.locator('.chip button').tap();
      await page.locator('.fit-panel').waitFor();
    },
  );

  it('shows the joint above the field of a figure that was tapped on the drawing, and goes back to where it was', async () => {
    const page = await bench.goOn(PHONE);
    await tapDimension(page, 'frame.groove.width');
    await page.locator('.dimension-entry').waitFor();
    await raiseKeyboard(page, 390, 400);
    expectTypingIsSeen(await measure(page), 'tapped');
    await page.setViewportSize({ width: 390, height: 844 });
    await page.waitForTimeout(500);
    // Left by a key, it gives way to all dimensions at once: the next key finds another one.
    const dimensions = await page.evaluate(() => {
      document.activeElement!.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
      return document.querySelectorAll('.drawing .dimension').length;
    });
    expect(dimensions).toBeGreaterThan(1);
    await expect.poll(() => page.evaluate(() => scrollY)).toBe(0);
  });
});

describe('a phone on its side', () => {
  it('shows the whole drawing at first, and the keys beside the sheet while a figure is typed', async () => {
    const page = await bench.goOn(ON_ITS_SIDE);
    const first = await measure(page);
    expect(first.chip.bottom).toBeLessThanOrEqual(first.height + 1);
    expect(first.drawing.bottom).toBeLessThanOrEqual(first.chip.top + 1);
    expect(first.wood).toBeGreaterThanOrEqual(first.height / 4);
    await field(page, 'frame.groove.width').click();
    await raiseKeyboard(page, 844, 390);
    const typing = await measure(page);
    expectTypingIsSeen(typing, 'on its side');
    expect(typing.strip.left).toBeGreaterThanOrEqual(typing.drawing.right - 1);
    await raiseKeyboard(page, 844, 220);
    expectTypingIsSeen(await measure(page), 'on its side, keyboard up');
  });
});

/** Has a page take `visualViewport` for what a keyboard laid over it leaves: `height` px, moved down by `top` px. */
async function layKeyboardOver(page: Page, height: number, top: number): Promise<void> {
  await page.evaluate(
    ([high, moved]) => {
      const { visualViewport } = globalThis;
      const set = (name: string, value: number) =>
        Object.defineProperty(visualViewport, name, { value, configurable: true });
      set('height', high!);
      set('offsetTop', moved!);
      for (const type of ['resize', 'scroll']) visualViewport!.dispatchEvent(new Event(type));
    },
    [height, top],
  );
  await page.waitForTimeout(350);
}

/** The page has its own `visualViewport` again. */
async function takeKeyboardAway(page: Page): Promise<void> {
  await page.evaluate(() => {
    const own = visualViewport as unknown as Partial<Record<'height' | 'offsetTop', number>>;
    delete own.height;
    delete own.offsetTop;
    visualViewport!.dispatchEvent(new Event('resize'));
  });
}

/** The room that the next test goes on from. */
const backToJoint = (page: Page) => page.locator('.rooms button', { hasText: 'Joint' }).tap();

describe('a keyboard that lies over the page, which keeps its size', () => {
  it.each([
    ['upright', PHONE, 508, 202],
    ['on its side', ON_ITS_SIDE, 190, 120],
  ] as const)(
    'leaves field, keys and joint in sight, also where the browser has moved what is seen: %s',
    async (_, screen, height, top) => {
      const page = await bench.goOn(screen);
      const inSight = async (moved: number) => {
        const { drawing, chip, field: typed, strip } = await measure(page);
        expect(drawing.top).toBeGreaterThanOrEqual(moved - 1);
        expect(chip.bottom).toBeLessThanOrEqual(moved + height + 1);
        expect(strip.bottom).toBeCloseTo(moved + height, 0);
        expect(typed.bottom).toBeLessThanOrEqual(strip.top + 1);
        expect(typed.top >= chip.bottom - 1 || typed.left >= drawing.right - 1).toBe(true);
      };
      await field(page, 'frame.groove.width').focus();
      await page.locator('html.typing').waitFor();
      for (const moved of [0, top]) {
        await layKeyboardOver(page, height, moved);
        await inSight(moved);
      }
      await layKeyboardOver(page, screen.viewport!.height, 0);
      await page.evaluate(() => scrollTo(0, 0));
      await tapDimension(page, 'frame.groove.width');
      await page.locator('.dimension-entry').waitFor();
      await layKeyboardOver(page, height, top);
      await inSight(top);
      await takeKeyboardAway(page);
    },
  );
});

it('heads no joint with a tick while an error stands against the job, on a phone or a desk', async () => {
  const page = await bench.goOn(PHONE);
  const job = readFileSync('examples/ogee-cove/job.yaml', 'utf8');
  // Panels too narrow for two raises, under a joint that slides.
  const text = `${job}\ndoors: [{ name: small, width: 175, height: 600, stile: 60, rail: 70 }]\n`;
  const heads = () =>
    page.locator(':is(.sentence, .chip) .mark').evaluateAll((marks) => marks.map((mark) => mark.ariaLabel));
  expect(await heads()).toEqual(['sliding', 'sliding']);
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({ name: 'job.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
  await page.locator('.statement.no').waitFor();
  expect(await heads()).toEqual(['cannot be run', 'cannot be run']);
  expect(await page.locator('.chip p').innerText()).toMatch(/^cannot be run: 1 error\s+sliding, 0.2.mm clear$/);
  expect(await page.locator('.statements').first().innerText()).toMatch(/fits[\s\S]*cannot be run: 1 error/);
  await page.setViewportSize({ width: 1440, height: 900 });
  expect(await page.locator('.sentence').innerText()).toContain('The joint fits, but cannot be run: 1 error.');
});

it('says of a long caution what to do at once, and the rest on demand', async () => {
  const page = await bench.goOn(PHONE);
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles(['job.yaml', 'shop.yaml'].map((name) => `examples/wardrobe/${name}`));
  const caution = page.locator('.problems .caution');
  await caution.waitFor();
  expect(await caution.innerText()).toMatch(/never run a small or light piece so\. More$/);
  // No more than a quarter of the screen.
  expect((await caution.boundingBox())!.height).toBeLessThan(844 / 4);
  await caution.getByRole('button', { name: 'More' }).tap();
  expect(await caution.innerText()).toMatch(/against the grain[\s\S]*trained practice go first[\s\S]*Less$/);
});

it('keeps long names of cuts, heads and doors inside the screen, and no word over another', async () => {
  const page = await bench.goOn({ ...PHONE, viewport: { width: 360, height: 640 } });
  const name = 'rabbet block 125 with spurs and two jointed limiters from the old shop';
  const head = '{ cuttingDiameter: 160, bodyDiameter: 70, height: 40, bore: 30, rake: 15, wedge: 45, maxSpeed: 7000 }';
  const job = readFileSync('examples/ogee-cove/job.yaml', 'utf8').replace('name: raise', `name: ${name}`);
  const files = [
    ['job.yaml', `${job}\nshop: shop.yaml\ndoors: [{ name: ${name}, width: 596, height: 716, stile: 60, rail: 60 }]\n`],
    ['shop.yaml', `fielded: 1\nheads: { raiser: ${head}, ${name}: ${head} }\n`],
  ] as const;
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles(files.map(([file, text]) => ({ name: file, mimeType: 'text/yaml', buffer: Buffer.from(text) })));
  const choice = page.locator('.field.choice', { hasText: name }).first();
  await choice.waitFor();
  const [word, label] = await Promise.all([
    choice.locator('.words').boundingBox(),
    choice.locator('legend').boundingBox(),
  ]);
  expect(word!.y).toBeGreaterThanOrEqual(label!.y + label!.height - 1);
  for (const room of ['Doors', 'Shop']) {
    await page.locator('.rooms button', { hasText: room }).tap();
    await page.locator(`.${room.toLowerCase()}`).waitFor();
    const past = await page
      .locator('.side :is(select, .line, summary, button)')
      .evaluateAll((all) => all.filter((each) => each.getBoundingClientRect().right > innerWidth).length);
    expect(past, room).toBe(0);
  }
  await backToJoint(page);
});

it('draws a door much higher than wide, or much wider, so large that its parts and figures are told apart', async () => {
  const page = await bench.goOn({ ...PHONE, viewport: { width: 360, height: 640 } });
  const job = readFileSync('examples/hall-doors/job.yaml', 'utf8').replace(
    /doors:[\s\S]*/,
    `doors:
  - { name: tall, width: 450, height: 2100, stile: 70, rail: 85, up: 3, muntin: 60 }
  - { name: wide, width: 2000, height: 600, stile: 60, rail: 60, across: 5, muntin: 50 }
`,
  );
  const open = (text: string) =>
    page
      .locator('input[type="file"]')
      .first()
      .setInputFiles({ name: 'job.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
  const seen = () =>
    page.locator('.sheet').evaluate((sheet) => {
      const drawing = sheet.querySelector<SVGSVGElement>('.drawing')!;
      const scale = drawing.getScreenCTM()!.a;
      const sizes = [...drawing.querySelectorAll('text')].map((text) => Number(text.getAttribute('font-size')) * scale);
      const { width, height } = drawing.querySelector('.role-wood')!.getBoundingClientRect();
      const more = [sheet.scrollWidth > sheet.clientWidth, sheet.scrollHeight > sheet.clientHeight];
      return { letters: Math.min(...sizes), width, height, more };
    });
  await open(job);
  await page.locator('.rooms button', { hasText: 'Doors' }).tap();
  await page.locator('[data-view="door"] .dimension').first().waitFor();
  const tall = await seen();
  expect(tall.letters).toBeGreaterThanOrEqual(12);
  // A mid rail of 60 mm is at least 14 px high.
  expect(tall.height).toBeGreaterThan((2100 / 60) * 13.5);
  expect(tall.more).toEqual([false, true]);
  await page.locator('.doors summary', { hasText: 'wide' }).tap();
  await expect.poll(async () => (await seen()).more[0]).toBe(true);
  expect((await seen()).width).toBeGreaterThan((2000 / 50) * 8);

  // What cannot be opened is said, and is one line while a size is typed; the drawing shows that size alone, whole.
  await open('fielded: 1\nhedas: {}\n');
  const notice = page.locator('.notice.fault');
  await notice.waitFor();
  expect((await notice.boundingBox())!.height).toBeGreaterThan(60);
  await field(page, 'doors[1].width').focus();
  await raiseKeyboard(page, 360, 330);
  expect((await notice.boundingBox())!.height).toBeLessThan(50);
  expect(await page.locator('.drawing .dimension').count()).toBe(1);
  expect((await seen()).more).toEqual([false, false]);
  await backToJoint(page);
});

it('looks closer where two fingers or two taps are, and at the whole again', async () => {
  const page = await bench.open(PHONE);
  const cdp = await page.context().newCDPSession(page);
  const touchAt = (
    timestamp: number,
    type: 'touchStart' | 'touchMove' | 'touchEnd',
    ...at: (readonly [number, number])[]
  ) => cdp.send('Input.dispatchTouchEvent', { type, timestamp, touchPoints: at.map(([x, y], id) => ({ x, y, id })) });
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...at: (readonly [number, number])[]) =>
    touchAt(Date.now() / 1000, type, ...at);
  const scale = () => page.evaluate(() => document.querySelector<SVGSVGElement>('.drawing')!.getScreenCTM()!.a);
  const whole = await scale();
  const corner = () => middleOf(page, '.grip[aria-label^="groove, front corner"] .ring');
  // What fingers do is fetched at the first touch, here one that pulls the page down at its top, and comes when the finger has gone.
  const held: Route[] = [];
  await page.route('**/fingers-*.js', (route) => void held.push(route));
  const { x, y } = await corner();
  await touch('touchStart', [x - 60, y]);
  for (const down of [20, 40]) await touch('touchMove', [x - 60, y + down]);
  await touch('touchEnd');
  await expect.poll(() => held.length).toBe(1);
  await held[0]!.continue();
  await (await held[0]!.request().response())!.finished();
  await touch('touchStart', [x - 30, y], [x + 30, y]);
  for (const half of [50, 70, 90]) await touch('touchMove', [x - half, y], [x + half, y]);
  await touch('touchEnd');
  await expect.poll(scale).toBeCloseTo(3 * whole, 1);
  // What was between the fingers still is.
  const after = await corner();
  expect(Math.hypot(after.x - x, after.y - y)).toBeLessThan(3);
  const { x: left, y: top, width, height } = (await page.locator('.drawing').boundingBox())!;
  // The times are a hand's own: on a busy machine more passes than there may be between two taps.
  const tapTwice = async (across: number, down: number, between = 0.15) => {
    const first = Date.now() / 1000;
    for (const at of [first, first + between]) {
      await touchAt(at, 'touchStart', [left + across * width, top + down * height]);
      await touchAt(at + 0.05, 'touchEnd');
    }
  };
  // The middle of the field: no figure and no grip is near.
  await tapTwice(0.95, 0.9);
  await expect.poll(scale).toBeCloseTo(whole, 3);
  await page.waitForTimeout(350);
  await tapTwice(0.8, 0.12);
  await expect.poll(scale).toBeCloseTo(2.5 * whole, 1);
  await page.waitForTimeout(350);
  await tapTwice(0.8, 0.12);
  await expect.poll(scale).toBeCloseTo(whole, 3);
});

/** The buttons that a notice lies over. */
function buttonsUnderNotice(): (string | null)[] {
  const notice = document.querySelector('.notice')!.getBoundingClientRect();
  return [...document.querySelectorAll('button, summary, input')]
    .filter((button) => button.closest('.notice') === null && button.getClientRects().length > 0)
    .filter((button) => {
      const { top, bottom, left, right } = button.getBoundingClientRect();
      return top < notice.bottom && bottom > notice.top && left < notice.right && right > notice.left;
    })
    .map((button) => button.textContent);
}

describe('what is only looked at', () => {
  it('has letters of 8 px at least on a phone, cuts and knives, in millimetres and inches', async () => {
    const page = await bench.goOn(PHONE);
    const files = ['examples/kitchen/job.yaml', 'examples/kitchen/shop.yaml'];
    await page.locator('input[type="file"]').first().setInputFiles(files);
    await page.getByText('job.yaml is open').waitFor();
    expect(await page.evaluate(buttonsUnderNotice)).toEqual([]);
    for (const unit of ['mm', 'in']) {
      await page.locator('.units label', { hasText: unit }).click();
      for (const view of ['Cuts', 'Knife']) {
        if (view === 'Cuts') await page.locator('.views button', { hasText: view }).click();
        else await page.getByLabel('Knives').selectOption({ index: 1 });
        await page.locator(`.drawing[data-view^="${view.toLowerCase()}"] text`).first().waitFor();
        const seen = await page.evaluate(() => {
          const texts = [...document.querySelectorAll<SVGTextElement>('.drawing .ink text')];
          const scale = document.querySelector<SVGSVGElement>('.drawing')!.getScreenCTM()!.a;
          return {
            // Hatched wood on cuts: as wide as the sheet allows.
            wood: Math.max(
              ...[...document.querySelectorAll('.ink .role-wood')].map((e) => e.getBoundingClientRect().width),
            ),
            least: Math.min(...texts.map((text) => Number(text.getAttribute('font-size')) * scale)),
            count: texts.length,
          };
        });
        expect(seen.count).toBeGreaterThan(5);
        if (view === 'Cuts') expect(seen.wood, unit).toBeGreaterThan(200);
        expect(seen.least, `${view} in ${unit}`).toBeGreaterThanOrEqual(8);
      }
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    // Read at the machine, whole: what is set, in fractions with their decimals.
    await page.locator('.rooms button', { hasText: 'Set-up' }).click();
    await page.locator('.set dd').first().waitFor();
    await page.setViewportSize({ width: 360, height: 740 });
    const cutOff = await page
      .locator('.set dd')
      .evaluateAll((all) => all.filter((dd) => dd.scrollWidth > dd.clientWidth).map((dd) => dd.textContent));
    expect(cutOff).toEqual([]);
    expect(await page.locator('.set .decimal').count()).toBeGreaterThan(1);
  });
});
