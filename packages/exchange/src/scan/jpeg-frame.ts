/** One component of a JPEG as its frame header gives it: sampling across and down, and its quantisation in the order of the file. */
interface JpegComponent {
  readonly id: number;
  readonly across: number;
  readonly down: number;
  readonly steps: Uint16Array;
}

/** Codes of a Huffman table: those of up to 9 bits at once, length·256 + symbol, longer ones by their length. */
export interface HuffmanCodes {
  readonly fast: Uint16Array;
  /** By length: the greatest code, −1 for none, and what is added to a code to find its symbol. */
  readonly most: Int32Array;
  readonly offset: Int32Array;
  readonly symbols: Uint8Array;
}

/** What a scan needs: its frame, the tables it names, and where its coded data begins. */
export interface JpegScan {
  readonly width: number;
  readonly height: number;
  readonly components: readonly JpegComponent[];
  /** Components of this scan, in order, with their tables. */
  readonly coded: readonly {
    readonly component: JpegComponent;
    readonly dc: HuffmanCodes;
    readonly ac: HuffmanCodes;
  }[];
  /** Units between restart markers; 0 for none. */
  readonly restart: number;
  readonly start: number;
}

const FAST_BITS = 9;

/**
 * The first scan that codes the brightness of a sequential JPEG (ITU-T T.81), with everything it needs. Null for what is coded otherwise:
 * progressive, arithmetic, 12 bits, in red, green and blue or in four inks.
 *
 * @throws RangeError for a file whose segments are broken.
 */
export function readJpegScan(bytes: Uint8Array): JpegScan | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const steps: Uint16Array[] = [];
  const codes = new Map<number, HuffmanCodes>();
  let frame: Pick<JpegScan, 'width' | 'height' | 'components'> | null = null;
  let restart = 0;
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) throw new RangeError('no marker where one is due');
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++;
      continue;
    }
    const length = view.getUint16(at + 2);
    const end = at + 2 + length;
    if (length < 2 || end > bytes.length) throw new RangeError('a segment is cut short');
    const from = at + 4;
    if (marker === 0xdb) readSteps(view, from, end, steps);
    else if (marker === 0xc4) readCodes(bytes, from, end, codes);
    else if (marker === 0xdd) restart = view.getUint16(from);
    else if (marker === 0xee && isRgb(bytes, from, end)) return null;
    else if (marker === 0xc0 || marker === 0xc1) {
      frame = readFrame(view, from, steps);
      if (frame === null) return null;
    } else if (marker >= 0xc2 && marker <= 0xcf) return null;
    else if (marker === 0xda)
      return frame && { ...frame, restart, start: end, coded: listCoded(bytes, from, frame, codes) };
    at = end;
  }
  return null;
}

/** Adobe's own segment says where three components are not brightness and two colours. */
function isRgb(bytes: Uint8Array, from: number, end: number): boolean {
  const isAdobe = end - from >= 12 && String.fromCharCode(...bytes.subarray(from, from + 5)) === 'Adobe';
  return isAdobe && bytes[from + 11] === 0;
}

function readSteps(view: DataView, from: number, end: number, steps: Uint16Array[]): void {
  let at = from;
  while (at < end) {
    const head = view.getUint8(at++);
    const wide = head >> 4 !== 0;
    if (at + (wide ? 128 : 64) > end) throw new RangeError('a table is cut short');
    steps[head & 15] = Uint16Array.from({ length: 64 }, (_, k) =>
      wide ? view.getUint16(at + 2 * k) : view.getUint8(at + k),
    );
    at += wide ? 128 : 64;
  }
}

function readCodes(bytes: Uint8Array, from: number, end: number, codes: Map<number, HuffmanCodes>): void {
  let at = from;
  while (at + 17 <= end) {
    const name = bytes[at]!;
    const counts = bytes.subarray(at + 1, at + 17);
    const total = counts.reduce((sum, count) => sum + count, 0);
    if (at + 17 + total > end) throw new RangeError('a table is cut short');
    codes.set(name, makeCodes(counts, bytes.slice(at + 17, at + 17 + total)));
    at += 17 + total;
  }
}

/** T.81 annex C: codes of a length follow each other, those of the next length go on from them doubled. */
function makeCodes(counts: Uint8Array, symbols: Uint8Array): HuffmanCodes {
  const fast = new Uint16Array(1 << FAST_BITS);
  const most = new Int32Array(17).fill(-1);
  const offset = new Int32Array(17);
  let code = 0;
  let place = 0;
  for (let length = 1; length <= 16; length++) {
    const count = counts[length - 1]!;
    offset[length] = place - code;
    if (code + count > 1 << length) throw new RangeError('a table has too many codes');
    for (let i = 0; i < count && length <= FAST_BITS; i++) {
      const first = (code + i) << (FAST_BITS - length);
      fast.fill((length << 8) | symbols[place + i]!, first, first + (1 << (FAST_BITS - length)));
    }
    code += count;
    place += count;
    if (count > 0) most[length] = code - 1;
    code <<= 1;
  }
  return { fast, most, offset, symbols };
}

function readFrame(
  view: DataView,
  from: number,
  steps: readonly Uint16Array[],
): Pick<JpegScan, 'width' | 'height' | 'components'> | null {
  const [height, width, count] = [view.getUint16(from + 1), view.getUint16(from + 3), view.getUint8(from + 5)];
  if (view.getUint8(from) !== 8 || height === 0 || (count !== 1 && count !== 3)) return null;
  const components = Array.from({ length: count }, (_, i): JpegComponent => {
    const at = from + 6 + 3 * i;
    const sampling = view.getUint8(at + 1);
    const own = steps[view.getUint8(at + 2)];
    if (own === undefined) throw new RangeError('a table is missing');
    return { id: view.getUint8(at), across: sampling >> 4, down: sampling & 15, steps: own };
  });
  if (components.some(({ across, down }) => across < 1 || across > 4 || down < 1 || down > 4))
    throw new RangeError('no such sampling');
  // R, G and B by their letters; and brightness has to be the finest of the three.
  if (count === 3 && components[0]!.id === 0x52) return null;
  const [light] = components;
  return components.every(({ across, down }) => across <= light!.across && down <= light!.down)
    ? { width, height, components }
    : null;
}

function listCoded(
  bytes: Uint8Array,
  from: number,
  { components }: Pick<JpegScan, 'components'>,
  codes: ReadonlyMap<number, HuffmanCodes>,
): JpegScan['coded'] {
  return Array.from({ length: bytes[from]! }, (_, i) => {
    const [id, tables] = [bytes[from + 1 + 2 * i]!, bytes[from + 2 + 2 * i]!];
    const component = components.find((each) => each.id === id);
    const [dc, ac] = [codes.get(tables >> 4), codes.get(16 + (tables & 15))];
    if (component === undefined || dc === undefined || ac === undefined) throw new RangeError('a table is missing');
    return { component, dc, ac };
  });
}
