// Faults that were found by walking through cutting lists and quotes, each named for what went wrong.
// Loaded here, so that no test waits for it.
import '@fielded/exchange';
import '@fielded/render';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { XMLValidator } from 'fast-xml-parser';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { run } from '../cli/command.ts';
import { runProgram, scratchFolder } from '../support/programs.ts';

const folder = scratchFolder();
const put = (name: string, text: string) => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};

const HEADS = `heads:
  raiser: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, bore: 30, rake: 15, maxSpeed: 7000 }
  small: { cuttingDiameter: 125, bodyDiameter: 72, height: 40, bore: 30, rake: 18, wedge: 42, maxSpeed: 9000 }
machines:
  spindle: { speeds: [3000, 4500, 6000, 7500], seat: [-70, 90], opening: 220, nutDiameter: 48, spindle: 30, spindleLength: 140, fenceGap: 260, reversing: true }
`;
const RATES =
  'rates: { currency: EUR, hour: 52, wood: { Black Cherry: 3900 }, setUp: 0.75, metresPerHour: 60, door: 0.6, finish: 24, knife: 160 }\n';

/** A job of doors 400 × 700 with one wood, as a file beside its shop file. */
function job({ frame = '', doors = '', more = '', shop = `${HEADS}${RATES}`, name = 'job.yaml', head = '' } = {}) {
  put(`shop-${name}`, `fielded: 1\n${shop}`);
  return put(
    name,
    `fielded: 1
title: Pantry
shop: shop-${name}
panel: { thickness: 20, species: black cherry }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2${frame} }
cuts:
  - { name: raise, side: front, profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 }${head} }
  - { name: relief, side: back, run: over, profile: { shape: cove, reach: 14, depth: 4.8, land: 9 } }
${more}doors:
${doors || '  - { name: A, quantity: 3, width: 400, height: 700, stile: 60, rail: 60 }\n'}`,
  );
}

const quoteOf = async (path: string) => {
  const { out, err } = await run(['quote', path, '--json', '--date', '2026-03-14']);
  return { ...JSON.parse(out), err };
};
const lineOf = (quote: { price: { lines: { item: string }[] } }, item: string): Record<string, unknown> | undefined =>
  quote.price.lines.find((line) => line.item === item) as never;

const STICKING =
  ', sticking: { shape: ovolo, reach: 6, depth: 6, head: small }, backEdge: { shape: cove, reach: 5, depth: 4, head: small }';

