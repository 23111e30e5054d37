import {
  type Chain,
  type Curve,
  chainExtent,
  findSelfCrossing,
  fitBezier,
  isLongerPath,
  line,
  SAME_LENGTH,
  svgArc,
} from '@fielded/geometry';
import svgpath from 'svgpath';
import { LONGEST, toMillimetres, type Units } from '../measure/length.ts';
import { type ToldFault, tellFault } from '../problem/say-fault.ts';

/** More pieces than any profile has, and as many as are searched for crossings in a moment. */
const MOST_PIECES = 6000;

/**
 * The chain that SVG path data draws, from the edge to the face, or what is wrong with it.
 *
 * Cut coordinates: x = in from the edge, y = depth below the worked face, in the file's unit; mm out. Lines and circular
 * arcs are kept exactly; `C Q S T` and elliptical arcs are fitted with tangent arcs within 0.005 mm. Strokes outside
 * the wood at either end (up the edge, along the face, the closing stroke of `Z`) are left out: the profile runs on past its
 * ends anyway. Refused: what is not path data, more than one path, an outline from the face to the edge, one that
 * takes no wood, one that crosses itself. One that doubles back is read.
 *
 * @example readOutline('M 0 9 H 12 L 30 2 V 0', 'mm') // { chain: three lines }
 */
export function readOutline(path: string, units: Units): { readonly chain: Chain } | ToldFault {
  const drawn = drawPath(path, units);
  if ('sentence' in drawn) return drawn;
  const chain = trimOutside(drawn.chain, drawn.closed);
  const first = chain[0];
  const last = chain.at(-1);
  if (first === undefined || last === undefined) return tellFault('fault.outline-empty', {});
  const rises = last.y1 - first.y0;
  if (rises > SAME_LENGTH || (rises >= -SAME_LENGTH && first.x0 > last.x1))
    return tellFault(first.x0 > last.x1 ? 'fault.outline-reversed' : 'fault.outline-reversed.deeper', {});
  const { reach, depth } = chainExtent(chain);
  if (reach <= SAME_LENGTH || depth <= SAME_LENGTH) return tellFault('fault.outline-outside', {});
  const crossing = findSelfCrossing(chain);
  if (crossing === 'tangled') return tellFault('fault.outline-tangled', {});
  if (crossing !== null) return tellFault('fault.outline-crosses-itself', { x: crossing.x, y: crossing.y });
  return { chain };
}

/** Curves end to start, and whether the path was closed with Z. */
export interface Drawn {
  readonly chain: Curve[];
  readonly closed: boolean;
}

/** The curves that SVG path data draws, as they stand in it, mm; or what is wrong with it. */
export function drawPath(path: string, units: Units): Drawn | ToldFault {
  if (path.trim() === '') return tellFault('fault.outline-unreadable.empty', {});
  if (isLongerPath(path, MOST_PIECES)) return TOO_LONG;
  const parsed = svgpath(path) as ReturnType<typeof svgpath> & {
    readonly err: string;
    readonly segments: readonly unknown[];
  };
  if (parsed.err !== '') return explainSyntax(path, parsed.err);
  // The library takes R for a curve through points, which no path data of SVG has.
  const foreign = path.search(/r/i);
  if (foreign >= 0) return tellFault('fault.outline-unreadable', { rest: path.slice(foreign, foreign + 20) });
  // With the M at its start and a Z at its end; strokes of no length count like any others.
  if (parsed.segments.length > MOST_PIECES + 2) return TOO_LONG;
  const chain: Curve[] = [];
  let closed = false;
  let several = false;
  let wild = false;
  let x = 0;
  let y = 0;
  const add = (curves: readonly Curve[]) => {
    for (const c of curves) {
      if (c.turn === 0 && Math.hypot(c.x1 - x, c.y1 - y) <= SAME_LENGTH) continue;
      // Each piece starts where the last one kept ends, so the chain has no gaps.
      chain.push(c.x0 === x && c.y0 === y ? c : { ...c, x0: x, y0: y });
      x = c.x1;
      y = c.y1;
    }
  };
  const mm = (value: number) => {
    const length = toMillimetres(value, units);
    if (!(Math.abs(length) <= LONGEST)) wild = true;
    return length;
  };
  let atX = 0;
  let atY = 0;
  // Each command continues from the last point: from the exact one of the path, or from the end of the last piece kept.
  parsed.abs().unshort();
  parsed.iterate(([letter, ...numbers], index) => {
    if (wild || several || chain.length > MOST_PIECES) return;
    const k = numbers as number[];
    if (closed || (letter === 'M' && index > 0)) several = true;
    else if (letter === 'M') [x, y] = [mm(k[0]!), mm(k[1]!)];
    else if (letter === 'Z') closed = true;
    else if (letter === 'H') add([line(x, y, mm(k[0]!), atY)]);
    else if (letter === 'V') add([line(x, y, atX, mm(k[0]!))]);
    else if (letter === 'L') add([line(x, y, mm(k[0]!), mm(k[1]!))]);
    else if (letter === 'A') {
      const [rx, ry] = [toMillimetres(k[0]!, units), toMillimetres(k[1]!, units)];
      if (!Number.isFinite(rx + ry + k[2]!)) wild = true;
      const shape = { rx, ry, tilt: k[2]!, large: k[3] === 1, sweep: k[4] === 1 };
      const [endX, endY] = [mm(k[5]!), mm(k[6]!)];
      if (!wild) add(svgArc(x, y, endX, endY, shape));
    } else {
      const points = [{ x, y }];
      for (let i = 0; i < k.length; i += 2) points.push({ x: mm(k[i]!), y: mm(k[i + 1]!) });
      if (!wild) add(fitBezier(points).chain);
    }
    // Where the path itself stands now, strokes of no length among it.
    if (letter !== 'V' && letter !== 'Z') atX = mm(letter === 'H' ? k[0]! : k.at(-2)!);
    if (letter !== 'H' && letter !== 'Z') atY = mm(k.at(-1)!);
  });
  if (wild) return tellFault('fault.out-of-range.path', {});
  if (several) return tellFault('fault.outline-several', {});
  if (chain.length > MOST_PIECES) return TOO_LONG;
  return { chain, closed };
}

const TOO_LONG = tellFault('fault.too-many.strokes', { most: MOST_PIECES });

function explainSyntax(path: string, error: string): ToldFault {
  const at = Number(/at pos (\d+)/.exec(error)?.[1] ?? 0);
  const rest = path.slice(at, at + 20);
  return rest === '' ? tellFault('fault.outline-unreadable.end', {}) : tellFault('fault.outline-unreadable', { rest });
}

/** Leaves out the straight strokes at either end that lie outside the wood, and for a closed path the way back up the edge. */
function trimOutside(chain: readonly Curve[], closed: boolean): Chain {
  const beyondEdge = (c: Curve) => c.turn === 0 && c.x0 <= SAME_LENGTH && c.x1 <= SAME_LENGTH;
  const aboveFace = (c: Curve) => c.turn === 0 && c.y0 <= SAME_LENGTH && c.y1 <= SAME_LENGTH;
  let from = 0;
  let to = chain.length;
  while (closed && to > 0 && beyondEdge(chain[to - 1]!)) to--;
  while (to > 0 && aboveFace(chain[to - 1]!)) to--;
  while (from < to && beyondEdge(chain[from]!)) from++;
  return chain.slice(from, to);
}
