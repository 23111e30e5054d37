import { arcAngle, type Chain } from './curve.ts';

/**
 * A chain as SVG path data with true arcs, full precision, y turned to run down from height `top`; closed with Z if asked.
 *
 * The one place where the engine's y-up becomes SVG's y-down. Arcs of more than half a turn carry the large-arc flag. An
 * empty chain gives an empty string.
 *
 * @example pathData([line(0, 20, 5, 20), line(5, 20, 5, 0)], 20, false) // 'M 0 0 L 5 0 L 5 20'
 */
export function pathData(chain: Chain, top: number, closed: boolean): string {
  const first = chain[0];
  if (first === undefined) return '';
  const down = (y: number) => plain(top - y);
  let data = `M ${plain(first.x0)} ${down(first.y0)}`;
  // A closing straight line is what Z draws.
  const last = chain.length - 1;
  const drawn = closed && last > 0 && chain[last]!.turn === 0 ? last : last + 1;
  for (let i = 0; i < drawn; i++) {
    const c = chain[i]!;
    if (c.turn === 0) data += ` L ${plain(c.x1)} ${down(c.y1)}`;
    // Anticlockwise with y up is anticlockwise to the eye: SVG's sweep flag 0.
    else
      data += ` A ${c.r} ${c.r} 0 ${arcAngle(c) > Math.PI ? 1 : 0} ${c.turn < 0 ? 1 : 0} ${plain(c.x1)} ${down(c.y1)}`;
  }
  return closed ? `${data} Z` : data;
}

/** Shortest exact decimal, never -0. */
function plain(value: number): string {
  return String(value === 0 ? 0 : value);
}
