// Loaded here, so that no test waits for it.
import '@fielded/render';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CuttingList } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { makeFolder, put, run } from './command.ts';

const KITCHEN = 'examples/kitchen/job.yaml';
const folder = makeFolder();

/** The example's doors as a maker would work them out with a pocket calculator: leaf, opening, panel, number. */
const DOORS = [
  { leaf: [(1000 - 4 - 3) / 2, 716], stile: 60, rails: [60, 60], made: 6 },
  { leaf: [(1000 - 4 - 3) / 2, 896], stile: 60, rails: [60, 75], made: 4 },
  { leaf: [496, 716], stile: 60, rails: [60, 60], made: 1 },
  { leaf: [296, 716], stile: 60, rails: [60, 60], made: 2 },
  { leaf: [246, 716], stile: 60, rails: [60, 60], made: 1 },
  { leaf: [496, 176], stile: 60, rails: [45, 45], made: 3, across: true },
  { leaf: [996, 236], stile: 60, rails: [45, 45], made: 3, across: true },
] as const;

/** The example without its shop, and so without its heads. */
const ALONE = readFileSync(KITCHEN, 'utf8')
  .replace('shop: shop.yaml\n', '')
  .replace('    head: raiser\n', '')
  .replace('knife: cove-14', 'profile: { shape: cove, reach: 14, depth: 4.8, land: 9 }');

/** What was listed: each once for all tests. */
const lists = new Map<string, Promise<CuttingList>>();

function listed(...paths: string[]): Promise<CuttingList> {
  const key = paths.join('\n');
  const list = lists.get(key) ?? askList(paths);
  lists.set(key, list);
  return list;
}

async function askList(paths: readonly string[]): Promise<CuttingList> {
  const { status, out } = await run(['cutting-list', ...paths, '--json']);
  expect(status).toBe(0);
  return JSON.parse(out) as CuttingList;
}

