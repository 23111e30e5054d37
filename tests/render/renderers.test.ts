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
import { inkByRegion, onWhite, readPng } from './raster.ts';

const folder = scratchFolder();
const WIDTH = 1200;
const [COLUMNS, ROWS] = [12, 8];

const RENDERERS: Readonly<Record<string, (svg: string) => Raster>> = {
  resvg: (svg) => {
    const font = { fontFiles: [FONT_FILE], loadSystemFonts: false, defaultFontFamily: 'IBM Plex Sans' };
    return onWhite(new Resvg(svg, { fitTo: { mode: 'width', value: WIDTH }, font }).render());
  },
  'rsvg-convert': (svg) => readPng(runProgram('rsvg-convert', ['-w', String(WIDTH), put('r.svg', svg)])),
  Chromium: (svg) => {
    chromiumPictures ??= paintInChromium();
    return chromiumPictures.get(svg)!;
  },
  LibreOffice: (svg) => {
    officePictures ??= paintInOffice(compared().flatMap(({ outlined, live }) => [outlined, live]));
    return readPng(officePictures.get(svg)!);
  },
};

const heightOf = ({ width, height }: Scene) => Math.round((WIDTH * height) / width);
const compared = () => (LONG_RUN ? DRAWINGS : DAILY);

let chromiumPictures: Map<string, Raster> | undefined;

/** Drawings as Chromium paints them, one under the other on a page, in one start of it. */
function paintInChromium(): Map<string, Raster> {
  const parts = compared().flatMap(({ drawing, outlined, live }) =>
    [outlined, live].map((svg) => ({ svg, height: heightOf(drawing) })),
  );
  const shown = parts.map(({ svg, height }) =>
    svg.replace(/width="[\d.]+mm" height="[\d.]+mm"/, `style="display:block" width="${WIDTH}" height="${height}"`),
  );
  const page = put('c.html', `<body style="margin:0">${shown.join('')}`);
  const shot = join(folder, 'c.png');
  const whole = parts.reduce((sum, { height }) => sum + height, 0) + 200;
  runChromium(folder, [`--window-size=${WIDTH},${whole}`, `--screenshot=${shot}`, page]);
  const { dark } = readPng(readFileSync(shot));
  let top = 0;
  return new Map(
    parts.map(({ svg, height }) => {
      const rows = dark.subarray(top * WIDTH, (top + height) * WIDTH);
      top += height;
      return [svg, { width: WIDTH, height, dark: rows }];
    }),
  );
}

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
    reference = RENDERERS.resvg!(outlined);
  });

  test.each(['rsvg-convert', 'Chromium', 'LibreOffice'])('looks the same in %s', (renderer) => {
    expect(worstRegion(RENDERERS[renderer]!(outlined), reference)).toBeLessThan(SAME_SHAPES);
    expect(worstRegion(RENDERERS[renderer]!(live), reference)).toBeLessThan(SAME_BUT_FONTS);
  });

  test.each(['hatch', 'outline', 'figure'])('a drawing without its %s would be found out', (missing) => {
    const without = sceneToSvg({ ...drawing, items: leaveOut(drawing.items, missing) }, { letters: shippedLetters });
    expect(worstRegion(RENDERERS.resvg!(without), reference)).toBeGreaterThan(SAME_SHAPES);
  });
};

describe.each(DAILY)('$name', looksTheSame);
describeInLongRun.each(DRAWINGS.slice(1))('$name', looksTheSame);

function leaveOut(items: readonly Item[], key: string): Item[] {
  return items
    .filter((item) => item.key !== key)
    .map((item) => (item.kind === 'group' ? { ...item, items: leaveOut(item.items, key) } : item));
}
