/** Moisture content in %, or the air it settles in: °C and % relative humidity. */
export type Moisture = number | { readonly temperature: number; readonly humidity: number };

/** The coldest and hottest air, °C, that Wood Handbook Table 4-2 covers (30 °F and 270 °F). */
export const AIR_COVERED: { readonly least: number; readonly most: number } = { least: -1.2, most: 132.3 };

/**
 * The moisture content, %, that wood settles at in air of this temperature (°C) and relative humidity (%).
 *
 * Hailwood–Horrobin with the constants of Wood Handbook eq. 4-5 (FPL-GTR-190), metric form after FPL-RN-0268 (formula W1). Any
 * species. Within 0.05 points of Table 4-2 where it was compared (10 to 32 °C, 30 to 90 %). 0 % humidity gives 0.
 *
 * @throws RangeError for humidity outside 0–100 % or a temperature that Table 4-2 does not cover.
 * @example equilibriumMoisture(20, 50) // 9.271
 */
export function equilibriumMoisture(temperature: number, humidity: number): number {
  if (!(humidity >= 0 && humidity <= 100)) {
    throw new RangeError(`relative humidity must be 0 to 100 %, got ${humidity}`);
  }
  if (!(temperature >= AIR_COVERED.least && temperature <= AIR_COVERED.most)) {
    throw new RangeError(`temperature must be ${AIR_COVERED.least} to ${AIR_COVERED.most} °C, got ${temperature}`);
  }
  const T = temperature;
  const h = humidity / 100;
  const W = 349 + 1.29 * T + 0.0135 * T * T;
  const K = 0.805 + 0.000736 * T - 0.00000273 * T * T;
  const K1 = 6.27 - 0.00938 * T - 0.000303 * T * T;
  const K2 = 1.91 + 0.0407 * T - 0.000293 * T * T;
  const Kh = K * h;
  const oneHydrate = K1 * Kh;
  const twoHydrates = K1 * K2 * Kh * Kh;
  return (1800 / W) * (Kh / (1 - Kh) + (oneHydrate + 2 * twoHydrates) / (1 + oneHydrate + twoHydrates));
}

/** Moisture content, %, given as itself or as the air the wood settles in. Errors as {@link equilibriumMoisture}. */
export function moistureContent(moisture: Moisture): number {
  return typeof moisture === 'number' ? moisture : equilibriumMoisture(moisture.temperature, moisture.humidity);
}
