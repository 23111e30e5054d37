/** What a picture says of itself before it is decoded. */
export interface PictureHeader {
  readonly kind: 'png' | 'jpeg';
  readonly width: number;
  readonly height: number;
  readonly dpi: readonly [across: number, down: number] | null;
}

const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const INCH = 0.0254;

/** Size and density of a PNG (chunks IHDR and pHYs, PNG specification 11.2.2 and 11.3.5.3); null for any other file. */
export function readPngHeader(bytes: Uint8Array): PictureHeader | null {
  if (bytes.length < 33 || PNG_SIGNATURE.some((byte, i) => bytes[i] !== byte)) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const header = { kind: 'png', width: view.getUint32(16), height: view.getUint32(20) } as const;
  let dpi: PictureHeader['dpi'] = null;
  // pHYs stands before the pixels, IDAT.
  for (let at = 8; at + 12 <= bytes.length; ) {
    const length = view.getUint32(at);
    const name = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (name === 'IDAT') break;
    if (name === 'pHYs' && length === 9 && at + 17 <= bytes.length && bytes[at + 16] === 1)
      dpi = sound(view.getUint32(at + 8) * INCH, view.getUint32(at + 12) * INCH);
    at += 12 + length;
  }
  return { ...header, dpi };
}

/** Size and density of a JPEG (frame header of ITU-T T.81 B.2.2, JFIF segment of T.871); null for any other file. */
export function readJpegHeader(bytes: Uint8Array): PictureHeader | null {
  if (bytes.length < 4 || bytes[0] !== 0xff || bytes[1] !== 0xd8) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let dpi: PictureHeader['dpi'] = null;
  for (let at = 2; at + 9 <= bytes.length; ) {
    // Every segment starts with FF and its marker; more FFs may fill the gap before it.
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++;
      continue;
    }
    // APP0 with 'JF': the density, per inch or per centimetre.
    const length = view.getUint16(at + 2);
    if (
      marker === 0xe0 &&
      length >= 16 &&
      at + 16 <= bytes.length &&
      bytes[at + 4] === 0x4a &&
      bytes[at + 5] === 0x46
    ) {
      const perInch = bytes[at + 11] === 1 ? 1 : bytes[at + 11] === 2 ? 2.54 : 0;
      dpi = sound(view.getUint16(at + 12) * perInch, view.getUint16(at + 14) * perInch);
    }
    // SOF0 to SOF15, of which C4, C8 and CC are something else: the size.
    const isFrame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (isFrame) return { kind: 'jpeg', width: view.getUint16(at + 7), height: view.getUint16(at + 5), dpi };
    // The scan starts, or the file is broken: no frame came before it.
    if (marker === 0xda || length < 2) return null;
    at += 2 + length;
  }
  return null;
}

/** What cameras and programs write that know of no scale, pixels to the inch; no scan of a profile is so coarse. */
const UNSAID = [72, 96];

/** Rounded where the file's whole numbers per metre stand for whole numbers per inch; null where it says nothing that was measured. */
function sound(across: number, down: number): PictureHeader['dpi'] {
  if (!(across > 0 && down > 0)) return null;
  const whole = (value: number) => (Math.abs(value - Math.round(value)) < 0.02 ? Math.round(value) : value);
  const [x, y] = [whole(across), whole(down)];
  return x === y && UNSAID.includes(x) ? null : [x, y];
}
