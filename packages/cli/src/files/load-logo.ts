import { readFileSync, realpathSync, statSync } from 'node:fs';
import { dirname, relative, resolve, sep } from 'node:path';
import type { Bitmap } from '@fielded/render';
import { Resvg } from '@resvg/resvg-js';
import { explainFailure, type Refusal } from './read-text.ts';

/** A logo is no photograph. */
const MOST_BYTES = 2_000_000;
const MOST_PIXELS = 40_000_000;
/** A logo is drawn as wide as it may be: one that is higher than so many times that would take the memory of a poster. */
const STEEPEST = 10;
/** What of SVG reads other files, or takes time out of proportion to its size: pictures, copies of copies, filters, entities. */
const TAKES_MORE = /<(?:[\w-]+:)?(?:image|feImage|filter|foreignObject|use)\b|\bfilter\s*[:=]|<!ENTITY/i;
/** Width that a logo is drawn at, pixels: 70 mm at some 340 to the inch. */
const DRAWN_WIDTH = 940;

/**
 * The shop's logo as pixels, whatever it is drawn as: .png, .jpg and .svg are drawn anew, so that nothing but a picture reaches a
 * document. It must lie beside the shop file at `shopPath` or below.
 */
export function loadLogo(shopPath: string, name: string): Bitmap | Refusal {
  const folder = dirname(resolve(shopPath));
  const file = resolve(folder, name);
  const way = relative(folder, file);
  if (way === '' || way === '..' || way.startsWith(`..${sep}`))
    return { refused: "the logo lies outside the shop file's folder", instead: 'Move it beside the shop file' };
  let bytes: Buffer;
  try {
    // A link is followed: what counts is where the picture really lies, and that it is a file that ends.
    if (relative(realpathSync(folder), realpathSync(file)).startsWith('..'))
      return { refused: "the logo is a link out of the shop file's folder", instead: 'Put the picture itself there' };
    if (!statSync(file).isFile()) return { refused: 'the logo is no plain file', instead: 'Name a .png, .jpg or .svg' };
    if (statSync(file).size > MOST_BYTES)
      return { refused: 'the logo is larger than 2 MB', instead: 'Save it smaller, 1000 pixels wide or so' };
    bytes = readFileSync(file);
  } catch (error) {
    return explainFailure(error);
  }
  try {
    return drawLogo(bytes);
  } catch {
    return { refused: 'the logo cannot be read as a picture', instead: 'Save it as .png, .jpg or .svg' };
  }
}

function drawLogo(bytes: Buffer): Bitmap | Refusal {
  const pixels = sizeOfPng(bytes) ?? sizeOfJpeg(bytes);
  if (pixels !== null && pixels.width * pixels.height > MOST_PIXELS)
    return { refused: 'the logo has more than 40 million pixels', instead: 'Save it smaller, 1000 pixels wide or so' };
  const svg = pixels === null ? bytes.toString('utf8') : aroundPicture(bytes, pixels);
  if (pixels === null && TAKES_MORE.test(svg))
    return {
      refused: 'the logo holds pictures, copies, filters or entities',
      instead: 'Save it as lines and areas alone, or as .png',
    };
  const picture = new Resvg(svg, {
    fitTo: { mode: 'width', value: Math.min(DRAWN_WIDTH, pixels?.width ?? DRAWN_WIDTH) },
    font: { loadSystemFonts: false },
  });
  if (picture.height > STEEPEST * picture.width)
    return {
      refused: `the logo is over ${STEEPEST} times as high as wide`,
      instead: 'Crop it, or turn it on its side',
    };
  const drawn = picture.render();
  return { png: new Uint8Array(drawn.asPng()), width: drawn.width, height: drawn.height };
}

interface Pixels {
  readonly type: 'png' | 'jpeg';
  readonly width: number;
  readonly height: number;
}

function aroundPicture(bytes: Buffer, { type, width, height }: Pixels): string {
  const data = `data:image/${type};base64,${bytes.toString('base64')}`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image width="${width}" height="${height}" href="${data}"/></svg>`;
}

/** Size from the IHDR chunk, PNG specification 11.2.1; null for what is no PNG. */
function sizeOfPng(bytes: Buffer): Pixels | null {
  if (bytes.length < 24 || bytes.toString('latin1', 1, 4) !== 'PNG') return null;
  return { type: 'png', width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
}

/** Size from the frame header, ITU-T T.81 B.2.2; null for what is no JPEG. */
function sizeOfJpeg(bytes: Buffer): Pixels | null {
  if (bytes.length < 4 || bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  let at = 2;
  while (at + 9 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1]!;
    // SOF0 to SOF15 but for DHT, JPG and DAC.
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return { type: 'jpeg', width: bytes.readUInt16BE(at + 7), height: bytes.readUInt16BE(at + 5) };
    at += 2 + bytes.readUInt16BE(at + 2);
  }
  return null;
}
