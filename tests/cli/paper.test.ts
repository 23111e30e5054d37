// Pages for Letter, as ASME Y14.1 (ANSI A) and every North American printer have it: 8.5 by 11 in, 612 by 792 points.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { makeFolder, run } from './command.ts';

const folder = makeFolder();
const KITCHEN = 'examples/kitchen/job.yaml';
const WRITTEN: readonly (readonly string[])[] = [
  ['plan', KITCHEN],
  ['knife', KITCHEN, '--name', 'raise'],
  ['cutting-list', KITCHEN],
  ['cutting-list', KITCHEN, '--doors'],
  ['quote', KITCHEN],
  ['template', 'examples/wardrobe/job.yaml'],
];

it.each(WRITTEN)('%s lays every page out for it', async (...args) => {
  const file = join(folder, 'pages.pdf');
  expect((await run([...args, '--paper', 'letter', '-o', file, '--force'])).status).toBeLessThan(2);
  const boxes = readFileSync(file, 'latin1').match(/\/MediaBox \[[^\]]*\]/g)!;
  expect(boxes.length).toBeGreaterThan(0);
  for (const box of boxes)
    expect(box.match(/[\d.]+/g)!.map((points) => Math.round(Number(points)))).toEqual([0, 0, 612, 792]);
});

it('board says so to the browser that prints it', async () => {
  const file = join(folder, 'board.html');
  await run(['board', 'examples/shop/shop.yaml', '--paper', 'letter', '-o', file]);
  expect(readFileSync(file, 'utf8')).toContain('@page { size: letter portrait;');
});

it.each([
  ['plan', KITCHEN],
  ['knife', KITCHEN, '--name', 'raise', '-o', 'q.svg'],
  ['cutting-list', KITCHEN, '-o', 'q.csv'],
  ['cutting-list', KITCHEN, '--labels', '65', '-o', 'q.pdf'],
  ['quote', KITCHEN, '-o', 'q.html'],
  ['quote', KITCHEN, '--json'],
  ['template', 'examples/wardrobe/job.yaml', '-o', 'q.dxf'],
  ['board', 'examples/shop/shop.yaml', '-o', 'q.svg'],
])('%s %s %s refuses a paper where there are no pages', async (...args) => {
  const { status, err } = await run([...args, '--paper', 'letter']);
  expect(status).toBe(2);
  expect(err).toMatch(/^fielded: --paper is for pages\. Write a \..* with -o, or leave it out\./);
});
