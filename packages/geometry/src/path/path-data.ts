import type { Chain, Curve } from '../curve/curve.ts';
import type { Loop } from '../loop/loop.ts';
import {
  isWrittenAlike,
  LONGEST_NUMBER,
  makeRoom,
  writeAgain,
  writeAscii,
  writeCode,
  writeFlags,
  writeMicrometres,
  writePicometres,
  writtenText,
} from './path-ink.ts';

/**
 * How path data is written: `top` is the height that y is measured down from (null: y is written as it is), `write` writes a number,
 * `spaced` says whether a space stands between a letter and its numbers.
 */
interface Pen {
  readonly top: number | null;
  readonly write: (at: number, length: number) => number;
  readonly spaced: boolean;
}

/**
 * A chain as SVG path data with circular arcs, in mm to nine decimals, y measured downwards from height `top`; closed with Z if asked.
 *
 * The one place where the engine's y-up becomes SVG's y-down. Arcs of more than half a turn have the large-arc flag. Curves whose
 * ends are the same once written are left out; an empty chain gives an empty string.
 *
 * @example pathData([line(0, 20, 5, 20), line(5, 20, 5, 0)], 20, false) // 'M 0 0 L 5 0 L 5 20'
 */
export function pathData(chain: Chain, top: number, closed: boolean): string {
  return writtenText(writePath(0, chain, closed, { top, write: writePicometres, spaced: true }));
}

/**
 * A chain as SVG path data whose y is a depth and already grows downwards, as a cut's does. Else the same as `pathData`.
 *
 * @example depthPath([line(0, 9, 5, 9), line(5, 9, 5, 0)]) // 'M 0 9 L 5 9 L 5 0'
 */
export function depthPath(chain: Chain): string {
  return writtenText(writePath(0, chain, false, AS_DEPTHS));
}

const AS_DEPTHS: Pen = { top: null, write: writePicometres, spaced: true };

/**
 * Loops as SVG path data without spare spaces, y written as it is: for loops on the paper, where y already grows downwards. `write`
 * turns a number into at most 36 ASCII characters.
 *
 * @example loopsData([rectangle({ x0: 0, y0: 0, x1: 4, y1: 2 })], String) // 'M0 0L4 0L4 2L0 2Z'
 */
export function loopsData(loops: readonly Loop[], write: (length: number) => string): string {
  return writeLoops(loops, { top: null, write: (at, length) => writeAscii(at, write(length)), spaced: false });
}

/**
 * Loops on the paper as `loopsData`, every number to 0.001 mm: quicker than with a `write` of its own, since no number becomes a text
 * by itself.
 *
 * @example paperData([{ curves: [line(0, 0.12345, 4, -0.0001)], closed: false }]) // 'M0 0.123L4 0'
 */
export function paperData(loops: readonly Loop[]): string {
  return writeLoops(loops, ON_PAPER);
}

const ON_PAPER: Pen = { top: null, write: writeMicrometres, spaced: false };

function writeLoops(loops: readonly Loop[], pen: Pen): string {
  let at = 0;
  for (const { curves, closed } of loops) at = writePath(at, curves, closed, pen);
  return writtenText(at);
}

function writePath(start: number, chain: Chain, closed: boolean, pen: Pen): number {
  const first = chain[0];
  if (first === undefined) return start;
  const { top, spaced } = pen;
  makeRoom(start, LONGEST_STROKE);
  let at = writeLetter(start, MOVE, spaced);
  let point = at;
  at = writePoint(at, first.x0, first.y0, pen);
  let pointEnd = at;
  // Z draws the last line of a closed chain.
  const last = chain.length - 1;
  const drawn = closed && last > 0 && chain[last]!.turn === 0 ? last : last + 1;
  for (let i = 0; i < drawn; i++) {
    const c = chain[i]!;
    makeRoom(at, LONGEST_STROKE);
    const before = at;
    if (spaced) at = writeCode(at, SPACE);
    if (c.turn === 0) at = writeLetter(at, LINE, spaced);
    else {
      at = writeLetter(at, ARC, spaced);
      const radius = at;
      at = pen.write(at, c.r);
      const radiusEnd = at;
      at = writeAgain(writeCode(at, SPACE), radius, radiusEnd);
      // Anticlockwise with y up is anticlockwise to the eye: SVG's sweep flag 0.
      at = writeFlags(at, isLargeArc(c), c.turn > 0 !== (top !== null));
    }
    const end = at;
    at = writePoint(at, c.x1, c.y1, pen);
    // Are both ends the same as written? Then the curve is a trace of rounding; written as an arc it would read as a full circle.
    if (at - end === pointEnd - point && isWrittenAlike(point, end, at - end)) {
      at = before;
      continue;
    }
    point = end;
    pointEnd = at;
  }
  if (!closed) return at;
  if (spaced) at = writeCode(at, SPACE);
  return writeCode(at, CLOSE);
}

/** Writes x and y, y as the pen says. */
function writePoint(at: number, x: number, y: number, { top, write }: Pen): number {
  return write(writeCode(write(at, x), SPACE), top === null ? y : top - y);
}

function writeLetter(at: number, letter: number, spaced: boolean): number {
  const after = writeCode(at, letter);
  return spaced ? writeCode(after, SPACE) : after;
}

/** The most bytes that a stroke takes: an arc's four numbers with their spaces and flags, and a Z. */
const LONGEST_STROKE = 5 * LONGEST_NUMBER;
const SPACE = 32;
const MOVE = 77;
const LINE = 76;
const ARC = 65;
const CLOSE = 90;

/** Whether an arc turns through more than half a turn: its centre then lies on the arc's own side of the chord. */
function isLargeArc(c: Curve): boolean {
  return c.turn * ((c.x1 - c.x0) * (c.cy - c.y0) - (c.y1 - c.y0) * (c.cx - c.x0)) < 0;
}

/** The most numbers that a stroke of path data takes: those of an arc. */
const NUMBERS_PER_STROKE = 7;

/**
 * Whether path data holds more numbers than `strokes` strokes can take. Asked before the data is read, since the time that readers of
 * path data take grows with the square of a long run of numbers. Stops counting as soon as it knows.
 *
 * @example isLongerPath('M 0 9 H 12', 1) // false
 */
export function isLongerPath(path: string, strokes: number): boolean {
  const number = /(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?/gi;
  // Two more for the start.
  const most = strokes * NUMBERS_PER_STROKE + 2;
  for (let count = 0; number.exec(path) !== null; count++) if (count >= most) return true;
  return false;
}