describe('a quote', () => {
  it("counted no knives and no edges for the frame's own cuts", async () => {
    const path = job({ frame: STICKING, head: ', head: raiser' });
    const { quote } = await quoteOf(path);
    const { knives } = JSON.parse((await run(['check', path, '--json'])).out);
    const listed = knives.filter((k: { knife: null }) => k.knife === null).map((k: { cut: string }) => k.cut);
    expect([...listed].sort()).toEqual(['back edge', 'cope', 'raise', 'sticking']);
    expect(lineOf(quote, 'knives')).toMatchObject({
      quantity: 5,
      figures: { names: 'raise, relief, cope, sticking, back edge' },
    });
    // By hand, each door: panel 298 × 598 all round, two cuts; sticking along stiles of 700 and rails of 302; cope at both ends
    // of two rails of 60; back edge round the opening of 280 × 580.
    const metres = (3 * (2 * 2 * (298 + 598) + 2 * (700 + 302) + 2 * 2 * 60 + 2 * (280 + 580))) / 1000;
    expect(lineOf(quote, 'running')!.quantity).toBeCloseTo(metres / 60, 9);
    expect(quote.price.notCounted).toEqual([{ what: 'groove', missing: null }]);
  });

  it('said nothing of frame cuts that name no head: they stand as not counted, by name', async () => {
    const path = job({ frame: STICKING.replaceAll(', head: small', '') });
    const { quote, err } = await quoteOf(path);
    expect(lineOf(quote, 'frame')).toMatchObject({
      what: 'Knives and set-ups for the frame: sticking, cope, back edge',
      amount: null,
      missing: 'frame.sticking.head',
    });
    expect(err.replaceAll('\n', ' ')).toContain('sticking (name frame.sticking.head)');
    expect((await run(['quote', path])).out).toContain('not counted');
    const csv = join(folder, 'not-counted.csv');
    await run(['quote', path, '-o', csv]);
    expect(readFileSync(csv, 'utf8')).toMatch(/not counted: groove/);
  });

  it('ordered a mitred frame no cope, and counted the mitres nowhere', async () => {
    const { quote } = await quoteOf(job({ frame: `${STICKING}, joint: { kind: mitre }`, head: ', head: raiser' }));
    expect(lineOf(quote, 'knives')!.figures).toEqual({ names: 'raise, relief, sticking, back edge' });
    expect(quote.price.notCounted.map(({ what }: { what: string }) => what)).toEqual(['groove', 'joint']);
  });

  it('rested on rules that the shop file did not give, and did not say so', async () => {
    const { quote } = await quoteOf(job({ shop: `${RATES}rules: { overLength: 30, overWidth: 20 }\n` }));
    expect(quote.assumed).toEqual([
      { what: 'yield', value: 65 },
      { what: 'leastEndGrainWidth', value: 300 },
      // The groove's depth: what goes into a stile where the job names no joint.
      { what: 'coped', value: 11 },
      { what: 'frameWood', value: null },
    ]);
    const file = join(folder, 'assumed.html');
    await run(['quote', job({ shop: RATES }), '-o', file]);
    expect(readFileSync(file, 'utf8')).toContain('65 % of the timber ordered ends in the work');
  });

  it('priced a wood only by the very letters that the table of woods has', async () => {
    const { quote } = await quoteOf(job());
    expect(lineOf(quote, 'wood')!.price).toBe(390000);
    expect(quote.price.notPriced).toEqual(['machines']);
  });

  it('showed quantities from which its amounts could not be worked out again', async () => {
    const file = join(folder, 'shown.html');
    await run(['quote', job(), '--date', '2026-03-14', '-o', file]);
    const rows = [...readFileSync(file, 'utf8').matchAll(/<tr>(.*?)<\/tr>/g)]
      .map(([, row]) => [...row!.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map(([, cell]) => cell!.replaceAll(/[€,]/g, '')))
      .filter((cells) => cells.length === 5 && cells[3] !== '');
    expect(rows.length).toBeGreaterThan(5);
    for (const [what, quantity, , price, amount] of rows)
      expect(Math.round(Number(quantity) * Number(price) * 100 + 1e-7) / 100, what).toBe(Number(amount));
  });

  it('promised that panels move freely, and slide over all tolerances, where the report says otherwise', async () => {
    const wide = '  - { name: A, width: 900, height: 900, stile: 60, rail: 60 }\n';
    const held = await quoteOf(job({ more: 'season: { made: 6, driest: 6, dampest: 14 }\n', doors: wide }));
    expect(held.problems.map(({ code }: { code: string }) => code)).toContain('bottoms-out');
    const said = ({ quote }: typeof held) => quote.promises.map(({ sentence }: { sentence: string }) => sentence);
    expect(said(held)).not.toContain('freeToMove');
    expect(said(await quoteOf(job()))).toContain('freeToMove');
    expect(said(await quoteOf(job({ more: 'spread: { grooveWidth: 0.5 }\n' })))).toContain('fitsNominal');
    expect(said(await quoteOf(job({ more: 'spread: { grooveWidth: 0.05 }\n' })))).toContain('fits');
  });

  it('kept English words and decimals in pictures and in the price for a spreadsheet', async () => {
    const words = put(
      'german.yaml',
      "language: de-DE\n'face.proud.range': '{near:length} bis {far:length} vor'\n'item.doors': 'Türen ({count})'\n",
    );
    const path = job();
    const [html, csv] = [join(folder, 'german.html'), join(folder, 'german.csv')];
    await run(['quote', path, '--words', words, '-o', html]);
    await run(['quote', path, '--words', words, '-o', csv]);
    expect(readFileSync(html, 'utf8')).not.toContain('proud');
    expect(readFileSync(html, 'utf8')).toMatch(/1,\d\u00a0mm bis 1,\d\u00a0mm vor|1,\d mm bis 1,\d mm vor/);
    expect(readFileSync(csv, 'utf8')).toContain('Türen (3)');
  });

  it('laid pages in Arabic out from the left, and let a long word push the table off the page', async () => {
    const file = join(folder, 'arabic.html');
    const words = put('arabic.yaml', 'language: ar\nprice: السعر\n');
    await run(['quote', job(), '--words', words, '-o', file]);
    expect(readFileSync(file, 'utf8')).toMatch(
      /<html lang="ar" dir="rtl">[\s\S]*unicode-bidi:plaintext[\s\S]*overflow-wrap:anywhere/,
    );
    await run(['quote', job(), '-o', file]);
    expect(readFileSync(file, 'utf8')).toContain('<html lang="en-GB">');
  });

  it('drew 12 doors of many without a word', async () => {
    const doors = Array.from({ length: 14 }, (_, i) => `  - { width: ${400 + i}, height: 700, stile: 60, rail: 60 }\n`);
    const file = join(folder, 'many.html');
    await run(['quote', job({ doors: doors.join('') }), '-o', file]);
    expect(readFileSync(file, 'utf8')).toContain('The first 12 of 14 doors are drawn.');
  });

  it('took 730 MB for a word processor where doors are thousands: it says what to do instead', async () => {
    const doors = Array.from(
      { length: 501 },
      (_, i) => `  - { width: ${400 + i}, height: 700, stile: 60, rail: 60 }\n`,
    );
    const { status, err } = await run(['quote', job({ doors: doors.join('') }), '-o', join(folder, 'many.docx')]);
    expect([status, err]).toEqual([2, expect.stringContaining('a quote lists up to 500. Give equal doors a quantity')]);
  });
});

const HOSTILE = '"bell\\u0007 esc\\u001b[31m nul\\u0000 bidi\\u202egnp </w:t><script>x()</script>\\r\\n=1+1"';

describe('hostile names', () => {
  const path = () =>
    job({ name: 'hostile.yaml', doors: `  - { name: ${HOSTILE}, width: 460, height: 760, stile: 60, rail: 60 }\n` });
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  const control = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u202a-\u202e]/;

  it('stopped a word processor’s file, since a picture was named by control characters', async () => {
    const file = join(folder, 'hostile.docx');
    expect((await run(['quote', path(), '--client', 'A\u0007\u202eB', '-o', file])).err).not.toContain(
      'A fault in fielded',
    );
    for (const [name, bytes] of Object.entries(unzipSync(readFileSync(file)))) {
      if (!/\.(xml|rels|svg)$/.test(name)) continue;
      const text = strFromU8(bytes);
      expect(XMLValidator.validate(text), name).toBe(true);
      expect(text, name).not.toMatch(control);
    }
  });

  it('left control and direction signs in pages and lists', async () => {
    const html = join(folder, 'hostile.html');
    await run(['quote', path(), '--client', 'A\u0007\u202eB\\nC', '-o', html]);
    expect(readFileSync(html, 'utf8')).not.toMatch(control);
    expect(readFileSync(html, 'utf8')).not.toContain('<script');
    for (const command of [['quote'], ['cutting-list']]) {
      const { out, err } = await run([...command, path()]);
      expect(out + err).not.toMatch(control);
    }
    const pdf = join(folder, 'hostile.pdf');
    await run(['cutting-list', path(), '-o', pdf]);
    expect(runProgram('pdftotext', [pdf, '-']).toString().replaceAll('\f', '')).not.toMatch(control);
  });
});

