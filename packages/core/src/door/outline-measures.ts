import { arcAngle, type Chain, curveLength } from '@fielded/geometry';

/** Area within a closed chain that runs anticlockwise, mm²: Green's theorem, ½Σ(x₀y₁ − x₁y₀), and each arc's segment (formula A5). */
export function areaWithin(chain: Chain): number {
  let twice = 0;
  for (const c of chain) {
    twice += c.x0 * c.y1 - c.x1 * c.y0;
    const angle = arcAngle(c);
    twice += c.turn * c.r ** 2 * (angle - Math.sin(angle));
  }
  return twice / 2;
}

/** Length of an outline, mm. */
export function outlineLength(chain: Chain): number {
  return chain.reduce((sum, c) => sum + curveLength(c), 0);
}
