import type { Chain, Curve } from './curve.ts';
import type { Loop } from './loop.ts';

/** How path data writes numbers: x, y and radius, what parts a letter from them, and whether y is written growing downwards where it grows up. */
interface Pen {
  readonly x: (x: number) => string;
  readonly y: (y: number) => string;
  readonly radius: (r: number) => string;
  readonly gap: '' | ' ';
  readonly flipped: boolean;
}

/**
 * A chain as SVG path data with true arcs, to 1e-9 mm, y turned to run down from height `top`; closed with Z if asked.
 *
 * The one place where the engine's y-up becomes SVG's y-down. Arcs of more than half a turn carry the large-arc flag. Curves
 * shorter than can be written are left out; an empty chain gives an empty string.
 *
 * @example pathData([line(0, 20, 5, 20), line(5, 20, 5, 0)], 20, false) // 'M 0 0 L 5 0 L 5 20'
 */
export function pathData(chain: Chain, top: number, closed: boolean): string {
  const y = (height: number) => picometres(top - height);
  return writePath(chain, closed, { x: picometres, y, radius: picometres, gap: ' ', flipped: true });
}

/**
 * Loops as SVG path data without spare spaces, y as it is: for what lies on the paper already, where y grows downwards.
 *
 * @example loopsData([rectangle({ x0: 0, y0: 0, x1: 4, y1: 2 })], String) // 'M0 0L4 0L4 2L0 2Z'
 */
export function loopsData(loops: readonly Loop[], write: (length: number) => string): string {
  const pen: Pen = { x: write, y: write, radius: write, gap: '', flipped: false };
  return loops.map(({ curves, closed }) => writePath(curves, closed, pen)).join('');
}

function writePath(chain: Chain, closed: boolean, { x, y, radius, gap, flipped }: Pen): string {
  const first = chain[0];
  if (first === undefined) return '';
  let at = `${x(first.x0)} ${y(first.y0)}`;
  let data = `M${gap}${at}`;
  // A closing straight line is what Z draws.
  const last = chain.length - 1;
  const drawn = closed && last > 0 && chain[last]!.turn === 0 ? last : last + 1;
  for (let i = 0; i < drawn; i++) {
    const c = chain[i]!;
    const end = `${x(c.x1)} ${y(c.y1)}`;
    // What starts and ends in the same place as written is a trace of rounding; as an arc it would read as a whole circle.
    if (end === at) continue;
    at = end;
    if (c.turn === 0) data += `${gap}L${gap}${end}`;
    else {
      const r = radius(c.r);
      // Anticlockwise with y up is anticlockwise to the eye: SVG's sweep flag 0.
      const sweep = c.turn > 0 === flipped ? 0 : 1;
      data += `${gap}A${gap}${r} ${r} 0 ${isLargeArc(c) ? 1 : 0} ${sweep} ${end}`;
    }
  }
  return closed ? `${data}${gap}Z` : data;
}

/** Whether an arc turns through more than half a turn: its centre then lies to the other side of its chord. */
function isLargeArc(c: Curve): boolean {
  return c.turn * ((c.x1 - c.x0) * (c.cy - c.y0) - (c.y1 - c.y0) * (c.cx - c.x0)) < 0;
}

/**
 * A length as a decimal of at most nine places, never -0. Whole part and places are written as whole numbers of machine
 * size, which is several times as fast as the shortest decimal of a double, and most of the cost of a report.
 */
function picometres(mm: number): string {
  const size = Math.abs(mm);
  let whole = Math.floor(size);
  let places = Math.round((size - whole) * 1e9);
  if (places === 1e9) {
    whole++;
    places = 0;
  }
  if (places === 0) return mm < 0 && whole > 0 ? `-${whole}` : `${whole}`;
  let digits = 9;
  while (places % 10 === 0) {
    places /= 10;
    digits--;
  }
  return `${mm < 0 ? '-' : ''}${whole}.${`${places}`.padStart(digits, '0')}`;
}

/** Numbers that one stroke of path data takes at most: an arc's. */
const NUMBERS_PER_STROKE = 7;

/**
 * Whether path data holds more numbers than so many strokes can take: told before it is read, since readers of path data take
 * the square of a long run of numbers. Stops counting as soon as it knows.
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
