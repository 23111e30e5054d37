import type { Refusal } from '@fielded/core';
import { decode as decodePng } from 'fast-png';
import { decode as decodeJpeg } from 'jpeg-js';
import type { ScanImage } from './grey-image.ts';
import { greyOfSequentialJpeg } from './jpeg-grey.ts';
import { readJpegHeader, readPngHeader } from './picture-header.ts';
import { plainPng, rawBytesOfPng } from './plain-png.ts';

/** More pixels than this are not decoded: A4 at 600 dpi has 35 million. */
const MOST_PIXELS = 70e6;
/** Bytes that the pixels of a PNG may take: A4 at 600 dpi in colour with transparency takes 139 million. */
const MOST_RAW = 145e6;
/** Fewer across or down than this show no profile. */
const LEAST_SIDE = 50;
/** Pixels of a JPEG that is coded otherwise than scanners do, progressive above all: decoding one takes 30 bytes for each. */
const MOST_PROGRESSIVE = 10e6;
/** What the library may take for it, MB. */
const MOST_MEMORY = 400;

/**
 * A scan in a PNG or JPEG file, in shades of grey.
 *
 * The header is read first, so that a picture too large, or one that lies about its size, is refused before it is decoded. Any
 * colour becomes its brightness (Rec. 601); transparency is taken as white paper. Never throws.
 */
export function readScan(bytes: Uint8Array): ScanImage | Refusal {
  const header = readPngHeader(bytes) ?? readJpegHeader(bytes);
  if (header === null)
    return { refused: 'this is neither a PNG nor a JPEG picture', instead: 'Save the scan as .png or .jpg' };
  const { kind, width, height, dpi } = header;
  if (width * height > MOST_PIXELS)
    return {
      refused: `the picture has ${Math.round((width * height) / 1e6)} million pixels, and up to ${MOST_PIXELS / 1e6} million are read`,
      instead: 'Crop it to the sample, or scan at 600 dpi',
    };
  if (kind === 'png' && rawBytesOfPng(bytes) > MOST_RAW)
    return {
      refused: `the picture takes ${Math.round(rawBytesOfPng(bytes) / 1e6)} MB unpacked, and up to ${MOST_RAW / 1e6} MB are read`,
      instead: 'Save it in shades of grey with 8 bits, or crop it to the sample',
    };
  if (width < LEAST_SIDE || height < LEAST_SIDE)
    return { refused: `the picture is only ${width} × ${height} pixels`, instead: 'Scan the sample at 600 dpi' };
  try {
    return {
      width,
      height,
      dpi,
      grey: kind === 'png' ? greyOfPng(bytes, width, height) : greyOfJpeg(bytes, width * height),
    };
  } catch (error) {
    if (error instanceof TooLarge || /maxMemoryUsage/.test(String(error)))
      return {
        refused: `this JPEG is progressive, and up to ${MOST_PROGRESSIVE / 1e6} million pixels of those are read`,
        instead: 'Crop it to the sample, or save it as a plain JPEG or as PNG',
      };
    return { refused: 'the picture is damaged and cannot be decoded', instead: 'Save the scan again' };
  }
}

function greyOfPng(bytes: Uint8Array, width: number, height: number): Uint8Array {
  // Interlaced pictures have up to twice as many rows, each with a byte of its own and the bits it is filled up with.
  const raw = rawBytesOfPng(bytes) + 4 * (width + height) + 64;
  const { data, channels, depth, palette } = decodePng(plainPng(bytes, raw));
  const count = width * height;
  const grey = new Uint8Array(count);
  if (palette !== undefined && channels === 1) {
    const shades = palette.map(([r = 0, g = 0, b = 0]) => brightness(r, g, b));
    for (let i = 0; i < count; i++) grey[i] = shades[depth < 8 ? packed(data, i, width, depth) : data[i]!] ?? 0;
    return grey;
  }
  if (depth < 8) {
    const most = 2 ** depth - 1;
    for (let i = 0; i < count; i++) grey[i] = (packed(data, i, width, depth) * 255) / most;
    return grey;
  }
  if (data.length < count * channels) throw new RangeError('the picture is short of pixels');
  return toGrey(data, count, channels, depth === 16 ? 1 / 257 : 1);
}

/** One pixel of a picture with several to the byte, rows starting on a byte. */
function packed(data: ArrayLike<number>, i: number, width: number, depth: number): number {
  const row = Math.floor(i / width);
  const bit = (i - row * width) * depth;
  const byte = data[row * Math.ceil((width * depth) / 8) + (bit >> 3)]!;
  return (byte >> (8 - depth - (bit & 7))) & (2 ** depth - 1);
}

/** A picture that the library for progressive ones would take too much memory for. */
class TooLarge extends Error {}

/** Scanners and cameras write sequential JPEGs, of which only the brightness is decoded; any other is left to the library. */
function greyOfJpeg(bytes: Uint8Array, pixels: number): Uint8Array {
  const light = greyOfSequentialJpeg(bytes);
  if (light !== null) return light;
  if (pixels > MOST_PROGRESSIVE) throw new TooLarge();
  const { data, width, height } = decodeJpeg(bytes, {
    useTArray: true,
    formatAsRGBA: false,
    tolerantDecoding: false,
    maxResolutionInMP: MOST_PIXELS / 1e6,
    maxMemoryUsageInMB: MOST_MEMORY,
  });
  return toGrey(data, width * height, 3, 1);
}

function toGrey(data: ArrayLike<number>, count: number, channels: number, scale: number): Uint8Array {
  if (channels === 1 && scale === 1 && data instanceof Uint8Array) return data;
  const grey = new Uint8Array(count);
  const colour = channels >= 3;
  const clear = channels === 2 || channels === 4;
  for (let i = 0, at = 0; i < count; i++, at += channels) {
    let shade = (colour ? brightness(data[at]!, data[at + 1]!, data[at + 2]!) : data[at]!) * scale;
    if (clear) {
      const cover = (data[at + channels - 1]! * scale) / 255;
      shade = shade * cover + 255 * (1 - cover);
    }
    grey[i] = shade + 0.5;
  }
  return grey;
}

function brightness(r: number, g: number, b: number): number {
  return 0.299 * r + 0.587 * g + 0.114 * b;
}
