import { JpegBits } from './jpeg-bits.ts';
import { type HuffmanCodes, type JpegScan, readJpegScan } from './jpeg-frame.ts';

/** The order in which the frequencies of a block are coded (T.81 figure A.6). */
const ZIGZAG = Uint8Array.from([
  0, 1, 8, 16, 9, 2, 3, 10, 17, 24, 32, 25, 18, 11, 4, 5, 12, 19, 26, 33, 40, 48, 41, 34, 27, 20, 13, 6, 7, 14, 21, 28,
  35, 42, 49, 56, 57, 50, 43, 36, 29, 22, 15, 23, 30, 37, 44, 51, 58, 59, 52, 45, 38, 31, 39, 46, 53, 60, 61, 54, 47,
  55, 62, 63,
]);

/**
 * The brightness of a sequential JPEG (ITU-T T.81), row by row: its colours are passed over, and nothing but the shades is kept, a byte for
 * each pixel. Null for a JPEG that is coded otherwise.
 *
 * Within 2 of 255 of other decoders, which round each colour by itself.
 * @throws RangeError for one that is damaged or cut short.
 */
export function greyOfSequentialJpeg(bytes: Uint8Array): Uint8Array | null {
  const scan = readJpegScan(bytes);
  if (scan === null) return null;
  const [light] = scan.components;
  const isAlone = scan.coded.length === 1;
  // Each in a scan of its own: brightness comes first, or other decoders read it.
  if (isAlone ? scan.coded[0]!.component !== light : scan.coded.length !== scan.components.length) return null;
  const unit = isAlone ? { across: 1, down: 1 } : light!;
  const unitsAcross = Math.ceil(scan.width / (8 * unit.across));
  const unitsDown = Math.ceil(scan.height / (8 * unit.down));
  const reader = new LightReader(bytes, scan);
  for (let y = 0; y < unitsDown; y++)
    for (let x = 0; x < unitsAcross; x++) reader.readUnit(x * unit.across, y * unit.down, isAlone);
  return reader.grey;
}

/** Reads unit after unit, and keeps the blocks of brightness. */
class LightReader {
  readonly grey: Uint8Array;
  /** The same bytes, rounded and held between 0 and 255 as they are written. */
  private readonly clamped: Uint8ClampedArray;
  private readonly scan: JpegScan;
  private readonly bits: JpegBits;
  private readonly scales: Float32Array;
  private readonly block: Float32Array = new Float32Array(64);
  /** The level of the block before, by component. */
  private readonly levels: Int32Array;
  private units = 0;

  constructor(bytes: Uint8Array, scan: JpegScan) {
    this.scan = scan;
    this.grey = new Uint8Array(scan.width * scan.height);
    this.clamped = new Uint8ClampedArray(this.grey.buffer);
    this.bits = new JpegBits(bytes, scan.start);
    this.scales = scalesOf(scan.components[0]!.steps);
    this.levels = new Int32Array(scan.coded.length);
  }

  /** One unit, its first block of brightness at column `across` and row `down` of blocks. */
  readUnit(across: number, down: number, isAlone: boolean): void {
    const { scan, bits, levels } = this;
    if (scan.restart > 0 && this.units > 0 && this.units % scan.restart === 0) {
      bits.restart();
      levels.fill(0);
    }
    this.units++;
    for (let i = 0; i < scan.coded.length; i++) {
      const { component, dc, ac } = scan.coded[i]!;
      const [wide, high] = isAlone ? [1, 1] : [component.across, component.down];
      for (let k = 0; k < wide * high; k++) {
        levels[i] = levels[i]! + bits.number(bits.symbol(dc));
        if (component !== scan.components[0]) skipBlock(bits, ac);
        else this.keepBlock(ac, levels[i]!, across + (k % wide), down + Math.floor(k / wide));
      }
    }
  }

  private keepBlock(ac: HuffmanCodes, level: number, column: number, row: number): void {
    const { bits, block, scales } = this;
    block.fill(0);
    block[0] = level * scales[0]!;
    let last = 0;
    for (let k = 1; k < 64; k++) {
      const symbol = bits.symbol(ac);
      const size = symbol & 15;
      if (size === 0) {
        if (symbol >> 4 < 15) break;
        k += 15;
        continue;
      }
      k += symbol >> 4;
      if (k > 63) throw new RangeError('a block has too many figures');
      block[ZIGZAG[k]!] = bits.number(size) * scales[k]!;
      last = k;
    }
    if (last === 0) this.fillBlock(block[0]! + 128, column, row);
    else {
      transform(block);
      this.writeBlock(column, row);
    }
  }

