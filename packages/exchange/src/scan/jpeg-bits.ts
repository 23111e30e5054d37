import type { HuffmanCodes } from './jpeg-frame.ts';

/** More bits than these are not taken after the data has ended: it is short of pixels. */
const MOST_MISSING = 64;

/** The coded data of a JPEG scan, bit by bit. */
export class JpegBits {
  private readonly bytes: Uint8Array;
  private at: number;
  private held = 0;
  private count = 0;
  private missing = 0;

  constructor(bytes: Uint8Array, at: number) {
    this.bytes = bytes;
    this.at = at;
  }

  /** Takes whole bytes up while there is room; a marker ends the data, and noughts stand for what is past it. */
  private fill(): void {
    const { bytes } = this;
    while (this.count <= 24) {
      let byte = bytes[this.at] ?? 0xff;
      if (byte !== 0xff) this.at++;
      else if (bytes[this.at + 1] === 0) this.at += 2;
      else {
        byte = 0;
        this.missing += 8;
        if (this.missing > MOST_MISSING) throw new RangeError('the data ends before the picture');
      }
      this.held = (this.held << 8) | byte;
      this.count += 8;
    }
  }

  /** The next symbol of a table. */
  symbol({ fast, most, offset, symbols }: HuffmanCodes): number {
    if (this.count < 16) this.fill();
    const known = fast[(this.held >>> (this.count - 9)) & 511]!;
    if (known !== 0) {
      this.count -= known >>> 8;
      return known & 255;
    }
    for (let length = 10; length <= 16; length++) {
      const code = (this.held >>> (this.count - length)) & ((1 << length) - 1);
      if (code <= most[length]!) {
        this.count -= length;
        return symbols[code + offset[length]!]!;
      }
    }
    throw new RangeError('no such code');
  }

  /** A number of so many bits, the lower half of them negative (T.81 F.2.2.1). */
  number(bits: number): number {
    if (bits === 0) return 0;
    if (this.count < bits) this.fill();
    this.count -= bits;
    const value = (this.held >>> this.count) & ((1 << bits) - 1);
    return value < 1 << (bits - 1) ? value - (1 << bits) + 1 : value;
  }

  /** Goes past a restart marker. */
  restart(): void {
    const { bytes } = this;
    // What is held is filling, but for whole bytes that were taken up past it: there are none, since a marker stops that.
    if (bytes[this.at] !== 0xff || (bytes[this.at + 1]! & 0xf8) !== 0xd0)
      throw new RangeError('no restart where one is due');
    this.at += 2;
    this.held = 0;
    this.count = 0;
    this.missing = 0;
  }
}
