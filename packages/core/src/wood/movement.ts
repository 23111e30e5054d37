/** Moisture contents, %, between which the coefficients of Table 13-5 hold. */
const COEFFICIENT_HOLDS = { least: 6, most: 14 };

/** Above this moisture content, %, the handbook lets no formula be used: shrinkage starts there in most species. */
export const MOST_MOISTURE = 30;

/** Movement coefficients of one wood along one axis. */
export interface Grain {
  /** Change per 1 % of moisture as a part of the size (Table 13-5). */
  readonly coefficient: number;
  /** % from green to oven dry in the same direction (Table 4-3). */
  readonly shrinkage: number;
  /** Moisture, %, below which it shrinks; default 30. */
  readonly fibreSaturation?: number;
}

/** Which of the handbook's formulas a change was computed by. */
export type MovementFormula = '13-2' | '13-3';

/**
 * The formula that holds between two moisture contents: eq. 13-2 when both lie in 6–14 %, otherwise eq. 13-3.
 */
export function movementFormula(from: number, to: number): MovementFormula {
  const holds = (moisture: number) => moisture >= COEFFICIENT_HOLDS.least && moisture <= COEFFICIENT_HOLDS.most;
  return holds(from) && holds(to) ? '13-2' : '13-3';
}

/**
 * How much a size of wood changes between two moisture contents; positive swells.
 *
 * `size` in any unit, measured at moisture `from`; the answer is in the same unit. Wood Handbook (FPL-GTR-190) ch. 13 (formula W2):
 * eq. 13-2, ΔD = D·C·(M₂ − M₁), when both moistures lie in 6–14 %; otherwise eq. 13-3,
 * ΔD = D·(M₂ − M₁) / (100·F/S − F + M₁), with fibre saturation F = 30 as printed (22 for western redcedar, ours, so
 * that both formulas agree for it too). The two agree at M₁ = 10 % and differ by at most 2 % of the change elsewhere
 * in 6–14 %.
 *
 * @throws RangeError for a moisture outside 0–30 %.
 * @example moveWood(232, 8, 11, { coefficient: 0.00245, shrinkage: 7 }) // 1.705, the handbook's example
 */
export function moveWood(size: number, from: number, to: number, grain: Grain): number {
  for (const moisture of [from, to]) {
    if (!(moisture >= 0 && moisture <= MOST_MOISTURE)) {
      throw new RangeError(`moisture content must be 0 to ${MOST_MOISTURE} %, got ${moisture}`);
    }
  }
  if (movementFormula(from, to) === '13-2') return size * grain.coefficient * (to - from);
  const F = grain.fibreSaturation ?? 30;
  // Wetter than fibre saturation is as wet as fibre saturation: the cell walls are full.
  const start = Math.min(from, F);
  return (size * (Math.min(to, F) - start)) / ((100 * F) / grain.shrinkage - F + start);
}