  /** A block that is of one shade. */
  private fillBlock(shade: number, column: number, row: number): void {
    const { width, height } = this.scan;
    const value = Math.max(0, Math.min(255, Math.round(shade)));
    const right = Math.min(width, 8 * column + 8);
    const foot = Math.min(height, 8 * row + 8);
    for (let y = 8 * row; y < foot; y++) this.grey.fill(value, y * width + 8 * column, y * width + right);
  }

  private writeBlock(column: number, row: number): void {
    const { clamped, block } = this;
    const { width, height } = this.scan;
    const wide = Math.min(8, width - 8 * column);
    const high = Math.min(8, height - 8 * row);
    for (let y = 0; y < high; y++) {
      const to = (8 * row + y) * width + 8 * column;
      for (let x = 0; x < wide; x++) {
        clamped[to + x] = block[8 * y + x]! + 128;
      }
    }
  }
}

function skipBlock(bits: JpegBits, ac: HuffmanCodes): void {
  for (let k = 1; k < 64; k++) {
    const symbol = bits.symbol(ac);
    const size = symbol & 15;
    if (size === 0) {
      if (symbol >> 4 < 15) return;
      k += 15;
      continue;
    }
    k += symbol >> 4;
    bits.number(size);
  }
}

/** The steps of a table with the scales of the transform in them, in the order of the file. */
function scalesOf(steps: Uint16Array): Float32Array {
  const scale = (i: number) => (i === 0 ? 1 : Math.SQRT2 * Math.cos((i * Math.PI) / 16));
  return Float32Array.from(steps, (step, k) => (step * scale(ZIGZAG[k]! >> 3) * scale(ZIGZAG[k]! & 7)) / 8);
}

const ROOT2 = Math.SQRT2;
const C2 = 2 * Math.cos(Math.PI / 8);
const LESS = 2 * (Math.cos(Math.PI / 8) - Math.cos((3 * Math.PI) / 8));
const MORE = -2 * (Math.cos(Math.PI / 8) + Math.cos((3 * Math.PI) / 8));

/** The inverse cosine transform of a block, in place: Arai, Agui and Nakajima (1988), columns then rows. */
function transform(block: Float32Array): void {
  for (let i = 0; i < 8; i++) transformLine(block, i, 8);
  for (let i = 0; i < 64; i += 8) transformLine(block, i, 1);
}

function transformLine(b: Float32Array, at: number, step: number): void {
  const b0 = b[at]!;
  const b1 = b[at + step]!;
  const b2 = b[at + 2 * step]!;
  const b3 = b[at + 3 * step]!;
  const b4 = b[at + 4 * step]!;
  const b5 = b[at + 5 * step]!;
  const b6 = b[at + 6 * step]!;
  const b7 = b[at + 7 * step]!;
  if (b1 === 0 && b2 === 0 && b3 === 0 && b4 === 0 && b5 === 0 && b6 === 0 && b7 === 0) {
    for (let k = 1; k < 8; k++) b[at + k * step] = b0;
    return;
  }
  // Even frequencies.
  const s04 = b0 + b4;
  const d04 = b0 - b4;
  const s26 = b2 + b6;
  const d26 = (b2 - b6) * ROOT2 - s26;
  const e0 = s04 + s26;
  const e3 = s04 - s26;
  const e1 = d04 + d26;
  const e2 = d04 - d26;
  // Odd ones.
  const z13 = b5 + b3;
  const z10 = b5 - b3;
  const z11 = b1 + b7;
  const z12 = b1 - b7;
  const o7 = z11 + z13;
  const z5 = (z10 + z12) * C2;
  const o6 = MORE * z10 + z5 - o7;
  const o5 = (z11 - z13) * ROOT2 - o6;
  const o4 = LESS * z12 - z5 + o5;
  b[at] = e0 + o7;
  b[at + 7 * step] = e0 - o7;
  b[at + step] = e1 + o6;
  b[at + 6 * step] = e1 - o6;
  b[at + 2 * step] = e2 + o5;
  b[at + 5 * step] = e2 - o5;
  b[at + 4 * step] = e3 + o4;
  b[at + 3 * step] = e3 - o4;
}
