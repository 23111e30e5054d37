import type { LineStretch } from './board.ts';
import type { DrawnDimension, Side } from './linear.ts';
import { isUpright } from './linear.ts';

/** A dimension in its tier, with the part of the tier that it needs for itself. */
export interface Placed {
  readonly drawn: DrawnDimension;
  readonly side: Side;
  /** The y of a level dimension line, the x of a plumb one. */
  readonly level: number;
  readonly low: number;
  readonly high: number;
}

/** Leaves out the part of an extension line that a tier further in has drawn already, and arrowheads drawn already, so that no line is painted twice. */
export function trimExtensions(placed: readonly Placed[]): DrawnDimension[] {
  const reached = new Map<string, number>();
  const arrowsDrawn = new Set<string>();
  const order = placed.map((_, i) => i).sort((a, b) => outward(placed[a]!) - outward(placed[b]!));
  const trimmed = placed.map(({ drawn }) => drawn);
  for (const i of order) {
    const { drawn, side } = placed[i]!;
    const [dimensionLine, ...extensions] = drawn.lines;
    const lines: LineStretch[] = [dimensionLine!];
    const upright = isUpright(side);
    const sign = side === 'above' || side === 'left' ? -1 : 1;
    for (const { x0, y0, x1, y1 } of extensions) {
      const key = `${side} ${(upright ? y0 : x0).toFixed(4)}`;
      const [from, to] = upright ? [x0 * sign, x1 * sign] : [y0 * sign, y1 * sign];
      const start = Math.max(from, reached.get(key) ?? -Infinity);
      if (start < to) lines.push(upright ? { x0: start * sign, y0, x1, y1 } : { x0, y0: start * sign, x1, y1 });
      reached.set(key, Math.max(to, start));
    }
    const arrows = drawn.arrows.filter((arrow) => {
      const key = [arrow.x, arrow.y, arrow.dx, arrow.dy].map((n) => n.toFixed(4)).join(' ');
      if (arrowsDrawn.has(key)) return false;
      arrowsDrawn.add(key);
      return true;
    });
    trimmed[i] = { ...drawn, lines, arrows };
  }
  return trimmed;
}

/** How far out a tier stands, comparable within its side. */
function outward({ side, level }: Placed): number {
  return side === 'above' || side === 'left' ? -level : level;
}
