import { arcAngle, curveLength, pointAlong } from '../curve/along.ts';
import { type Curve, withEnds } from '../curve/curve.ts';
import { turnBetween } from '../curve/heading.ts';
import type { Loop } from '../loop/loop.ts';

/** Ends closer than this (mm) are one place: the crossing of two nearly tangent curves may be off by as much along them. */
const SAME_PLACE = 1e-7;

/** A ring whose area is less than this (mm) times its length is a trace of rounding between curves that touch. */
const THINNEST = 1e-8;

/** Numbers places: points within `SAME_PLACE` of each other get one number. A grid of cells finds them. */
class Places {
  private readonly cells = new Map<string, number[]>();
  private readonly xs: number[] = [];
  private readonly ys: number[] = [];

  numberOf(x: number, y: number): number {
    const column = Math.round(x / SAME_PLACE);
    const row = Math.round(y / SAME_PLACE);
    for (let i = column - 1; i <= column + 1; i++) {
      for (let k = row - 1; k <= row + 1; k++) {
        for (const n of this.cells.get(`${i} ${k}`) ?? [])
          if (Math.hypot(this.xs[n]! - x, this.ys[n]! - y) <= SAME_PLACE) return n;
      }
    }
    const number = this.xs.push(x) - 1;
    this.ys.push(y);
    const key = `${column} ${row}`;
    this.cells.set(key, [...(this.cells.get(key) ?? []), number]);
    return number;
  }
}

/** An open chain shorter than this (mm) is a trace of rounding where two curves nearly touch. */
const STRAY = 1e-3;

interface Part {
  readonly curve: Curve;
  readonly from: number;
  readonly to: number;
  used: boolean;
}

/**
 * Joins parts end to start into loops: rings where they come back to their start, open chains where they do not. Where several parts
 * leave one place, the one that turns most to the left is taken. A part and its reverse cancel each other, parts that coincide count
 * once, and rings without area are left out.
 */
export function stitch(curves: readonly Curve[]): Loop[] {
  const places = new Places();
  const parts = withoutDoubles(
    curves.map((curve) => ({
      curve,
      from: places.numberOf(curve.x0, curve.y0),
      to: places.numberOf(curve.x1, curve.y1),
      used: false,
    })),
  );
  const leaving = new Map<number, Part[]>();
  const arriving = new Map<number, number>();
  for (const part of parts) {
    leaving.set(part.from, [...(leaving.get(part.from) ?? []), part]);
    arriving.set(part.to, (arriving.get(part.to) ?? 0) + 1);
  }
  const loops: Loop[] = [];
  // Open chains start where more parts leave than arrive; all parts left after them form rings.
  const begins = parts.filter(({ from }) => (leaving.get(from)?.length ?? 0) > (arriving.get(from) ?? 0));
  for (const start of [...begins, ...parts]) if (!start.used) loops.push(...follow(start, leaving));
  return loops.filter(isMoreThanRounding);
}

/** The parts without those that another one repeats or cancels, and without lines of no length. */
function withoutDoubles(parts: Part[]): Part[] {
  const kept = new Map<string, Part>();
  for (const part of parts) {
    const middle = middleOf(part.curve);
    const where = `${Math.round(middle.x / 1e-6)} ${Math.round(middle.y / 1e-6)}`;
    const back = `${part.to} ${part.from} ${where}`;
    if (part.from === part.to && part.curve.turn === 0) continue;
    if (kept.has(back)) kept.delete(back);
    else kept.set(`${part.from} ${part.to} ${where}`, part);
  }
  return [...kept.values()];
}

/** Follows parts until none leaves the last place. Each time the way comes back to a place it has passed, that ring is taken out of it. */
function follow(start: Part, leaving: ReadonlyMap<number, Part[]>): Loop[] {
  const rings: Loop[] = [];
  let way: Part[] = [];
  let part: Part | undefined = start;
  while (part !== undefined) {
    part.used = true;
    way.push(part);
    const { curve, to } = part;
    const back = way.findIndex(({ from }) => from === to);
    if (back >= 0) {
      rings.push({ curves: joined(way.slice(back), true), closed: true });
      way = way.slice(0, back);
    }
    part = mostToTheLeft(
      curve,
      (leaving.get(to) ?? []).filter(({ used }) => !used),
    );
  }
  return way.length === 0 ? rings : [...rings, { curves: joined(way, false), closed: false }];
}

/** The curves of parts; where two parts meet at one place, the second starts exactly where the first ends. */
function joined(parts: readonly Part[], closed: boolean): Curve[] {
  const curves: Curve[] = [];
  for (const { curve } of parts) {
    const last = curves.at(-1);
    curves.push(last === undefined ? curve : withEnds(curve, last.x1, last.y1, curve.x1, curve.y1));
  }
  if (closed) {
    const last = curves[curves.length - 1]!;
    curves[curves.length - 1] = withEnds(last, last.x0, last.y0, curves[0]!.x0, curves[0]!.y0);
  }
  return curves;
}

function mostToTheLeft(before: Curve, parts: readonly Part[]): Part | undefined {
  if (parts.length < 2) return parts[0];
  const a = pointAlong(before, 1, arcAngle(before));
  const bend = ({ curve }: Part) => turnBetween(a, pointAlong(curve, 0, arcAngle(curve)));
  return parts.reduce((best, part) => (bend(part) > bend(best) ? part : best));
}

function middleOf(c: Curve) {
  return pointAlong(c, 0.5, arcAngle(c));
}

/** Whether a loop is more than a trace of rounding: a ring with an area, or an open chain with a length. */
function isMoreThanRounding({ curves, closed }: Loop): boolean {
  let area = 0;
  let length = 0;
  for (const c of curves) {
    const angle = arcAngle(c);
    area += (c.x0 * c.y1 - c.x1 * c.y0 + c.turn * c.r * c.r * (angle - Math.sin(angle))) / 2;
    length += curveLength(c);
  }
  return closed ? Math.abs(area) > THINNEST * length : length > STRAY;
}
