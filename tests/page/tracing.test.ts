// A sample traced on the page, from a picture with and without a scale; and an outline drawn by hand there.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { run } from '../cli/command.ts';
import { PHONE, setUpBench } from './open-page.ts';

const bench = setUpBench();
const SAMPLE = 'examples/traced-sample/sample.png';

it('gives what the command line gives, goes on answering meanwhile, and goes into the job in one step', async () => {
  const page = await bench.goOn(PHONE);
  await page.getByRole('button', { name: 'Own outline… for the raise' }).click();
  const pictures = page.locator('.trace input[type="file"]').first();
  expect(await page.locator('.trace input[capture="environment"]').getAttribute('accept')).toBe('image/jpeg');
  expect(await pictures.getAttribute('accept')).toMatch(/image\/png.*image\/jpeg/);
  // It is read beside the page, so that the page goes on answering.
  const worker = page.waitForEvent('worker');
  await pictures.setInputFiles(SAMPLE);
  expect((await worker).url()).toMatch(/^blob:/);
  await page.locator('.seen img').waitFor();
  const { front, back } = JSON.parse((await run(['trace', SAMPLE, '--json'])).out);
  const said = (await page.locator('.seen').innerText()).replaceAll('\u00A0', ' ');
  const mm = (value: number) => `${Number(value.toFixed(2))} mm`;
  expect(said).toContain(
    `Front: ${mm(front.reach)} in, ${mm(front.depth)} deep. Lines and arcs within ${mm(front.deviation)}`,
  );
  expect(said).toContain(`Back: ${mm(back.reach)} in, ${mm(back.depth)} deep`);
  expect(await page.locator('.seen img').evaluate((image: HTMLImageElement) => image.naturalWidth)).toBeGreaterThan(
    100,
  );

  await page.getByRole('button', { name: 'Use both outlines' }).click();
  const reach = page.locator('input[data-path="cuts[0].reach"]');
  await expect.poll(async () => Number(await reach.inputValue())).toBeCloseTo(front.reach, 1);
  expect(Number(await page.locator('input[data-path="cuts[1].reach"]').inputValue())).toBeCloseTo(back.reach, 1);
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await page.locator('input[data-path="cuts[1].profile.reach"]').inputValue()).toBe('14');
});

it('a finger draws lines and arcs, moves a point finely, deletes it, steps back and uses what it drew', async () => {
  const page = await bench.goOn(PHONE);
  await page.getByRole('button', { name: 'Own outline… for the raise' }).click();
  await page.locator('.outline-panel summary', { hasText: 'Draw it by hand' }).click();
  const pad = page.locator('.squared');
  const cdp = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: { x: number; y: number }[]) =>
    cdp.send('Input.dispatchTouchEvent', { type, touchPoints });
  const at = (x: number, y: number) => ({ x, y });
  const slide = async (...places: { x: number; y: number }[]) => {
    await pad.scrollIntoViewIfNeeded();
    const box = (await pad.boundingBox())!;
    // 60 mm of paper with 2 mm round it.
    const scale = box.width / 64;
    const [first, ...rest] = places.map(({ x, y }) => ({ x: box.x + (x + 2) * scale, y: box.y + (y + 2) * scale }));
    await touch('touchStart', [first!]);
    for (const place of rest) await touch('touchMove', [place]);
    await touch('touchEnd', []);
  };
  const path = () => pad.locator('.drawn').getAttribute('d');
  await slide(at(6, 14), at(1, 9.1));
  await slide(at(20, 14), at(11.1, 9.2));
  await slide(at(24, 12), at(30, 3));
  await expect.poll(path).toBe('M 0 9 L 11 9 L 30 3');
  await page.getByRole('button', { name: 'By an arc' }).click();
  await page.locator('[aria-pressed="true"]', { hasText: 'By an arc' }).waitFor();
  await slide(at(40, 12), at(36, 0.3));
  await expect.poll(path).toMatch(/^M 0 9 L 11 9 L 30 3 A [\d.]+ [\d.]+ 0 0 0 36 0$/);
  const drawn = await path();
  // Taken in hand by a tap; 8 mm of the finger beside it are 2 mm.
  await slide(at(30, 3));
  await slide(at(45, 15), at(49, 15), at(53, 13.4));
  await expect.poll(path).toMatch(/L 32 2\.6 A/);
  // A phone that is turned keeps what is drawn, and keeps it in sight.
  for (const [width, height] of [
    [844, 390],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height });
    await expect
      .poll(async () => (await pad.boundingBox())!.y + (await pad.boundingBox())!.height)
      .toBeLessThan(height);
    await expect.poll(async () => (await pad.boundingBox())!.y).toBeGreaterThan(0);
    expect(await path()).toMatch(/L 32 2\.6 A/);
  }
  await page.getByRole('button', { name: 'Step back' }).click();
  await expect.poll(path).toBe(drawn);
  await page.getByRole('button', { name: 'Delete the point' }).click();
  await expect.poll(path).not.toContain('L 30 3');
  await page.getByRole('button', { name: 'Step back' }).click();
  await page.getByRole('button', { name: 'Use this outline' }).click();
  // The part closes, and the drawing is in sight with what came of it.
  await page.locator('.outline-panel').waitFor({ state: 'detached' });
  expect(await page.locator('input[data-path="cuts[0].reach"]').inputValue()).toBe('36');
  expect((await page.locator('.drawing').boundingBox())!.y).toBeGreaterThanOrEqual(0);
});

