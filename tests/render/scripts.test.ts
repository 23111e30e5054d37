// Titles in scripts that the shipped font lacks. Fonts: Noto and DejaVu from Debian's packages.
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { evaluate } from '@fielded/core';
import { openLetters, openTypefaces, scene, sceneToSvg, sheets } from '@fielded/render';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { openFonts, sayMissingLetters } from '../../packages/cli/src/formats/fonts.ts';
import { writePdf } from '../../packages/cli/src/formats/pdf.ts';
import { shapeText } from '../../packages/render/src/letters/shape-text.ts';
import type { Typefaces } from '../../packages/render/src/letters/typefaces.ts';
import { breakLines, textWidth } from '../../packages/render/src/text/measure-text.ts';
import { runProgram, scratchFolder } from '../support/programs.ts';
import { job } from './jobs-to-draw.ts';
import { inkByRegion, onWhite } from './raster.ts';

const folder = scratchFolder();
const TITLES = {
  Chinese: '北廊橱柜门',
  Japanese: '北側廊下の戸棚の扉',
  Arabic: 'أبواب خزانة الممر',
  Hebrew: 'דלתות ארון המסדרון',
  Cyrillic: 'Двери шкафа в коридоре',
} as const;

function titled(title: string) {
  return evaluate(job({ title }));
}

describe('a title in', () => {
  test.each(Object.entries(TITLES))('%s can be read from the PDF', async (script, title) => {
    const path = join(folder, `${script}.pdf`);
    const pages = sheets(titled(title), { view: 'joint', paper: 'a3' });
    const fonts = await openFonts(pages);
    expect(fonts.missing).toEqual([]);
    writeFileSync(path, await writePdf(pages, { fonts }));
    const text = runProgram('pdftotext', [path, '-'])
      .toString('utf8')
      .replace(/\p{Cf}/gu, '')
      .normalize('NFKC');
    for (const word of title.split(' ')) expect(text).toContain(word);
  });

  test.each(Object.entries(TITLES))('%s has the same outlines as another program draws', async (_, title) => {
    const drawing = { ...scene(titled(title), { view: 'joint' }) };
    const fonts = await openFonts([drawing]);
    const height = 12;
    const only = {
      ...drawing,
      width: 160,
      height: 30,
      items: [
        { kind: 'text', key: 'a', role: 'text', x: 80, y: 20, text: title, height, anchor: 'middle', upright: false },
      ],
    } as const;
    const paint = (svg: string, fontFiles: string[]) => {
      const font = { fontFiles, loadSystemFonts: false, defaultFontFamily: 'IBM Plex Sans' };
      return onWhite(new Resvg(svg, { font, fitTo: { mode: 'width', value: 640 } }).render());
    };
    const live = paint(sceneToSvg(only), [...fonts.files]);
    // Outlines are drawn without any font.
    const outlined = paint(sceneToSvg(only, { letters: await openLetters(fonts.typefaces) }), []);
    const [a, b] = [inkByRegion(live, 64, 12), inkByRegion(outlined, 64, 12)];
    expect(Math.max(...a)).toBeGreaterThan(0.2);
    const apart = a.reduce((sum, ink, i) => sum + Math.abs(ink - b[i]!), 0) / a.reduce((sum, ink) => sum + ink, 0);
    expect(apart).toBeLessThan(0.12);
    // Turned about, it would be found out.
    const mirrored = a.map((_ink, i) => b[Math.floor(i / 64) * 64 + 63 - (i % 64)]!);
    const wrong =
      a.reduce((sum, ink, i) => sum + Math.abs(ink - mirrored[i]!), 0) / a.reduce((sum, ink) => sum + ink, 0);
    expect(wrong).toBeGreaterThan(0.3);
  });
});

test('words that run from right to left are in that order, figures among them are not', async () => {
  const drawing = scene(titled('אבג 12 דהו'), { view: 'joint' });
  const { typefaces } = await openFonts([drawing]);
  const seen = shapeText('אבג 12 דהו', typefaces as Typefaces).runs.map(({ text }) => text.trim());
  expect(seen.join('|').replace(/\|+/g, '|')).toMatch(/^דהו\|.*12.*\|אבג$/);
});

// Noto Sans CJK has one glyph for a radical (U+2F00) and for the sign that is written in the same way (U+4E00).
test('a PDF says its signs, not those written before with the same glyph of the same font', async () => {
  const drawn = (title: string) => [scene(titled(title), { view: 'joint' })];
  const fonts = await openFonts(drawn('\u4e00\u2f00'));
  expect(fonts.missing).toEqual([]);
  await writePdf(drawn('\u4e00'), { fonts });
  const after = Buffer.from(await writePdf(drawn('\u2f00'), { fonts }));
  const typefaces = await openTypefaces(fonts.files.map((file) => readFileSync(file)));
  expect(after.equals(await writePdf(drawn('\u2f00'), { fonts: { ...fonts, typefaces } }))).toBe(true);
});

test('letters that no font has are named', async () => {
  const fonts = await openFonts([scene(titled('Doors \u{10ffff}'), { view: 'joint' })]);
  expect(fonts.missing).toEqual(['\u{10ffff}']);
  expect(sayMissingLetters(fonts, { units: 'mm' })).toContain('--font FILE');
});

test('a font given is taken before those of the system', async () => {
  const given = execFileSync('fc-match', ['-f', '%{file}', 'DejaVu Sans']).toString();
  const fonts = await openFonts([scene(titled(TITLES.Arabic), { view: 'joint' })], given);
  expect(fonts.files).toHaveLength(2);
  expect(fonts.files[1]).toBe(given);
  await expect(openFonts([], join(folder, 'Chinese.pdf'))).rejects.toThrow('not a TrueType or OpenType font');
  expect(readFileSync(given).length).toBeGreaterThan(1000);
});

describe('lines break', () => {
  test('between any two signs of a script without spaces', () => {
    const lines = breakLines(TITLES.Japanese, 3.5, 20);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join('')).toBe(TITLES.Japanese);
    for (const line of lines) expect(textWidth(line, 3.5)).toBeLessThanOrEqual(20);
  });

  test('between the words of a script that has no spaces between them', () => {
    // Door, cupboard, shoe, wood, for, kitchen, and, bedroom.
    const words = ['ประตู', 'ตู้', 'รองเท้า', 'ไม้', 'สำหรับ', 'ห้องครัว', 'และ', 'ห้องนอน'];
    const between = new Set(words.map((_, i) => words.slice(0, i + 1).join('').length));
    // A room is a word of its own.
    for (const room of ['ห้องครัว', 'ห้องนอน']) between.add(words.join('').indexOf(room) + 'ห้อง'.length);
    for (const room of [34, 46, 58]) {
      const lines = breakLines(words.join(''), 3.5, room);
      expect(lines.join('')).toBe(words.join(''));
      expect(lines.length).toBeGreaterThan(1);
      let end = 0;
      for (const line of lines) {
        end += line.length;
        expect(between).toContain(end);
        expect(textWidth(line, 3.5)).toBeLessThanOrEqual(room);
      }
    }
  });

  test('within a word that is wider than the room', () => {
    const word = 'Donaudampfschifffahrtsgesellschaft';
    const lines = breakLines(word, 3.5, 20);
    expect(lines.join('')).toBe(word);
    for (const line of lines) expect(textWidth(line, 3.5)).toBeLessThanOrEqual(20);
  });
});
