import { Unzlib } from 'fflate';

/** Parts of a PNG that say what its pixels are; the first of each is kept, and all of its pixels. With the most bytes that each may have. */
const KEPT: Readonly<Record<string, number>> = { IHDR: 13, PLTE: 768, tRNS: 512 };
const SIGNATURE_LENGTH = 8;
/** Bytes of packed pixels that are unpacked at a time: a bomb grows a thousandfold, and is found out after 16 MB. */
const SLICE = 16_384;
/** Samples to a pixel by colour type (PNG specification 11.2.1). */
const CHANNELS: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

/** Bytes that the pixels of a PNG take before filters and packing, by its header; NaN for one that makes no sense. */
export function rawBytesOfPng(bytes: Uint8Array): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [width, height, depth, type] = [view.getUint32(16), view.getUint32(20), bytes[24]!, bytes[25]!];
  return height * (Math.ceil((width * depth * (CHANNELS[type] ?? Number.NaN)) / 8) + 1);
}

/**
 * The PNG with nothing but its header, palette, transparency and pixels, once these have been seen to unpack to no more than
 * `most` bytes. Whatever else such files hold (colour profiles, texts, further pictures, a second header) is packed too, or
 * says something else than the header that was read, and is left out unread.
 *
 * @throws RangeError for a file that breaks off or holds more than it says.
 */
export function plainPng(bytes: Uint8Array, most: number): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts = [bytes.subarray(0, SIGNATURE_LENGTH)];
  const seen = new Set<string>();
  let unpacked = 0;
  const count = new Unzlib((part) => {
    unpacked += part.length;
    if (unpacked > most) throw new RangeError('the picture holds more pixels than it says');
  });
  for (let at = SIGNATURE_LENGTH; ; ) {
    if (at + 12 > bytes.length) throw new RangeError('the picture breaks off');
    const length = view.getUint32(at);
    const name = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    const end = at + 12 + length;
    if (end > bytes.length) throw new RangeError('the picture breaks off');
    // Unpack the pixels by slices, only to count them.
    if (name === 'IDAT')
      for (let from = at + 8; from < end - 4; from += SLICE)
        count.push(bytes.subarray(from, Math.min(from + SLICE, end - 4)));
    // Kept: pixels, the end, and the first short chunk of each kind that is needed to read them.
    const keeps = name === 'IDAT' || name === 'IEND' || (length <= (KEPT[name] ?? -1) && !seen.has(name));
    if (keeps) parts.push(bytes.subarray(at, end));
    seen.add(name);
    at = end;
    if (name === 'IEND') return join(parts);
  }
}

function join(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
