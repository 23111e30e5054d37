import type { Units } from '@fielded/core';

const INCH = 25.4;

/** The step of a drag or an arrow key, mm: 0.1 mm or 1/64 in; a tenth or a quarter of that when fine. */
export function dragStep(shown: Units, fine: boolean): number {
  if (shown === 'mm') return fine ? 0.01 : 0.1;
  return INCH / (fine ? 256 : 64);
}

/** The step of a stepper's button, mm: 0.5 mm or 1/32 in. */
export function buttonStep(shown: Units): number {
  return shown === 'mm' ? 0.5 : INCH / 32;
}

/** The nearest whole number of steps, mm. */
export function snap(mm: number, step: number): number {
  return Math.round(mm / step) * step;
}

/** The next whole number of steps above or below, mm: 6.4 goes to 6.5 and 6 by steps of 0.5. */
export function nextStep(mm: number, step: number, way: 1 | -1): number {
  const count = mm / step;
  const near = Math.round(count);
  const whole = Math.abs(count - near) < 1e-6 ? near + way : way > 0 ? Math.ceil(count) : Math.floor(count);
  return whole * step;
}
