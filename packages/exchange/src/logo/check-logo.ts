import type { Refusal } from '@fielded/core';

/** What a logo may be: bytes of its file, pixels it is drawn wide (70 mm at some 340 to the inch), times as high as wide. */
export const LOGO = { mostBytes: 2_000_000, drawnWidth: 940, steepest: 10 } as const;

const MOST_PIXELS = 40_000_000;
/** What of SVG reads other files, or takes time out of proportion to its size: pictures, copies of copies, filters, entities. */
const TAKES_MORE = /<(?:[\w-]+:)?(?:image|feImage|filter|foreignObject|use)\b|\bfilter\s*[:=]|<!ENTITY/i;

/** A picture file by its first bytes; its size in pixels. */
export interface LogoPixels {
  readonly type: 'png' | 'jpeg';
  readonly width: number;
  readonly height: number;
}

/** What a logo's file holds: pixels of a known size, or the text of an SVG of lines and areas alone. */
export type CheckedLogo = { readonly pixels: LogoPixels } | { readonly svg: string };

/** Whether a logo may be drawn, by its bytes and not by its name; or what stands against it. */
export function checkLogo(bytes: Uint8Array): CheckedLogo | Refusal {
  if (bytes.length > LOGO.mostBytes)
    return { refused: 'the logo is larger than 2 MB', instead: 'Save it smaller, 1000 pixels wide or so' };
  const pixels = sizeOfPng(bytes) ?? sizeOfJpeg(bytes);
  if (pixels !== null && pixels.width * pixels.height > MOST_PIXELS)
    return { refused: 'the logo has more than 40 million pixels', instead: 'Save it smaller, 1000 pixels wide or so' };
  if (pixels !== null) return { pixels };
  const svg = new TextDecoder().decode(bytes);
  if (TAKES_MORE.test(svg))
    return {
      refused: 'the logo holds pictures, copies, filters or entities',
      instead: 'Save it as lines and areas alone, or as .png',
    };
  return { svg };
}

/** A logo is drawn as wide as it may be: one that is higher than so many times that would take the memory of a poster. */
export function tooSteep(width: number, height: number): Refusal | null {
  if (height <= LOGO.steepest * width) return null;
  return {
    refused: `the logo is over ${LOGO.steepest} times as high as wide`,
    instead: 'Crop it, or turn it on its side',
  };
}

/** What is said of a file that is no picture. */
export const NO_PICTURE: Refusal = {
  refused: 'the logo cannot be read as a picture',
  instead: 'Save it as .png, .jpg or .svg',
};

/** Size from the IHDR chunk, PNG specification 11.2.1; null for what is no PNG. */
function sizeOfPng(bytes: Uint8Array): LogoPixels | null {
  if (bytes.length < 24 || String.fromCharCode(...bytes.subarray(1, 4)) !== 'PNG') return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return { type: 'png', width: view.getUint32(16), height: view.getUint32(20) };
}

/** Size from the frame header, ITU-T T.81 B.2.2; null for what is no JPEG. */
function sizeOfJpeg(bytes: Uint8Array): LogoPixels | null {
  if (bytes.length < 4 || bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 2;
  while (at + 9 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1]!;
    // SOF0 to SOF15 but for DHT, JPG and DAC.
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return { type: 'jpeg', width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}
