import type { Scene, Theme } from '@fielded/render';
import { sceneToSvg } from '@fielded/render';
import { Resvg } from '@resvg/resvg-js';
import { FONT_FILE, FONT_NAME } from './font-file.ts';

const MM_PER_INCH = 25.4;
const INCHES_PER_METRE = 1000 / MM_PER_INCH;
/** A PNG is its eight-byte signature, then chunks; the first is IHDR: 4 bytes of length, 4 of name, 13 of data, 4 of check. */
const AFTER_HEADER = 8 + 25;

/** More pixels than this are not made: a picture of 400 MB in memory. */
const MOST_PIXELS = 100e6;

/** The greatest dpi at which a drawing stays within the pixels that are made. */
export function greatestDpi({ width, height }: Scene): number {
  return Math.floor(MM_PER_INCH * Math.sqrt(MOST_PIXELS / (width * height)));
}

/** A drawing as PNG at `dpi`, which is noted in the file so that it prints at true size. */
export function writePng(
  scene: Scene,
  dpi: number,
  options: { readonly theme: Theme; readonly bare: boolean; readonly fontFiles?: readonly string[] },
): Uint8Array {
  const picture = new Resvg(sceneToSvg(scene, options), {
    fitTo: { mode: 'width', value: Math.round((scene.width / MM_PER_INCH) * dpi) },
    font: { fontFiles: [...(options.fontFiles ?? [FONT_FILE])], loadSystemFonts: false, defaultFontFamily: FONT_NAME },
  });
  const png = picture.render().asPng();
  const software = chunk('tEXt', Buffer.from('Software\0fielded', 'latin1'));
  return Buffer.concat([png.subarray(0, AFTER_HEADER), density(dpi), software, png.subarray(AFTER_HEADER)]);
}

/** The pixels per metre (PNG specification, third edition, 11.3.4.3). */
function density(dpi: number): Uint8Array {
  const perMetre = Math.round(dpi * INCHES_PER_METRE);
  const data = Buffer.alloc(9);
  data.writeUInt32BE(perMetre, 0);
  data.writeUInt32BE(perMetre, 4);
  data.writeUInt8(1, 8);
  return chunk('pHYs', data);
}

/** A chunk: length, name, data, check over name and data. */
function chunk(name: string, data: Uint8Array): Uint8Array {
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(checksum(body));
  return Buffer.concat([length, body, check]);
}

/** CRC-32 as PNG defines it (annex D), bit by bit: the chunks are a few bytes long. */
function checksum(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}
