import { type Chain, type Curve, curveLength, type Point } from '@fielded/geometry';
import { fitCircle } from './fit-circle.ts';

/** An arc of a traced outline: how far in it lies, its radius and how uncertain that is, mm; the round radius it may have been drawn with. */
export interface TracedArc {
  readonly from: number;
  readonly to: number;
  readonly radius: number;
  readonly uncertainty: number;
  /** The nearest whole number of half millimetres, where that lies within 0.02 mm of what was traced; null elsewhere. */
  readonly nominal: number | null;
  /** How far the nominal arc lies from the traced one in the middle, mm; 0 without one. */
  readonly deviation: number;
}

/** What a point of the edge scatters at 2 % noise, pixels, and by how much the formula was found too hopeful on traced arcs. */
const SCATTER = 0.05;
const TOO_HOPEFUL = 1.6;
/** A nominal radius may move the middle of its arc by this, mm. */
const LEAST_SEEN = 0.02;
/** Flatter arcs, mm, are lines that the scatter bent. */
const LEAST_BOW = 0.1;
/** Neighbours that bend the same way are one arc where their radii differ by less than this part. */
const ALIKE = 0.3;
/** This much of either end is left out of a fit, mm: corners are rounded. */
const END = 0.3;

/**
 * The arcs of a traced surface (its points x in, y below the face, \`pixel\` mm apart), each fitted anew to all its points, with the uncertainty of its radius
 * (formula T3): σ_R = (σ/√n)/√(1 − c₁²/c₂), c₁ = sin α/α, c₂ = ½ + sin 2α/(4α), α half the angle and n the number of points.
 */
export function listArcs(chain: Chain, points: readonly Point[], pixel: number): TracedArc[] {
  return alike(chain).flatMap((run) => {
    const xs = run.flatMap(({ x0, x1 }) => [x0, x1]);
    const [from, to] = [Math.min(...xs), Math.max(...xs)];
    const own = points.filter(({ x }) => x > from + END && x < to - END);
    if (own.length < 12) return [];
    const radius = fitCircle(own)?.r ?? Number.POSITIVE_INFINITY;
    const length = run.reduce((sum, c) => sum + curveLength(c), 0);
    const half = length / radius / 2;
    const bow = radius * (1 - Math.cos(half));
    if (!(bow > LEAST_BOW) || half > Math.PI) return [];
    const uncertainty = TOO_HOPEFUL * radiusUncertainty(half, own.length, SCATTER * pixel);
    const round = Math.round(radius * 2) / 2;
    // The same chord with another radius bows by another amount.
    const chord = radius * Math.sin(half);
    const away =
      round > chord ? Math.abs(round - Math.sqrt(round * round - chord * chord) - bow) : Number.POSITIVE_INFINITY;
    const nominal = away <= LEAST_SEEN ? round : null;
    return [{ from, to, radius, uncertainty, nominal, deviation: nominal === null ? 0 : away }];
  });
}

/** Standard deviation of a radius fitted to n points of an arc, half its angle in radians, that scatter by sigma. */
export function radiusUncertainty(half: number, n: number, sigma: number): number {
  const c1 = Math.sin(half) / half;
  const c2 = 0.5 + Math.sin(2 * half) / (4 * half);
  return sigma / Math.sqrt(n) / Math.sqrt(Math.max(1e-12, 1 - (c1 * c1) / c2));
}

/** Arcs one after another that bend the same way by about as much: the fit halves what was drawn as one. */
function alike(chain: Chain): Curve[][] {
  const runs: Curve[][] = [];
  for (const c of chain) {
    if (c.turn === 0) continue;
    const run = runs[runs.length - 1];
    const last = run?.[run.length - 1];
    const joins = last !== undefined && last.turn === c.turn && last.x1 === c.x0 && last.y1 === c.y0;
    if (joins && Math.abs(last.r - c.r) < ALIKE * Math.max(last.r, c.r)) run!.push(c);
    else runs.push([c]);
  }
  return runs;
}
