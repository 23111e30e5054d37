import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { evaluate } from '@fielded/core';
import { scenesToHtml, sheets } from '@fielded/render';
import { expect, test } from 'vitest';
import { writePdf } from '../../packages/cli/src/formats/pdf.ts';
import { runChromium, runProgram, scratchFolder } from '../support/programs.ts';
import { job } from './jobs-to-draw.ts';
import { darkRuns, readPgm } from './raster.ts';

const folder = scratchFolder();
const DPI = 300;
const MM_PER_POINT = 25.4 / 72;
const [sheet] = sheets(evaluate(job()), { view: 'sheet', paper: 'a4' });
const pdf = Buffer.from(await writePdf([sheet!]));

/** The lengths, mm, of all level straight lines in a PDF, by the operators of its content (ISO 32000-1, 8.5.2). */
function levelLengths(file: Buffer): number[] {
  const lengths: number[] = [];
  for (const match of file.toString('latin1').matchAll(/\/FlateDecode\s*>>\s*stream\r?\n/g)) {
    const start = match.index + match[0].length;
    let content: string;
    try {
      content = inflateSync(file.subarray(start), { finishFlush: 2 }).toString('latin1');
    } catch {
      continue;
    }
    const stack: [number, number][] = [];
    let [scale, skew] = [1, 0];
    let [x, y] = [0, 0];
    const numbers: number[] = [];
    for (const word of content.split(/\s+/)) {
      if (/^[-+.\d]+$/.test(word)) {
        numbers.push(Number(word));
        continue;
      }
      if (word === 'q') stack.push([scale, skew]);
      else if (word === 'Q') [scale, skew] = stack.pop() ?? [1, 0];
      else if (word === 'cm') [scale, skew] = [scale * numbers.at(-6)!, numbers.at(-5)!];
      else if (word === 'm') [x, y] = numbers.slice(-2) as [number, number];
      else if (word === 'l') {
        const [toX, toY] = numbers.slice(-2) as [number, number];
        if (toY === y && skew === 0) lengths.push(Math.abs(toX - x) * Math.abs(scale) * MM_PER_POINT);
        [x, y] = [toX, toY];
      }
      numbers.length = 0;
    }
  }
  return lengths;
}

/** The length, mm, of the bar at the foot of a page: from its first tick to its last, in pixels. */
function barLength(path: string, page = 1): number {
  const pixels = (mm: number) => Math.round((mm / 25.4) * DPI);
  // A millimetre above the bar, which stands 17 mm above the paper's edge, there are only its ticks.
  const row = ['-x', '0', '-W', `${pixels(114)}`, '-y', `${pixels(297 - 17 - 1)}`, '-H', '1'];
  const numbers = ['-f', `${page}`, '-l', `${page}`];
  const raster = readPgm(runProgram('pdftoppm', ['-gray', '-r', String(DPI), ...row, ...numbers, path]));
  const ticks = darkRuns(raster, 0, 0, pixels(114));
  expect(ticks).toHaveLength(11);
  return ((ticks[10]! - ticks[0]!) / DPI) * 25.4;
}

let printed: string | undefined;

/** What Chromium prints: the sheet as it is, and on a second page shrunk by 0.3 %. */
function printInChromium(): string {
  if (printed !== undefined) return printed;
  printed = join(folder, 'chromium.pdf');
  const page = join(folder, 'sheets.html');
  const parts = scenesToHtml([sheet!, sheet!], { fillsPaper: true }).split(/(?=<svg )/);
  const shrink = 'transform:scale(0.997);transform-origin:0 100%';
  parts[2] = parts[2]!.replace('style="display:block;', `style="display:block;${shrink};`);
  writeFileSync(page, parts.join(''));
  runChromium(folder, [`--print-to-pdf=${printed}`, '--no-pdf-header-footer', page]);
  return printed;
}

test('the bar is 100 mm long in the PDF by its coordinates', () => {
  const [nearest] = levelLengths(pdf).sort((a, b) => Math.abs(a - 100) - Math.abs(b - 100));
  expect(Math.abs(nearest! - 100)).toBeLessThan(0.01);
});

test('the bar is 100 mm long in the PDF by its pixels at 300 dpi', () => {
  const path = join(folder, 'sheet.pdf');
  writeFileSync(path, pdf);
  expect(Math.abs(barLength(path) - 100)).toBeLessThan(0.1);
});

test("the bar is 100 mm long in Chromium's print of the HTML", () => {
  expect(Math.abs(barLength(printInChromium()) - 100)).toBeLessThan(0.1);
});

test('a print shrunk by 0.3 % is found out', () => {
  expect(barLength(printInChromium(), 2)).toBeLessThan(99.9);
});

test('the same sheet gives the same PDF, byte for byte', async () => {
  expect(pdf.equals(Buffer.from(await writePdf([sheet!])))).toBe(true);
});
