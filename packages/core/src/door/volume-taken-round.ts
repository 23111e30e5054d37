import { outlineLength } from './outline-measures.ts';
import { type ShapedPanel, shapedOutline } from './shaped-panel.ts';

/** What the cuts take of the thickness at a distance in from the edge, over stretches in which it runs smoothly, mm. */
export interface TakenStretch {
  readonly x0: number;
  readonly x1: number;
  readonly taken: (a: number) => number;
}

/**
 * Volume that the cuts take all round a shaped panel, mm³ (formula A6): ∫ d(a)·P(a) da, d what they take of the thickness a mm
 * within the edge, P the length of the outline there.
 *
 * Holds where no cut takes more further in, as D4 does. Gauss's rule of 12 points on every stretch, in an angle that takes
 * the upright ends of arcs off: 1e-9 of the volume for lines and arcs; under an outline of any shape so near only where none of its pieces vanishes on the way
 * in, else 1e-3 of it.
 */
export function volumeTakenRound(panel: ShapedPanel, stretches: readonly TakenStretch[]): number {
  const lengthAt = lengthsOf(
    panel,
    stretches.reduce((most, { x1 }) => Math.max(most, x1), 0),
  );
  return stretches.reduce((volume, { x0, x1, taken }) => volume + integrate(x0, x1, (a) => taken(a) * lengthAt(a)), 0);
}

/** ∫ f(a) da by Gauss's rule of 12 points, in an angle that takes the upright ends of arcs off. */
export function integrate(from: number, to: number, f: (a: number) => number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  return GAUSS.reduce((sum, [node, weight]) => {
    const angle = (Math.PI / 2) * node;
    return sum + ((weight * Math.PI * half * Math.cos(angle)) / 2) * f(middle + half * Math.sin(angle));
  }, 0);
}

/** Length of the outline at any distance in, up to `deepest`. */
function lengthsOf(panel: ShapedPanel, deepest: number): (inside: number) => number {
  if (panel.shaped.shape !== 'outline') return (inside) => outlineLength(shapedOutline(panel, inside));
  // The parallel of a free outline is expensive: compute it at Chebyshev points and interpolate.
  const nodes = Array.from({ length: POINTS }, (_, k) => Math.cos((Math.PI * k) / (POINTS - 1)));
  const lengths = nodes.map((node) => outlineLength(shapedOutline(panel, ((node + 1) / 2) * deepest)));
  return (inside) => interpolate(nodes, lengths, (2 * inside) / deepest - 1);
}

/** Points that an outline's parallel is taken at. */
const POINTS = 9;

/** The polynomial through values at Chebyshev's extreme points (barycentric form; Berrut and Trefethen 2004). */
function interpolate(nodes: readonly number[], values: readonly number[], at: number): number {
  let [above, below] = [0, 0];
  for (const [k, node] of nodes.entries()) {
    if (at === node) return values[k]!;
    const end = k === 0 || k === nodes.length - 1 ? 0.5 : 1;
    const weight = ((k % 2 === 0 ? 1 : -1) * end) / (at - node);
    above += weight * values[k]!;
    below += weight;
  }
  return above / below;
}

/** Nodes and weights of Gauss's rule of 12 points on [−1, 1] (Abramowitz and Stegun, table 25.4). */
const GAUSS: readonly (readonly [number, number])[] = [
  [0.1252334085114689, 0.2491470458134028],
  [0.3678314989981802, 0.2334925365383548],
  [0.5873179542866175, 0.2031674267230659],
  [0.7699026741943047, 0.1600783285433462],
  [0.9041172563704749, 0.1069393259953184],
  [0.9815606342467192, 0.0471753363865118],
].flatMap(([node, weight]) => [[-node!, weight!] as const, [node!, weight!] as const]);
