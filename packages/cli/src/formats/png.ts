import type { Scene, Theme } from '@fielded/render';
import { sceneToSvg } from '@fielded/render';
import { Resvg } from '@resvg/resvg-js';
import { FONT_FILE, FONT_NAME } from './font-file.ts';

const MM_PER_INCH = 25.4;
const INCHES_PER_METRE = 1000 / MM_PER_INCH;
/** A PNG is its eight-byte signature, then chunks; the first is IHDR: 4 bytes of length, 4 of name, 13 of data, 4 of check. */
const AFTER_HEADER = 8 + 25;

/** A drawing as PNG at `dpi`, which is noted in the file so that it prints at true size. */
export function writePng(scene: Scene, dpi: number, options: { theme: Theme; bare: boolean }): Uint8Array {
  const picture = new Resvg(sceneToSvg(scene, options), {
    fitTo: { mode: 'width', value: Math.round((scene.width / MM_PER_INCH) * dpi) },
    font: { fontFiles: [FONT_FILE], loadSystemFonts: false, defaultFontFamily: FONT_NAME },
  });
  return withDensity(picture.render().asPng(), dpi);
}

/** The PNG with its pixels per metre in a pHYs chunk (PNG specification, third edition, 11.3.4.3). */
function withDensity(png: Uint8Array, dpi: number): Uint8Array {
  const perMetre = Math.round(dpi * INCHES_PER_METRE);
  const chunk = Buffer.alloc(21);
  chunk.writeUInt32BE(9, 0);
  chunk.write('pHYs', 4, 'latin1');
  chunk.writeUInt32BE(perMetre, 8);
  chunk.writeUInt32BE(perMetre, 12);
  chunk.writeUInt8(1, 16);
  chunk.writeUInt32BE(checksum(chunk.subarray(4, 17)), 17);
  return Buffer.concat([png.subarray(0, AFTER_HEADER), chunk, png.subarray(AFTER_HEADER)]);
}

/** CRC-32 as PNG defines it (annex D), bit by bit: the chunk is 13 bytes. */
function checksum(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}
