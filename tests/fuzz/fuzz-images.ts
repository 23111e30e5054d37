import { crc32, deflateSync } from 'node:zlib';
import { readJob } from '@fielded/core';
import { readScan, tracedJob, tracedSvg, traceScan } from '@fielded/exchange';
import { encode as encodeJpeg } from 'jpeg-js';
import { Random } from '../support/random.ts';
import { drawScan, sampleOf } from '../support/synthetic-scan.ts';
import type { Finding } from './fuzz-jobs.ts';
import { judgeCase, notNumbers } from './judge-case.ts';
import { spoil } from './spoil.ts';

interface Picture {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

const DPI = 120;
const ogee = (x: number) => (x < 11 ? 9 : x < 38 ? 9 - (7.5 * (x - 11)) / 27 : 0);
const rebate = (x: number) => (x < 10 ? 4 : 0);

/** A few scans to start from: a raise, with a back cut, turned; made once. */
const scans: Picture[] = [];
function startingScans(): readonly Picture[] {
  if (scans.length === 0)
    for (const [back, turn] of [
      [() => 0, 0],
      [rebate, 2],
      [rebate, -15],
    ] as const)
      scans.push(drawScan(sampleOf(ogee, back, 20, 60), { dpi: DPI, turn, margin: 3, blur: 0.6 }));
  return scans;
}

/** Pictures that are spoilt or odd, as PNG and JPEG: traced into a job that reads, or refused in words. */
export function fuzzImages(seed: number): Finding[] {
  return judgeCase(
    seed,
    () => {
      const random = new Random(seed);
      const bytes = pictureFile(random, oddPicture(random));
      const scan = readScan(bytes);
      if ('refused' in scan) return scan.refused !== '' && scan.instead !== '' ? [] : ['refused without words'];
      if (scan.grey.length !== scan.width * scan.height)
        return [`${scan.grey.length} pixels of ${scan.width} × ${scan.height}`];
      const dpi = random.oneOf([DPI, 100, 300, 9600]);
      const traced = traceScan(scan, scan.dpi ?? [dpi, dpi]);
      if ('refused' in traced) return traced.refused !== '' && traced.instead !== '' ? [] : ['refused without words'];
      const { seen, ...figures } = traced;
      const faults = notNumbers(figures, 'traced');
      if (/NaN/.test(tracedSvg(scan, traced).replace(/"data:[^"]*"/g, '')))
        faults.push('a drawing with what is no number');
      const { faults: read } = readJob(tracedJob(traced, 'odd'));
      return [
        ...faults,
        ...read.map(({ message }) => `its job: ${message}`),
        ...(seen.silhouette.length > 0 ? [] : ['nothing seen']),
      ];
    },
    MOST_WORK,
  );
}

/** What a small picture may take, ms: one with a torn edge is gone along pixel by pixel. */
const MOST_WORK = 3000;

/** A scan as it is, with strokes and spots on it, cut off, inverted, or no scan at all. */
function oddPicture(random: Random): Picture {
  const start = random.oneOf(startingScans());
  const way = random.unit();
  if (way < 0.35) return start;
  if (way < 0.6) return withStrokes(random, start);
  if (way < 0.75) return cutOff(random, start);
  if (way < 0.8) return { ...start, grey: start.grey.map((shade) => 255 - shade) };
  return noScan(random);
}

function withStrokes(random: Random, { width, height, grey }: Picture): Picture {
  const drawn = Uint8Array.from(grey);
  for (let i = 0; i < 1 + random.unit() * 12; i++) {
    const [x, y, shade] = [random.between(0, width), random.between(0, height), random.between(0, 255)];
    const [wide, tall] =
      random.unit() < 0.5
        ? [random.between(1, 12), random.between(1, height)]
        : [random.between(1, width), random.between(1, 12)];
    for (let row = Math.floor(y); row < Math.min(height, y + tall); row++)
      drawn.fill(shade, row * width + Math.floor(x), row * width + Math.floor(Math.min(width, x + wide)));
  }
  return { width, height, grey: drawn };
}

function cutOff(random: Random, { width, height, grey }: Picture): Picture {
  const [x0, y0] = [Math.floor(random.between(0, width / 2)), Math.floor(random.between(0, height / 2))];
  const [wide, tall] = [Math.floor(random.between(40, width - x0)), Math.floor(random.between(40, height - y0))];
  const cut = new Uint8Array(wide * tall);
  for (let row = 0; row < tall; row++)
    cut.set(grey.subarray((y0 + row) * width + x0, (y0 + row) * width + x0 + wide), row * wide);
  return { width: wide, height: tall, grey: cut };
}

function noScan(random: Random): Picture {
  const [width, height] = [Math.floor(random.between(40, 320)), Math.floor(random.between(40, 200))];
  const [step, shade] = [Math.ceil(random.between(1, 40)), Math.floor(random.between(0, 255))];
  const way = Math.floor(random.unit() * 5);
  const grey = Uint8Array.from({ length: width * height }, (_, i) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    if (way === 0) return random.unit() * 256;
    if (way === 1) return shade;
    if (way === 2) return (Math.floor(x / step) + Math.floor(y / step)) % 2 === 0 ? 240 : 30;
    if (way === 3) return (x + y) % 256;
    return Math.hypot(x - width / 2, y - height / 2) < step * 2 ? 20 : 230;
  });
  return { width, height, grey };
}

function pictureFile(random: Random, picture: Picture): Uint8Array {
  const file = random.unit() < 0.5 ? jpegOf(random, picture) : pngOf(random, picture);
  return random.unit() < 0.5 ? file : spoil(file, random, PIECES);
}

function jpegOf(random: Random, { width, height, grey }: Picture): Uint8Array {
  const data = new Uint8Array(width * height * 4);
  for (let i = 0; i < grey.length; i++) data[4 * i] = data[4 * i + 1] = data[4 * i + 2] = grey[i]!;
  const bytes = Uint8Array.from(encodeJpeg({ width, height, data }, random.oneOf([30, 90, 100])).data);
  // Markers and lengths of its first 700 bytes changed alone: what is coded stays whole.
  if (random.unit() < 0.4)
    bytes[Math.floor(random.unit() * Math.min(700, bytes.length))] = Math.floor(random.unit() * 256);
  return bytes;
}

/** A PNG of any colour type and depth whose checks are right, so that what is odd in it is read and not turned away. */
function pngOf(random: Random, { width, height, grey }: Picture): Uint8Array {
  const [type, depth] = random.oneOf([
    [0, 8],
    [0, 1],
    [0, 2],
    [0, 4],
    [0, 16],
    [2, 8],
    [2, 16],
    [3, 8],
    [3, 4],
    [4, 8],
    [6, 8],
    [6, 16],
    [5, 8],
    [0, 3],
  ] as const);
  const samples = { 0: 1, 2: 3, 3: 1, 4: 2, 5: 2, 6: 4 }[type];
  const rowBytes = Math.ceil((width * samples * depth) / 8);
  const rows = new Uint8Array(height * (rowBytes + 1));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (let s = 0; s < samples; s++) {
        const shade = samples % 2 === 0 && s === samples - 1 ? 255 : grey[y * width + x]!;
        const place = (x * samples + s) * depth;
        const at = y * (rowBytes + 1) + 1 + (place >> 3);
        if (depth >= 8) rows.fill(shade, at, at + depth / 8);
        else rows[at] = rows[at]! | ((shade >> (8 - depth)) << (8 - depth - (place & 7)));
      }
  const spoilt = random.unit() < 0.25 ? spoil(rows, random, []) : rows;
  const size =
    random.unit() < 0.1 ? [Math.floor(random.between(0, 400)), Math.floor(random.between(0, 400))] : [width, height];
  const interlaced = random.unit() < 0.05 ? 1 : 0;
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, size[0]!);
  view.setUint32(4, size[1]!);
  header.set([depth, type, 0, 0, interlaced], 8);
  const palette = Uint8Array.from({ length: 3 * random.oneOf([256, 256, 16, 3]) }, (_, i) => Math.floor(i / 3));
  return Uint8Array.from([
    ...[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    ...chunk('IHDR', header),
    ...(type === 3 || random.unit() < 0.05 ? chunk('PLTE', palette) : []),
    ...chunk('IDAT', deflateSync(spoilt, { level: 1 })),
    ...chunk('IEND', new Uint8Array(0)),
  ]);
}

function chunk(name: string, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + data.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  bytes.set(
    [...name].map((letter) => letter.charCodeAt(0)),
    4,
  );
  bytes.set(data, 8);
  view.setUint32(8 + data.length, crc32(bytes.subarray(4, 8 + data.length)));
  return bytes;
}

/** What breaks readers of pictures: markers without their segments, lengths without end, restart markers in the data. */
const PIECES = ['\u0000', '\u007f', '\u0000\u0000\u0000\u0000', '\u0001\u0001', 'IDAT', 'IEND', 'PLTE', 'JFIF'];