describe('fielded cutting-list', () => {
  it('lists the parts and panels of the kitchen that a calculator gives', async () => {
    const list = await listed(KITCHEN);
    expect(list.doors).toBe(20);
    let frames = 0;
    const panels: [number, number, number][] = [];
    for (const door of DOORS) {
      const [width, height] = door.leaf;
      const between = width - 2 * door.stile;
      const rail = between + 22;
      frames += door.made * (2 * height * door.stile + rail * (door.rails[0] + door.rails[1]));
      const opening = height - door.rails[0] - door.rails[1];
      // 11 deep, 2 left across the grain and 1 along it.
      const [sides, ends] = 'across' in door ? [20, 18] : [18, 20];
      panels.push([between + sides, opening + ends, door.made]);
    }
    const area = list.parts.reduce((sum, { length, width, quantity }) => sum + length * width * quantity, 0);
    expect(area).toBeCloseTo(frames, 6);
    const sorted = (all: readonly (readonly number[])[]) =>
      all.map((each) => each.map((n) => n.toFixed(6)).join(' ')).sort();
    expect(sorted(list.panels.map(({ width, height, quantity }) => [width, height, quantity]))).toEqual(sorted(panels));
  });

  it('joins its nine narrow panels into three blanks and orders the timber that follows', async () => {
    const { blanks, leftOver, timber } = await listed(KITCHEN);
    expect(leftOver).toEqual([]);
    const sizes = blanks.map(({ length, width }) => `${length} × ${width.toFixed(1)}`).sort();
    // 194 + 194 + 144, 3 × 104 and 3 × 164, each with two saw cuts of 3.2 and 1 cleaned off either side.
    expect(sizes).toEqual(['396 × 322.4', '616 × 542.4', '896 × 502.4']);
    // Rough panel wood by hand: 25 longer, 20 wider, 20 thick.
    const pieces = [
      ...blanks.map(({ length, width }) => [length, width, 1] as const),
      [616, 394.5, 6] as const,
      [781, 394.5, 4] as const,
      [616, 394, 1] as const,
    ];
    const rough = pieces.reduce((sum, [l, w, n]) => sum + ((l + 25) * (w + 20) * 20 * n) / 1e9, 0);
    const wood = timber.find(({ thickness }) => thickness === 20)!;
    expect(wood.rough).toBeCloseTo(rough, 9);
    expect(wood.order).toBeCloseTo(rough / 0.6, 9);
    expect(wood.boardFeet.order).toBeCloseTo(rough / 0.6 / 0.002359737216, 6);
  });

  it('adds up several jobs', async () => {
    const [one, two] = [await listed(KITCHEN), await listed(KITCHEN, KITCHEN)];
    expect(two.doors).toBe(2 * one.doors);
    expect(two.parts.map(({ quantity }) => quantity)).toEqual(one.parts.map(({ quantity }) => 2 * quantity));
    expect(two.timber[0]!.order).toBeCloseTo(2 * one.timber[0]!.order, 9);
  });

  it('writes a spreadsheet, sheets and labels', async () => {
    const csv = join(folder, 'kitchen.csv');
    expect((await run(['cutting-list', KITCHEN, '-o', csv])).status).toBe(0);
    const rows = readFileSync(csv, 'utf8').trim().split('\r\n');
    expect(rows[0]).toBe('piece,off,length,width,thickness,grain,wood,for,note (mm)');
    expect(rows).toContain('panel,2,616,194,20,up,,narrow x 2,1.041 kg each');
    // It is ours, and may be written again.
    expect((await run(['cutting-list', KITCHEN, '-o', csv])).status).toBe(0);
    for (const more of [[], ['--doors'], ['--labels', '65'], ['--labels', '70x36', '--outlines']]) {
      const pdf = join(folder, `sheets${more.join('')}.pdf`);
      expect((await run(['cutting-list', KITCHEN, '-o', pdf, ...more])).status).toBe(0);
      expect(readFileSync(pdf, 'latin1').slice(0, 5)).toBe('%PDF-');
    }
  });

  it('keeps a name that a spreadsheet would run as text', async () => {
    const text = ALONE.replace('name: sink', "name: '=1+1'");
    const job = put(folder, 'formula.yaml', text);
    const csv = join(folder, 'formula.csv');
    expect((await run(['cutting-list', job, '-o', csv])).status).toBe(0);
    expect(readFileSync(csv, 'utf8')).toContain(",'=1+1 x 1,");
  });

  it('refuses more labels than anyone prints', async () => {
    const job = put(folder, 'many.yaml', ALONE.replace('name: sink,', 'name: sink, quantity: 10000,'));
    const { status, err } = await run(['cutting-list', job, '--labels', '65', '-o', join(folder, 'many.pdf')]);
    expect(status).toBe(2);
    // Two stiles, two rails and a panel of each of 10,000, and what the other 19 have.
    expect(err).toContain(`there are ${5 * 10_000 + 5 * 19} labels, and up to 13000 are drawn`);
  });

  it('marks as assumed what no shop says', async () => {
    const job = put(folder, 'alone.yaml', ALONE);
    const { out } = await run(['cutting-list', job]);
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/Assumed, since neither job nor shop says: .*25 mm over in length/);
    expect((await run(['cutting-list', KITCHEN])).out).not.toContain('Assumed');
  });

  it.each([
    [['examples/ogee-cove/job.yaml'], 1, 'There are no doors to list. Add some under doors.'],
    [[KITCHEN, '--labels', '65'], 2, '--labels are written to a PDF: name it with -o labels.pdf.'],
    [[KITCHEN, '--labels', 'big', '-o', join(folder, 'x.pdf')], 2, '--labels big: write 65, or width x height'],
    [[KITCHEN, '--labels', '400x36', '-o', join(folder, 'x.pdf')], 2, 'not one label of this size fits'],
    [[KITCHEN, '--json', '-o', join(folder, 'x.csv')], 2, '--json goes to standard output by itself'],
    [[KITCHEN, '--doors'], 2, '--doors are written to a PDF'],
    [[KITCHEN, '--outlines'], 2, '--outlines is for labels'],
  ])('says what is wrong with %j', async (argv, status, words) => {
    const done = await run(['cutting-list', ...argv]);
    expect(done.status).toBe(status);
    expect(done.err).toContain(words);
  });
});

it('counts stiles of two woods apart, and names the wood of each', async () => {
  const job = (wood: string) => `fielded: 1
title: In ${wood}
panel: { thickness: 20, species: ${wood} }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts: [{ side: front, profile: { shape: rebate, reach: 38, depth: 13.8 } }]
doors: [{ name: A, width: 450, height: 720, stile: 60, rail: 60 }]
`;
  const files = ['black cherry', 'white oak', 'white oak'].map((wood, i) => put(folder, `wood-${i}.yaml`, job(wood)));
  const csv = join(folder, 'two-woods.csv');
  await run(['cutting-list', ...files, '-o', csv]);
  const stiles = readFileSync(csv, 'utf8')
    .split('\r\n')
    .filter((row) => row.startsWith('stile,'))
    .map((row) => row.split(',').slice(0, 7));
  expect(stiles).toEqual([
    ['stile', '2', '720', '60', '22', 'along', 'black cherry'],
    ['stile', '4', '720', '60', '22', 'along', 'white oak'],
  ]);
});
