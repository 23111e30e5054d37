/** Density of water, kg/m³, that specific gravity is referred to. */
const WATER = 1000;

/**
 * The weight of wood, kg/m³, water in it included.
 *
 * `gravity`: specific gravity on oven-dry weight and the volume at this `moisture` (%). Wood Handbook ch. 4:
 * ρ = ρ_w·G_M·(1 + M/100) (formula W4). Exact for the figures given; the wood itself varies by some 10 %.
 *
 * @throws RangeError for a gravity that is not positive or a moisture below 0.
 * @example woodDensity(0.4, 12) // 448
 */
export function woodDensity(gravity: number, moisture: number): number {
  if (!(gravity > 0)) throw new RangeError(`specific gravity must be above 0, got ${gravity}`);
  if (!(moisture >= 0)) throw new RangeError(`moisture content must be 0 % or more, got ${moisture}`);
  return WATER * gravity * (1 + moisture / 100);
}
