import { type Chain, type Curve, reverseCurve, reverseCurves } from '@fielded/geometry';

/** An outline of a DXF file: lines and arcs joined end to start, x right, y up, mm. */
export interface DxfOutline {
  readonly layer: string;
  readonly chain: Chain;
}

/** A line or arc that stands by itself in the file. */
export interface LoosePiece {
  readonly layer: string;
  readonly curve: Curve;
}

/**
 * Joins lines and arcs of a layer whose ends meet within `join` mm, turning them round where they were drawn the other way.
 * An outline runs the way its pieces follow each other in the file. Coordinates are finite.
 *
 * Every outline starts from the first piece not taken yet, and takes the earliest in the file that meets either of its ends.
 * The ends are found by their place, so that the time grows with the number of pieces and not with its square.
 */
export function joinLoose(loose: readonly LoosePiece[], join: number): DxfOutline[] {
  const ends = indexEnds(loose, join);
  const taken = new Set<number>();
  return loose.flatMap(({ layer, curve }, index) => {
    if (taken.has(index)) return [];
    taken.add(index);
    const joined: Joined = { back: [], forth: [curve], first: index, last: index };
    for (;;) {
      const { first, last } = endsOf(joined);
      const next = Math.min(
        earliest(ends, taken, layer, last.x1, last.y1),
        earliest(ends, taken, layer, first.x0, first.y0),
      );
      if (next === Number.POSITIVE_INFINITY) break;
      taken.add(next);
      attach(joined, loose[next]!.curve, next, join);
    }
    const chain = [...joined.back.reverse(), ...joined.forth];
    return [{ layer, chain: joined.first > joined.last ? reverseCurves(chain) : chain }];
  });
}

/** The ends of all pieces, by layer and by squares of twice the joining distance; in each the pieces in the file's order. */
interface Ends {
  readonly join: number;
  readonly squares: ReadonlyMap<string, { readonly index: number; readonly x: number; readonly y: number }[]>;
}

function indexEnds(loose: readonly LoosePiece[], join: number): Ends {
  const squares = new Map<string, { index: number; x: number; y: number }[]>();
  loose.forEach(({ layer, curve }, index) => {
    for (const [x, y] of [
      [curve.x0, curve.y0],
      [curve.x1, curve.y1],
    ] as const) {
      const key = squareKey(layer, Math.floor(x / (2 * join)), Math.floor(y / (2 * join)));
      const square = squares.get(key);
      if (square === undefined) squares.set(key, [{ index, x, y }]);
      else square.push({ index, x, y });
    }
  });
  return { join, squares };
}

function squareKey(layer: string, column: number, row: number): string {
  return `${column} ${row} ${layer}`;
}

/** The earliest piece not taken yet that has an end within the joining distance of a point; Infinity for none. */
function earliest({ join, squares }: Ends, taken: ReadonlySet<number>, layer: string, x: number, y: number): number {
  let found = Number.POSITIVE_INFINITY;
  // The distance reaches into one square or its neighbour; counted through, a coordinate past 1e10 would never end. The square of
  // the place itself counts too: in its very middle both others may be rounded to beyond it.
  const reached = (at: number) => new Set([at - join, at, at + join].map((place) => Math.floor(place / (2 * join))));
  for (const column of reached(x)) {
    for (const row of reached(y)) {
      const square = squares.get(squareKey(layer, column, row)) ?? [];
      const near = square.find((end) => !taken.has(end.index) && Math.hypot(end.x - x, end.y - y) <= join);
      if (near !== undefined) found = Math.min(found, near.index);
    }
  }
  return found;
}

/** A chain in the making, its pieces before the one it started from in `back`, the nearest first; and where its first and last piece stood in the file. */
interface Joined {
  readonly back: Curve[];
  readonly forth: Curve[];
  first: number;
  last: number;
}

function endsOf({ back, forth }: Joined): { readonly first: Curve; readonly last: Curve } {
  return { first: back.at(-1) ?? forth[0]!, last: forth.at(-1)! };
}

function attach(joined: Joined, c: Curve, index: number, join: number): void {
  const meets = (x0: number, y0: number, x1: number, y1: number) => Math.hypot(x1 - x0, y1 - y0) <= join;
  const { first, last } = endsOf(joined);
  const back = reverseCurve(c);
  const follows = meets(last.x1, last.y1, c.x0, c.y0) || meets(last.x1, last.y1, c.x1, c.y1);
  if (follows) {
    joined.forth.push({ ...(meets(last.x1, last.y1, c.x0, c.y0) ? c : back), x0: last.x1, y0: last.y1 });
    joined.last = index;
    return;
  }
  joined.back.push({ ...(meets(c.x1, c.y1, first.x0, first.y0) ? c : back), x1: first.x0, y1: first.y0 });
  joined.first = index;
}
