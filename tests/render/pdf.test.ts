// PDFs are painted from the same scene as SVGs: they look the same, and say what they are.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { evaluate } from '@fielded/core';
import { documentPages, type Scene, scene, sceneToSvg, sheets } from '@fielded/render';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { FONT_FILE } from '../../packages/cli/src/formats/font-file.ts';
import { writePdf } from '../../packages/cli/src/formats/pdf.ts';
import { runProgram, scratchFolder } from '../support/programs.ts';
import { JOBS } from './jobs-to-draw.ts';
import { inkByRegion, onWhite, readPgms } from './raster.ts';

const folder = scratchFolder();
const DPI = 200;
const [COLUMNS, ROWS] = [16, 12];
/** Both programs have the same outlines; they smooth edges differently: measured up to 0.011 of a region at 200 dpi, as at 300. */
const SAME_SHAPES = 0.013;

/** Drawings, each on a page of one PDF, as another program paints them. */
async function paint(drawings: readonly Scene[]) {
  const path = join(folder, 'p.pdf');
  writeFileSync(path, await writePdf(drawings));
  return readPgms(runProgram('pdftoppm', ['-gray', '-r', String(DPI), path]));
}

function worst(a: readonly number[], b: readonly number[]): number {
  return Math.max(...a.map((ink, i) => Math.abs(ink - b[i]!)));
}

describe.each(Object.keys(JOBS))('the PDF of %s', (name) => {
  test.each(['joint', 'cuts'] as const)('looks as the SVG of its %s', async (view) => {
    const drawing = scene(evaluate(JOBS[name]!), { view });
    const [pdf, less] = await paint([drawing, { ...drawing, items: drawing.items.slice(0, -1) }]);
    const font = { fontFiles: [FONT_FILE], loadSystemFonts: false, defaultFontFamily: 'IBM Plex Sans' };
    const painted = new Resvg(sceneToSvg(drawing), { fitTo: { mode: 'width', value: pdf!.width }, font }).render();
    const svg = onWhite(painted);
    // Either program rounds half a pixel its own way.
    expect(Math.abs(svg.height - pdf!.height)).toBeLessThanOrEqual(1);
    const ink = inkByRegion(svg, COLUMNS, ROWS);
    expect(worst(inkByRegion(pdf!, COLUMNS, ROWS), ink)).toBeLessThan(SAME_SHAPES);
    // Without its last item it would be found out.
    expect(worst(inkByRegion(less!, COLUMNS, ROWS), ink)).toBeGreaterThan(SAME_SHAPES);
  });
});

describe('a PDF', () => {
  const pages = sheets(evaluate(JOBS['ogee and cove']!), { view: 'sheet', paper: 'a4' });
  /** Written once for all that is asked of it. */
  const written = writePdf(pages);

  test('has its title and author, its language, a page for each drawing', async () => {
    const path = join(folder, 'titled.pdf');
    writeFileSync(
      path,
      await writePdf(pages, { title: 'Boot room: sheets', author: 'Elm Lane Joinery', language: 'de' }),
    );
    const text = readFileSync(path, 'latin1');
    expect(text).toContain('(Boot room: sheets)');
    expect(text).toContain('(Elm Lane Joinery)');
    expect(text).toContain('/Lang (de)');
    expect([...text.matchAll(/\/Type \/Page\b/g)]).toHaveLength(pages.length);
  });

  test('is vector throughout, with a part of the font in it and no other', async () => {
    const text = Buffer.from(await written).toString('latin1');
    expect(text).not.toContain('/Subtype /Image');
    expect([...text.matchAll(/\/FontName \/([A-Z]{6}\+[\w-]+)/g)].map(([, font]) => font!.slice(7))).toEqual([
      'IBMPlexSans',
    ]);
    expect(text).not.toMatch(/Helvetica|Times|Courier/);
  });

  test('is tagged: every page is a figure with its drawing in words', async () => {
    const text = Buffer.from(await written).toString('latin1');
    expect(text).toContain('/Marked true');
    const alts = [...text.matchAll(/\/Alt \(((?:[^()\\]|\\.)*)\)/g)];
    expect(alts).toHaveLength(pages.length);
    expect(alts[0]![1]).toContain('Width of the groove: 6.4 mm');
  });

  test('of a document is read by its words', async () => {
    const block = { kind: 'paragraph', text: 'Two doors as drawn.' } as const;
    const words = documentPages({ title: 'Quote', language: 'en', foot: '', blocks: [block] });
    const text = Buffer.from(await writePdf(words)).toString('latin1');
    expect(text).toContain('/S /P');
    expect(text).not.toContain('/Alt');
  });

  test('says that it is PDF/A-2b, with the colours it is meant in', async () => {
    const text = Buffer.from(await written).toString('latin1');
    expect(text).toContain('/GTS_PDFA1');
    expect(text).toContain('<pdfaid:part>2</pdfaid:part>');
    expect(text).toContain('<pdfaid:conformance>B</pdfaid:conformance>');
    expect(text).not.toMatch(/\/Encrypt|\/JavaScript|\/Launch/);
  });

  test('holds arcs as curves, not as chords', async () => {
    const bytes = Buffer.from(await writePdf([scene(evaluate(JOBS['ogee and cove']!), { view: 'section' })]));
    const text = bytes.toString('latin1');
    const streams = [...text.matchAll(/\/FlateDecode\s*>>\s*stream\r?\n/g)].map(({ index, 0: { length } }) => {
      const end = text.indexOf('endstream', index + length);
      return inflateSync(bytes.subarray(index + length, end)).toString('latin1');
    });
    const content = streams.find((each) => / BT\b|\nBT\b/.test(each))!;
    expect([...content.matchAll(/ c$/gm)].length).toBeGreaterThanOrEqual(6);
  });
});
