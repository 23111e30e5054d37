import { Resvg } from '@resvg/resvg-js';

/** A picture as darkness: 0 for white to 255 for black, row by row. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly dark: Uint8Array;
}

/** A binary PGM (netpbm `P5`), as pdftoppm writes it. */
export function readPgm(file: Buffer): Raster {
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(file.subarray(0, 60).toString('latin1'))!;
  const dark = file.subarray(head.length).map((level) => 255 - level);
  return { width: Number(width), height: Number(height), dark };
}

/** A PNG on white, scaled to `width` × `height` pixels. Decoded by drawing it. */
export function readPng(file: Buffer, width: number, height: number): Raster {
  const data = `data:image/png;base64,${file.toString('base64')}`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="${width}" height="${height}" fill="#fff"/><image href="${data}" width="${width}" height="${height}" preserveAspectRatio="none"/></svg>`;
  const { pixels } = new Resvg(svg).render();
  const dark = new Uint8Array(width * height);
  for (let i = 0; i < dark.length; i += 1)
    dark[i] = 255 - (pixels[4 * i]! + pixels[4 * i + 1]! + pixels[4 * i + 2]!) / 3;
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
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const region = Math.floor((y * rows) / height) * columns + Math.floor((x * columns) / width);
      sums[region]! += dark[y * width + x]!;
      counts[region]! += 255;
    }
  }
  return sums.map((sum, i) => sum / counts[i]!);
}