describe('a cutting list', () => {
  const narrow = '  - { name: A, width: 150, height: 700, stile: 60, rail: 60 }\n';

  it('showed an error on standard error alone: it stands first on every list and sheet', async () => {
    const path = job({ doors: narrow });
    const { out, status } = await run(['cutting-list', path]);
    expect(status).toBe(1);
    expect(out.indexOf('It cannot be made as it is')).toBeLessThan(out.indexOf('Frames'));
    const csv = join(folder, 'error.csv');
    await run(['cutting-list', path, '-o', csv]);
    expect(readFileSync(csv, 'utf8').split('\r\n')[1]).toMatch(/^error,.*The raises meet/);
    const { problems } = JSON.parse((await run(['cutting-list', path, '--json'])).out);
    expect(problems[0]).toMatchObject({ code: 'raises-meet', severity: 'error' });
    for (const more of [[], ['--doors']]) {
      const pdf = join(folder, `error${more}.pdf`);
      await run(['cutting-list', path, '-o', pdf, ...more]);
      expect(runProgram('pdftotext', ['-l', '1', pdf, '-']).toString()).toContain('The raises meet');
    }
    expect((await run(['quote', path, '--draft'])).out).toMatch(/Draft, not to be sent[\s\S]*Error: The raises meet/);
    const draft = join(folder, 'draft.csv');
    await run(['quote', path, '--draft', '-o', draft]);
    expect(readFileSync(draft, 'utf8').split('\r\n')[1]).toContain('Draft, not to be sent');
  });

  it('took rules for given that a shop file left out, and gaps that a door left out', async () => {
    const doors =
      '  - { name: A, opening: { width: 900, height: 700 }, leaves: 2, stile: 60, rail: 60 }\n  - { name: B, opening: { width: 400, height: 700 }, gap: 3, stile: 60, rail: 60 }\n';
    const { assumed } = JSON.parse(
      (await run(['cutting-list', job({ doors, shop: 'rules: { kerf: 3 }\n' }), '--json'])).out,
    );
    expect(assumed).toContain('65 % of what is ordered ends in rough pieces');
    expect(assumed).toContain('2 mm between doors and carcase');
    expect(assumed).toContain('3 mm between leaves');
    expect(assumed.join()).not.toContain('saw cut');
  });

  it("ordered frames of the panels' wood where the job names another", async () => {
    const { timber } = JSON.parse(
      (await run(['cutting-list', job({ frame: ', species: northern red oak' }), '--json'])).out,
    );
    expect(timber.map(({ wood, thickness }: { wood: string; thickness: number }) => [thickness, wood])).toEqual([
      [22, 'northern red oak'],
      [20, 'black cherry'],
    ]);
  });

  it('said that 0 mm of width was missing', async () => {
    const { out, err } = await run(['cutting-list', job()]);
    expect(out + err).not.toContain(' 0 mm');
    expect(out).toContain('a spare of any width');
  });

  it('took 19 s and 526 MB for the sheets of 3,000 doors: it says what to do instead', async () => {
    const doors = Array.from(
      { length: 360 },
      (_, i) => `  - { width: ${400 + i}, height: 700, stile: 60, rail: 60 }\n`,
    );
    const path = job({ doors: doors.join('') });
    const { status, err } = await run(['cutting-list', path, '-o', join(folder, 'long.pdf')]);
    expect([status, err]).toEqual([
      2,
      expect.stringContaining('sheets hold up to 2000. List fewer jobs or doors at a time, or write a .csv'),
    ]);
    expect((await run(['cutting-list', path, '-o', join(folder, 'long.csv')])).status).toBe(0);
  });

  it('broke figures in inches in the middle, and cut panel sizes short under the doors', async () => {
    const doors =
      '  - { name: A, quantity: 12, width: 800 mm, height: 900 mm, stile: 60 mm, rail: 60 mm, columns: [200 mm, rest, rest], rows: [rest, 300 mm], muntin: 40 mm }\n';
    const path = job({ doors, name: 'inches.yaml' });
    const metric = readFileSync(path, 'utf8').replaceAll(
      /(thickness|width|depth|setback|swellGap|reach|land|shoulder): ([\d.]+)(?! mm|\d)/g,
      '$1: $2 mm',
    );
    writeFileSync(path, metric.replace('shop:', 'units: in\nshop:'));
    const pdf = join(folder, 'inches.pdf');
    expect((await run(['cutting-list', path, '-o', pdf])).err).not.toContain('fielded:');
    const text = runProgram('pdftotext', ['-layout', pdf, '-']).toString();
    expect(text.match(/\(/g)!.length).toBeGreaterThan(40);
    expect(text.replaceAll(/\(-?\d+(\.\d+)?( in)?\)/g, '')).not.toMatch(/\(|…/);
  });

  it('did not say which job equal door names were of', async () => {
    const one = job({ name: 'one.yaml' });
    writeFileSync(join(folder, 'two.yaml'), readFileSync(one, 'utf8').replace('Pantry', 'Larder'));
    expect((await run(['cutting-list', one, join(folder, 'two.yaml')])).out).toContain('Pantry: A × 6; Larder: A × 6');
  });
});
