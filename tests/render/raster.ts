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
    pictures.push({ width: Number(width), height: Number(height), dark: turned(file.subarray(from, at)) });
  }
  return pictures;
}

/** Light as darkness, four pixels at a time. */
function turned(light: Uint8Array): Uint8Array {
  const words = new Uint32Array(Math.ceil(light.length / 4));
  const dark = new Uint8Array(words.buffer, 0, light.length);
  dark.set(light);
  for (let i = 0; i < words.length; i += 1) words[i] = ~words[i]!;
  return dark;
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
  const whole = new Uint32Array(pixels.buffer, pixels.byteOffset, dark.length);
  for (let i = 0, k = 0; i < dark.length; i += 1, k += 4) {
    // Most of a drawing is paper.
    if (whole[i] === 0xffffffff) continue;
    dark[i] = pixels[k + 3]! - (pixels[k]! + pixels[k + 1]! + pixels[k + 2]!) / 3;
  }
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
  // A pixel belongs to the region that its left upper corner lies in.
  const lefts = Array.from({ length: columns + 1 }, (_, column) => Math.ceil((column * width) / columns));
  const tops = Array.from({ length: rows + 1 }, (_, row) => Math.ceil((row * height) / rows));
  const shares: number[] = [];
  for (let row = 0; row < rows; row += 1) {
    const [top, bottom] = [tops[row]!, tops[row + 1]!];
    for (let column = 0; column < columns; column += 1) {
      const [left, right] = [lefts[column]!, lefts[column + 1]!];
      let sum = 0;
      for (let y = top; y < bottom; y += 1)
        for (let i = y * width + left; i < y * width + right; i += 1) sum += dark[i]!;
      shares.push(sum / (255 * (right - left) * (bottom - top)));
    }
  }
  return shares;
}
