import { type Curve, fitBezier, isLongerPath, line, SAME_LENGTH, svgArc, withEnds } from '@fielded/geometry';
import { LONGEST, toMillimetres, type Units } from '../measure/length.ts';
import { type ToldFault, tellFault } from '../problem/say-fault.ts';
import { takeApart, writeOut } from './path-commands.ts';

/** More pieces than any profile has, and as many as are searched for crossings in a moment. */
const MOST_PIECES = 6000;

/** Curves end to start, and whether the path was closed with Z. */
export interface DrawnPath {
  readonly chain: Curve[];
  readonly closed: boolean;
}

/** The curves that SVG path data draws, as they stand in it, mm; or what is wrong with it. */
export function drawPath(path: string, units: Units): DrawnPath | ToldFault {
  if (path.trim() === '') return tellFault('fault.outline-unreadable.empty', {});
  if (isLongerPath(path, MOST_PIECES)) return TOO_LONG;
  const { segments, err } = takeApart(path);
  if (err !== '') return explainSyntax(path, err);
  // The library takes R for a curve through points, which no path data of SVG has.
  const foreign = path.search(/r/i);
  if (foreign >= 0) return tellFault('fault.outline-unreadable', { rest: path.slice(foreign, foreign + 20) });
  // With the M at its start and a Z at its end; strokes of no length count like any others.
  if (segments.length > MOST_PIECES + 2) return TOO_LONG;
  const pen = new Pen(units);
  for (const [index, [letter, ...numbers]] of writeOut(segments).entries()) pen.follow(letter, numbers, index);
  if (pen.wild) return tellFault('fault.out-of-range.path', {});
  if (pen.several) return tellFault('fault.outline-several', {});
  if (pen.chain.length > MOST_PIECES) return TOO_LONG;
  return { chain: pen.chain, closed: pen.closed };
}

/** Follows the commands of a path, absolute ones without short forms, and keeps the curves they draw, mm. */
class Pen {
  readonly chain: Curve[] = [];
  closed = false;
  /** Whether something follows the path's end: a second start, or any command after Z. */
  several = false;
  /** Whether a figure is longer than any profile. */
  wild = false;

  readonly #units: Units;
  /** The end of the last piece kept. */
  #x = 0;
  #y = 0;
  /** Where the path itself stands: strokes of no length move it too. */
  #atX = 0;
  #atY = 0;

  constructor(units: Units) {
    this.#units = units;
  }

  /** Draws one command, unless something was wrong already. */
  follow(letter: string, numbers: readonly number[], index: number): void {
    if (this.wild || this.several || this.chain.length > MOST_PIECES) return;
    if (this.closed || (letter === 'M' && index > 0)) this.several = true;
    else this.#draw(letter, numbers);
    if (letter !== 'V' && letter !== 'Z') this.#atX = this.#mm(letter === 'H' ? numbers[0]! : numbers.at(-2)!);
    if (letter !== 'H' && letter !== 'Z') this.#atY = this.#mm(numbers.at(-1)!);
  }

  #draw(letter: string, k: readonly number[]): void {
    if (letter === 'Z') this.closed = true;
    else if (letter === 'M') [this.#x, this.#y] = [this.#mm(k[0]!), this.#mm(k[1]!)];
    else if (letter === 'H') this.#drawLine(this.#mm(k[0]!), this.#atY);
    else if (letter === 'V') this.#drawLine(this.#atX, this.#mm(k[0]!));
    else if (letter === 'L') this.#drawLine(this.#mm(k[0]!), this.#mm(k[1]!));
    else if (letter === 'A') this.#drawArc(k);
    else this.#drawBezier(k);
  }

  #drawLine(x: number, y: number): void {
    this.#keep([line(this.#x, this.#y, x, y)]);
  }

  #drawArc(k: readonly number[]): void {
    const [rx, ry] = [toMillimetres(k[0]!, this.#units), toMillimetres(k[1]!, this.#units)];
    if (!Number.isFinite(rx + ry + k[2]!)) this.wild = true;
    const shape = { rx, ry, tilt: k[2]!, large: k[3] === 1, sweep: k[4] === 1 };
    const [x, y] = [this.#mm(k[5]!), this.#mm(k[6]!)];
    if (!this.wild) this.#keep(svgArc(this.#x, this.#y, x, y, shape));
  }

  #drawBezier(k: readonly number[]): void {
    const points = [{ x: this.#x, y: this.#y }];
    for (let i = 0; i < k.length; i += 2) points.push({ x: this.#mm(k[i]!), y: this.#mm(k[i + 1]!) });
    if (!this.wild) this.#keep(fitBezier(points).chain);
  }

  #keep(curves: readonly Curve[]): void {
    for (const c of curves) {
      if (c.turn === 0 && Math.hypot(c.x1 - this.#x, c.y1 - this.#y) <= SAME_LENGTH) continue;
      // Each piece starts where the last one kept ends, so the chain has no gaps.
      this.chain.push(c.x0 === this.#x && c.y0 === this.#y ? c : withEnds(c, this.#x, this.#y, c.x1, c.y1));
      this.#x = c.x1;
      this.#y = c.y1;
    }
  }

  #mm(value: number): number {
    const length = toMillimetres(value, this.#units);
    if (!(Math.abs(length) <= LONGEST)) this.wild = true;
    return length;
  }
}

const TOO_LONG = tellFault('fault.too-many.strokes', { most: MOST_PIECES });

function explainSyntax(path: string, error: string): ToldFault {
  const at = Number(/at pos (\d+)/.exec(error)?.[1] ?? 0);
  const rest = path.slice(at, at + 20);
  return rest === '' ? tellFault('fault.outline-unreadable.end', {}) : tellFault('fault.outline-unreadable', { rest });
}
