// What the page writes against what the command line reads of it.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { countJob, makeQuote, readFileData, readJob, readShop } from '../../packages/core/src/index.ts';
import { createDesk } from '../../packages/page/src/desk/create-desk.ts';
import { type Doc, readDoc } from '../../packages/page/src/desk/doc.ts';
import { openFiles } from '../../packages/page/src/files/open-text.ts';
import { writeJob, writeShop } from '../../packages/page/src/files/write-job.ts';
import { run } from '../cli/command.ts';
import { scratchFolder } from '../support/programs.ts';

const KITCHEN = ['job.yaml', 'shop.yaml'].map((name) => ({
  name,
  text: readFileSync(`examples/kitchen/${name}`, 'utf8'),
}));

async function openKitchen(): Promise<Doc> {
  const opened = await openFiles(KITCHEN, readDoc);
  if (!('doc' in opened)) throw new Error(opened.message);
  return opened.doc;
}

it('a shop opened and saved unchanged is its file to the letter of what it says', async () => {
  const { shop } = await openKitchen();
  const written = writeShop(shop!);
  expect(readFileData(written).value).toEqual(readFileData(KITCHEN[1]!.text).value);
  expect(readShop(written)).toEqual(readShop(KITCHEN[1]!.text));
});

// The command and all that it loads start within the test: slow where the machine is in use.
it('a shop changed here is read by the command line as it stands here, and prices the job alike', async () => {
  const desk = createDesk(await openKitchen());
  const changes: readonly (readonly [readonly (string | number)[], number | string | number[]])[] = [
    [['heads', 'raiser', 'height'], '1-1/2 in'],
    [
      ['machines', 'spindle', 'speeds'],
      [3000, 4200, 6100],
    ],
    [['rules', 'kerf'], 2.8],
    [['rates', 'hour'], 61.5],
    [['rates', 'wood', 'black cherry'], 4100],
  ];
  for (const [keys, value] of changes) expect(desk.changeShop(keys, value)).toEqual([]);
  expect(desk.change([['doors[0].quantity', 5]])).toEqual([]);
  const { doc, job } = desk;
  const folder = scratchFolder();
  writeFileSync(join(folder, 'job.yaml'), writeJob(doc.value));
  writeFileSync(join(folder, 'shop.yaml'), writeShop(doc.value.shop!));

  const options = { kind: 'quote', date: '2026-03-14', client: 'M. Fennimore' } as const;
  const { report, quantities } = countJob(job.value);
  const here = makeQuote(job.value, report, quantities, options);
  const given = ['--json', '--date', options.date, '--client', options.client];
  const { out } = await run(['quote', join(folder, 'job.yaml'), ...given]);
  expect(JSON.parse(out).quote).toEqual(JSON.parse(JSON.stringify(here)));
  expect(here.price.lines.some(({ price }) => price === 6150)).toBe(true);
  const there = readJob(writeJob(doc.value), { loadShop: () => writeShop(doc.value.shop!) });
  expect(there.faults).toEqual([]);
  expect(there.job!.shop).toEqual(job.value.shop);
}, 90_000);
