import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { evaluate } from '@fielded/core';
import type { Item, Scene } from '@fielded/render';
import { scene, sceneToSvg } from '@fielded/render';
import { Resvg } from '@resvg/resvg-js';
import { beforeAll, describe, expect, test } from 'vitest';
import { FONT_FILE } from '../../packages/cli/src/formats/font-file.ts';
import { runChromium, runProgram, scratchFolder } from '../support/programs.ts';
import { shippedLetters } from '../support/shipped-letters.ts';
import { describeInLongRun, LONG_RUN } from '../support/trials.ts';
import { JOBS } from './jobs-to-draw.ts';
import type { Raster } from './raster.ts';
import { inkByRegion, readPng } from './raster.ts';

const folder = scratchFolder();
const WIDTH = 1200;
const [COLUMNS, ROWS] = [12, 8];

type Renderer = (svg: string, height: number) => Buffer;

const RENDERERS: Readonly<Record<string, Renderer>> = {
  resvg: (svg) => {
    const font = { fontFiles: [FONT_FILE], loadSystemFonts: false, defaultFontFamily: 'IBM Plex Sans' };
    return Buffer.from(new Resvg(svg, { fitTo: { mode: 'width', value: WIDTH }, font }).render().asPng());
  },
  'rsvg-convert': (svg) => runProgram('rsvg-convert', ['-w', String(WIDTH), put('r.svg', svg)]),
  Chromium: (svg, height) => {
    const shown = svg.replace(/width="[\d.]+mm" height="[\d.]+mm"/, `width="${WIDTH}" height="${height}"`);
    const page = put('c.html', `<body style="margin:0">${shown}`);
    const shot = join(folder, 'c.png');
    runChromium(folder, [`--window-size=${WIDTH},${height + 200}`, `--screenshot=${shot}`, page]);
    return cropTop(readFileSync(shot), height);
  },
  LibreOffice: (svg) => {
    officePictures ??= paintInOffice((LONG_RUN ? DRAWINGS : DAILY).flatMap(({ outlined, live }) => [outlined, live]));
    return officePictures.get(svg)!;
  },
};

let officePictures: Map<string, Buffer> | undefined;

/** Drawings as LibreOffice paints them, in one start of it. */
function paintInOffice(drawings: readonly string[]): Map<string, Buffer> {
  // It paints at 96 dpi whatever is asked for: twice as large, it has the pixels that the others have.
  const files = drawings.map((svg, i) => {
    const twice = svg.replace(/(width|height)="([\d.]+)mm"/g, (_, side, mm) => `${side}="${2 * Number(mm)}mm"`);
    return put(`l${i}.svg`, twice);
  });
  const settings = `-env:UserInstallation=file://${join(folder, 'office')}`;
  const filter = `png:draw_png_Export:${JSON.stringify({ PixelWidth: { type: 'long', value: WIDTH } })}`;
  runProgram('soffice', [settings, '--headless', '--convert-to', filter, '--outdir', folder, ...files]);
  return new Map(drawings.map((svg, i) => [svg, readFileSync(join(folder, `l${i}.png`))]));
}

/** What is compared: with letters as outlines, and with live text. */
const DRAWINGS = ['ogee and cove', 'bevel that wedges'].map((name) => {
  const drawing = scene(evaluate(JOBS[name]!), { view: 'joint' });
  return { name, drawing, outlined: sceneToSvg(drawing, { letters: shippedLetters }), live: sceneToSvg(drawing) };
});

const DAILY = DRAWINGS.slice(0, 1);

function put(name: string, text: string): string {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
}

/** The upper `height` rows of a screenshot that is taller. */
function cropTop(png: Buffer, height: number): Buffer {
  const data = `data:image/png;base64,${png.toString('base64')}`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}"><image href="${data}" width="${WIDTH}" height="${height + 200}" preserveAspectRatio="none"/></svg>`;
  return Buffer.from(new Resvg(svg, { font: { loadSystemFonts: false } }).render().asPng());
}

function rasterOf(renderer: string, drawing: Scene, svg: string): Raster {
  const height = Math.round((WIDTH * drawing.height) / drawing.width);
  return readPng(RENDERERS[renderer]!(svg, height), WIDTH, height);
}

/** The greatest difference in the share of ink between two pictures, over all regions. */
function worstRegion(a: Raster, b: Raster): number {
  const other = inkByRegion(b, COLUMNS, ROWS);
  return Math.max(...inkByRegion(a, COLUMNS, ROWS).map((ink, i) => Math.abs(ink - other[i]!)));
}

/** With letters as outlines, programs differ by how they smooth edges only: measured 0.002 to 0.004 of a region. */
const SAME_SHAPES = 0.008;
/** With live text they put in their own fonts: measured 0.02 to 0.04, where a text missing altogether is more. */
const SAME_BUT_FONTS = 0.05;

const looksTheSame = ({ drawing, outlined, live }: (typeof DRAWINGS)[number]) => {
  let reference: Raster;
  beforeAll(() => {
    reference = rasterOf('resvg', drawing, outlined);
  });

  test.each(['rsvg-convert', 'Chromium', 'LibreOffice'])('looks the same in %s', (renderer) => {
    expect(worstRegion(rasterOf(renderer, drawing, outlined), reference)).toBeLessThan(SAME_SHAPES);
    expect(worstRegion(rasterOf(renderer, drawing, live), reference)).toBeLessThan(SAME_BUT_FONTS);
  });

  test.each(['hatch', 'outline', 'figure'])('a drawing without its %s would be found out', (missing) => {
    const without = sceneToSvg({ ...drawing, items: leaveOut(drawing.items, missing) }, { letters: shippedLetters });
    expect(worstRegion(rasterOf('resvg', drawing, without), reference)).toBeGreaterThan(SAME_SHAPES);
  });
};

describe.each(DAILY)('$name', looksTheSame);
describeInLongRun.each(DRAWINGS.slice(1))('$name', looksTheSame);

function leaveOut(items: readonly Item[], key: string): Item[] {
  return items
    .filter((item) => item.key !== key)
    .map((item) => (item.kind === 'group' ? { ...item, items: leaveOut(item.items, key) } : item));
}
