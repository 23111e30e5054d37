import { type Chain, type Curve, chainExtent, findSelfCrossing, SAME_LENGTH } from '@fielded/geometry';
import type { Units } from '../measure/length.ts';
import { type ToldFault, tellFault } from '../problem/say-fault.ts';
import { drawPath } from './draw-path.ts';

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