it('an outline drawn with keys, typed points and a finger is cut, and so is one for the sticking', async () => {
  const page = await bench.goOn(PHONE);
  await page.getByText('Sticking on the frame').click();
  await page.getByRole('button', { name: 'Own outline… for the sticking' }).click();
  await page.locator('.outline-panel summary', { hasText: 'Draw it by hand' }).click();
  const pad = page.locator('.squared');
  await pad.focus();
  await page.keyboard.press('Enter');
  const go = async (x: string, y: string) => {
    await page.getByLabel('In from the edge').fill(x);
    await page.getByLabel('Down from the face').fill(y);
    await page.keyboard.press('Enter');
  };
  await go('3', '5');
  await page.getByRole('button', { name: 'By an arc' }).click();
  await go('8', '0');
  await page.getByRole('button', { name: 'Use this outline' }).click();
  await expect.poll(() => page.locator('#sticking-shape').inputValue()).toBe('outline');
  const job = await page.evaluate(
    () => Object.entries(localStorage).find(([key]) => key.startsWith('fielded.desk.'))![1],
  );
  expect(JSON.parse(job).doc.data.frame.sticking).toEqual({ shape: 'outline', path: 'M 0 5 L 3 5 A 5 5 0 0 0 8 0' });

  // A drawing that lies elsewhere on its paper, and in inches without saying so, is cut all the same, and says how it was taken.
  const drawn = [
    [4, 3.65],
    [4.4, 3.65],
    [5.2, 3.9],
    [5.2, 4],
  ]
    .map(([x, y]) => `10\n${x}\n20\n${y}\n`)
    .join('');
  const dxf = `0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\n0\n90\n4\n70\n0\n${drawn}0\nENDSEC\n0\nEOF\n`;
  await page.getByRole('button', { name: 'Own outline… for the raise' }).click();
  const drawings = page.getByLabel('Drawing for the raise, SVG or DXF');
  await drawings.setInputFiles({ name: 'bench.dxf', mimeType: 'image/vnd.dxf', buffer: Buffer.from(dxf) });
  await page.getByText('moved to where edge and face meet').waitFor();
  await page.getByRole('button', { name: 'Read it in inches' }).click();
  // 0.35 in deep and 1.2 in far.
  await expect.poll(() => page.locator('input[data-path="cuts[0].depth"]').inputValue()).toBe('8.89');
  expect(await page.locator('input[data-path="cuts[0].reach"]').inputValue()).toBe('30.48');
});

it('asks how large a picture is that does not say, and takes the calliper for it', async () => {
  const page = await bench.goOn(PHONE);
  await page.getByRole('button', { name: 'Own outline… for the raise' }).click();
  const bytes = readFileSync(SAMPLE);
  // Its density is called by a name that nobody reads.
  bytes.write('pHYx', bytes.indexOf('pHYs'), 'latin1');
  const bare = join(bench.folder, 'bare.png');
  writeFileSync(bare, bytes);
  await page.locator('.trace input[type="file"]').first().setInputFiles(bare);
  await page.getByLabel('Its thickness by the calliper').fill('10');
  await page.getByRole('button', { name: 'Trace at this scale' }).click();
  // Half as thick as it is: everything else is half as large too.
  await expect
    .poll(async () => (await page.locator('.seen').innerText()).replaceAll('\u00A0', ' '))
    .toMatch(/^10 mm thick[\s\S]*Front: (?:16\.9|17)\d* mm in, 4\.2\d* mm deep/);
  await page
    .locator('.trace input[type="file"]')
    .first()
    .setInputFiles({
      name: 'notes.png',
      mimeType: 'image/png',
      buffer: Buffer.from('no picture'),
    });
  await expect.poll(() => page.locator('.trace > .fault').innerText()).toContain('neither a PNG nor a JPEG');
});
