import { Resvg } from '@resvg/resvg-js';

/** A picture as darkness: 0 for white to 255 for black, row by row. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly dark: Uint8Array;
}

/** A binary PGM (netpbm `P5`), as pdftoppm writes it. */
export function readPgm(file: Buffer): Raster {
  return readPgms(file)[0]!;
}

/** Several of them, one after the other. */
export function readPgms(file: Buffer): Raster[] {
  const pictures: Raster[] = [];
  for (let at = 0; at < file.length; ) {
    const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(file.toString('latin1', at, at + 60))!;
    const from = at + head.length;
    at = from + Number(width) * Number(height);
    const dark = new Uint8Array(file.subarray(from, at));
    for (let i = 0; i < dark.length; i += 1) dark[i] = 255 - dark[i]!;
    pictures.push({ width: Number(width), height: Number(height), dark });
  }
  return pictures;
}

/** A PNG on white, pixel by pixel. Decoded by drawing it. */
export function readPng(file: Buffer): Raster {
  // Its header says how large it is (PNG specification, third edition, 11.2.1).
  const size = `width="${file.readUInt32BE(16)}" height="${file.readUInt32BE(20)}"`;
  const data = `data:image/png;base64,${file.toString('base64')}`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" ${size}><image href="${data}" ${size} image-rendering="optimizeSpeed"/></svg>`;
  // It has no letters: to look for the system's fonts takes longer than all the rest.
  return onWhite(new Resvg(svg, { background: '#fff', font: { loadSystemFonts: false } }).render());
}

/** Pixels of red, green, blue and cover, as they look on white; colours already count their cover. */
export function onWhite(image: { readonly width: number; readonly height: number; readonly pixels: Buffer }): Raster {
  const { width, height, pixels } = image;
  const dark = new Uint8Array(width * height);
  for (let i = 0, k = 0; i < dark.length; i += 1, k += 4)
    dark[i] = pixels[k + 3]! - (pixels[k]! + pixels[k + 1]! + pixels[k + 2]!) / 3;
  return { width, height, dark };
}

/** The middles, in pixels, of the dark stretches along row `y` from x0 to x1. */
export function darkRuns({ width, dark }: Raster, y: number, x0: number, x1: number): number[] {
  const middles: number[] = [];
  let start = -1;
  for (let x = x0; x <= x1; x += 1) {
    const isDark = x < x1 && dark[y * width + x]! > 100;
    if (isDark && start < 0) start = x;
    if (!isDark && start >= 0) {
      middles.push((start + x - 1) / 2);
      start = -1;
    }
  }
  return middles;
}

/** The share of ink, 0 to 1, in each of columns × rows equal regions. */
export function inkByRegion({ width, height, dark }: Raster, columns: number, rows: number): number[] {
  const sums = new Array<number>(columns * rows).fill(0);
  const counts = new Array<number>(columns * rows).fill(0);
  const columnOf = Uint16Array.from({ length: width }, (_, x) => Math.floor((x * columns) / width));
  for (let y = 0; y < height; y += 1) {
    const row = Math.floor((y * rows) / height) * columns;
    for (let x = 0; x < width; x += 1) {
      const region = row + columnOf[x]!;
      sums[region]! += dark[y * width + x]!;
      counts[region]! += 255;
    }
  }
  return sums.map((sum, i) => sum / counts[i]!);
}
