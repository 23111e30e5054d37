// Loaded here, so that no test waits for it.
import '@fielded/exchange';
import '@fielded/render';
import { existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram, scratchFolder } from '../support/programs.ts';
import { run } from './command.ts';

const folder = scratchFolder();
const KITCHEN = 'examples/kitchen/job.yaml';
const put = (name: string, text: string | Uint8Array) => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};

const JOB = `fielded: 1
title: Pantry
shop: shop.yaml
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts:
  - { name: raise, side: front, profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 } }
  - { name: relief, side: back, run: over, profile: { shape: cove, reach: 14, depth: 4.8, land: 9 } }
doors: [{ width: 400, height: 700, stile: 60, rail: 60 }]
`;

describe('fielded quote', () => {
  it('prices the kitchen from its own report: every quantity of every line', async () => {
    const { status, out } = await run(['quote', KITCHEN, '--json', '--date', '2026-03-14']);
    expect(status).toBe(0);
    const { quote } = JSON.parse(out);
    const checked = await run(['check', KITCHEN, '--json']);
    const report = JSON.parse(checked.out);
    const line = (item: string) => quote.price.lines.filter((l: { item: string }) => l.item === item);
    expect(line('wood').map((l: { quantity: number }) => l.quantity)).toEqual(
      report.timber.map(({ order }: { order: number }) => Number(order.toPrecision(12))),
    );
    const doors = report.doors.reduce(
      (sum: number, d: { quantity: number; leaves: number }) => sum + d.quantity * d.leaves,
      0,
    );
    expect(doors).toBe(20);
    expect(line('doors')[0].quantity).toBeCloseTo(doors * 0.6, 9);
    const planned = JSON.parse((await run(['plan', KITCHEN, '--json'])).out);
    expect(line('set-ups')[0].quantity).toBeCloseTo(planned.plan.setUpCount * 0.75, 9);
    const sum = quote.price.lines.reduce((total: number, l: { amount: number }) => total + l.amount, 0);
    expect(quote.price.net).toBe(sum);
    expect(quote.price.total).toBe(sum + quote.price.margin + quote.price.tax.amount);
  });

  it('writes the same figures in every format', async () => {
    const { out } = await run(['quote', KITCHEN, '--json', '--date', '2026-03-14']);
    const total = (JSON.parse(out).quote.price.total / 100).toLocaleString('en-GB', { minimumFractionDigits: 2 });
    const given = ['quote', KITCHEN, '--date', '2026-03-14', '--number', 'Q-7', '--client', 'A <b>Client</b>'];
    for (const ending of ['pdf', 'docx', 'html', 'csv']) {
      const file = join(folder, `quote.${ending}`);
      expect((await run([...given, '-o', file])).status).toBe(0);
      expect(existsSync(file)).toBe(true);
      // Written again over its own work, without --force.
      expect((await run([...given, '-o', file])).status, ending).toBe(0);
    }
    expect(readFileSync(join(folder, 'quote.csv'), 'utf8').replaceAll(',', '')).toContain(total.replace(',', ''));
    const html = readFileSync(join(folder, 'quote.html'), 'utf8');
    expect(html).toContain(`€${total}`);
    expect(html).not.toMatch(/<script|<b>Client/);
    expect(runProgram('pdftotext', ['-layout', join(folder, 'quote.pdf'), '-']).toString()).toContain(total);
  });

  it('says what has no rate, and what the job does not give', async () => {
    put('shop.yaml', 'fielded: 1\nrates: { currency: EUR, hour: 50 }\n');
    const { status, out, err } = await run(['quote', put('job.yaml', JOB), '--date', '2026-03-14']);
    expect(status).toBe(0);
    expect(out).toContain('not priced');
    expect(err.replaceAll('\n', ' ')).toContain(
      'Not priced, since nobody gives panel.species, machines, rates.metresPerHour, rates.door, rates.finish, rates.knife.',
    );
    expect(err).toContain('season, spread');
  });

  it('is not written for a job that has errors, unless as a draft that says so', async () => {
    put('shop.yaml', 'fielded: 1\nrates: { currency: EUR }\n');
    const job = put('job.yaml', JOB.replace('depth: 4.8', 'depth: 1'));
    const file = join(folder, 'draft.html');
    const refused = await run(['quote', job, '-o', file]);
    expect(refused.status).toBe(1);
    expect(refused.err).toContain('No quote is written for a job that has errors');
    expect(existsSync(file)).toBe(false);
    expect((await run(['quote', job, '--draft', '-o', file])).status).toBe(1);
    expect(readFileSync(file, 'utf8')).toMatch(/Draft, not to be sent[\s\S]*Error: The tongue/);
  });

  it('takes its fixed words from a file, and refuses keys and figures that are not known', async () => {
    put('shop.yaml', 'fielded: 1\nrates: { currency: EUR }\n');
    const job = put('job.yaml', JOB);
    const file = join(folder, 'angebot.html');
    const words = put('words.yaml', 'language: de-DE\nquote: Angebot\ntotal: Gesamtpreis\n');
    expect((await run(['quote', job, '--date', '2026-03-14', '--words', words, '-o', file])).status).toBe(0);
    expect(readFileSync(file, 'utf8')).toMatch(/Angebot[\s\S]*14\. März 2026[\s\S]*Gesamtpreis/);
    const wrong = async (text: string) => (await run(['quote', job, '--words', put('words.yaml', text)])).err;
    expect(await wrong('qoute: x\n')).toContain('qoute is no key. Did you mean quote?');
    expect(await wrong('wood: "{price}"\n')).toContain('names {price}, which this sentence does not have');
    expect(await wrong('language: nowhere land\n')).toContain('is no language tag');
    expect((await run(['quote', '--print-words'])).out).toContain('quote: "Quotation"');
  });

  it('needs rates in a currency, and a date that is one', async () => {
    const none = await run(['quote', 'examples/ogee-cove/job.yaml']);
    expect([none.status, none.err.includes('needs a shop file with rates')]).toEqual([2, true]);
    const day = await run(['quote', KITCHEN, '--date', '2026-02-30']);
    expect([day.status, day.err.includes('2026-02-30 is not a date')]).toEqual([2, true]);
  });

  it('draws a logo anew, and says what is wrong with one that it cannot', async () => {
    put('job.yaml', JOB);
    const file = join(folder, 'logo.html');
    const withLogo = async (name: string) => {
      put('shop.yaml', `fielded: 1\nname: Alder Lane\nlogo: ${name}\nrates: { currency: EUR }\n`);
      return run(['quote', join(folder, 'job.yaml'), '-o', file, '--force']);
    };
    put(
      'mark.svg',
      '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20"><script>alert(1)</script><rect width="40" height="20"/></svg>',
    );
    expect((await withLogo('mark.svg')).status).toBe(0);
    expect(readFileSync(file, 'utf8')).toMatch(/<img alt="Alder Lane" src="data:image\/png;base64,/);
    expect(readFileSync(file, 'utf8')).not.toContain('alert(1)');
    put('broken.png', 'no picture');
    const svg = (inside: string, size = 'width="40" height="20"') =>
      `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${inside}</svg>`;
    put('reads.svg', svg('<image width="40" height="20" href="/etc/hostname.png"/>'));
    put('blurs.svg', svg('<rect style="filter: blur(900px)" width="40" height="20"/>'));
    put('copies.svg', svg('<g id="a"/><use href="#a"/><use href="#a"/>'));
    put('tall.svg', svg('<rect width="1" height="100000"/>', 'width="1" height="100000"'));
    symlinkSync('/etc/hostname', join(folder, 'link.svg'));
    mkdirSync(join(folder, 'folder.svg'));
    const more = 'holds pictures, copies, filters or entities';
    for (const [name, said] of [
      ['reads.svg', more],
      ['blurs.svg', more],
      ['copies.svg', more],
      ['tall.svg', 'over 10 times as high as wide'],
      ['link.svg', "a link out of the shop file's folder"],
      ['folder.svg', 'no plain file'],
      ['missing.png', 'missing'],
      ['broken.png', 'cannot be read as a picture'],
      ['../outside.png', "outside the shop file's folder"],
    ] as const) {
      const { status, err } = await withLogo(name);
      expect(status, name).toBe(2);
      expect(err, name).toContain(said === 'missing' ? 'logo: missing.png' : said);
    }
  });
});
