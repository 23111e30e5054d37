/**
 * Writes text byte by byte into one buffer that every text uses again: several times as fast as joining strings, which took most of
 * the time of a report. Each function writes at a place in the buffer and returns the place after it. One text must be finished
 * (`writtenText`) before the next begins.
 */

/** Node and every browser have it; the types of the language alone do not name it. */
declare const TextDecoder: new () => { decode(bytes: Uint8Array): string };

const decoder = new TextDecoder();
let bytes = new Uint8Array(4096);

/** Makes room for `count` bytes from a place on. */
export function makeRoom(at: number, count: number): void {
  if (at + count <= bytes.length) return;
  const more = new Uint8Array(Math.max(2 * bytes.length, at + count));
  more.set(bytes);
  bytes = more;
}

/** The text from the start of the buffer up to a place. */
export function writtenText(end: number): string {
  return decoder.decode(bytes.subarray(0, end));
}

/** Writes one ASCII character, given by its code. */
export function writeCode(at: number, code: number): number {
  bytes[at] = code;
  return at + 1;
}

/** Writes what follows an arc's radii in path data: rotation 0, the large-arc flag, and the sweep flag, which is 1 for clockwise on the screen. */
export function writeFlags(at: number, large: boolean, clockwise: boolean): number {
  const out = bytes;
  out[at] = SPACE;
  out[at + 1] = NOUGHT;
  out[at + 2] = SPACE;
  out[at + 3] = large ? NOUGHT + 1 : NOUGHT;
  out[at + 4] = SPACE;
  out[at + 5] = clockwise ? NOUGHT + 1 : NOUGHT;
  out[at + 6] = SPACE;
  return at + 7;
}

/** Writes a text of ASCII characters; there must be room for it. */
export function writeAscii(at: number, text: string): number {
  for (let i = 0; i < text.length; i++) bytes[at + i] = text.charCodeAt(i);
  return at + text.length;
}

/** Copies what stands between two places. */
export function writeAgain(at: number, from: number, to: number): number {
  const out = bytes;
  for (let i = from; i < to; i++) out[at + i - from] = out[i]!;
  return at + to - from;
}

/** Whether the `count` bytes from one place on equal those from another. */
export function isWrittenAlike(one: number, other: number, count: number): boolean {
  for (let i = 0; i < count; i++) if (bytes[one + i] !== bytes[other + i]) return false;
  return true;
}

/** Most bytes that `writePicometres` takes. */
export const LONGEST_NUMBER = 36;

/** Writes a length, mm, rounded to at most nine decimal places, without trailing noughts and never as -0. */
export function writePicometres(start: number, mm: number): number {
  const out = bytes;
  const size = Math.abs(mm);
  let whole = Math.floor(size);
  let places = Math.round((size - whole) * 1e9) | 0;
  if (places === 1_000_000_000) {
    whole++;
    places = 0;
  }
  // The sign, then the digits before the point.
  let at = start;
  if (mm < 0 && (whole > 0 || places > 0)) out[at++] = MINUS;
  at = writeWhole(out, at, whole);
  if (places === 0) return at;
  // The nine decimals, three at a time, less the noughts at the end.
  out[at] = POINT;
  const first = (places / 1_000_000) | 0;
  const rest = places - first * 1_000_000;
  const second = (rest / 1000) | 0;
  writeThree(out, at + 1, first);
  writeThree(out, at + 4, second);
  writeThree(out, at + 7, rest - second * 1000);
  at += 10;
  while (out[at - 1] === NOUGHT) at--;
  return at;
}

/** Writes a length, mm, rounded to 0.001 mm as `Math.round` does, without trailing noughts and never as -0. */
export function writeMicrometres(start: number, mm: number): number {
  const out = bytes;
  const count = Math.round(mm * 1000);
  const size = Math.abs(count);
  const whole = Math.floor(size / 1000);
  const places = size - whole * 1000;
  let at = start;
  if (count < 0) out[at++] = MINUS;
  at = writeWhole(out, at, whole);
  if (places === 0) return at;
  out[at] = POINT;
  writeThree(out, at + 1, places);
  at += 4;
  while (out[at - 1] === NOUGHT) at--;
  return at;
}

/** Writes the digits before a point. */
function writeWhole(out: Uint8Array, start: number, whole: number): number {
  let at = start;
  if (whole < 10) out[at++] = NOUGHT + whole;
  else if (whole < 1000) {
    if (whole >= 100) out[at++] = THREE_DIGITS[3 * whole]!;
    out[at] = THREE_DIGITS[3 * whole + 1]!;
    out[at + 1] = THREE_DIGITS[3 * whole + 2]!;
    at += 2;
  } else at = writeAscii(at, `${whole}`);
  return at;
}

function writeThree(out: Uint8Array, at: number, digits: number): void {
  const place = 3 * digits;
  out[at] = THREE_DIGITS[place]!;
  out[at + 1] = THREE_DIGITS[place + 1]!;
  out[at + 2] = THREE_DIGITS[place + 2]!;
}

const SPACE = 32;
const MINUS = 45;
const POINT = 46;
const NOUGHT = 48;
/** The digits of 000 to 999, one after the other. */
const THREE_DIGITS = Uint8Array.from(
  Array.from({ length: 1000 }, (_, number) => `${number}`.padStart(3, '0')).join(''),
  (digit) => NOUGHT + Number(digit),
);
