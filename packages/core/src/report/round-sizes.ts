import type { Units } from '../measure/length.ts';

/** What rounding of a sum may leave over, in steps. */
const ROUNDING = 1e-6;

/** A size in figures that can be set, the roundest first: 0.01 mm; 1/64 in, or else a thousandth of an inch. */
export function roundSizes(mm: number, units: Units): readonly number[] {
  if (units === 'mm') return [nearest(mm, 100)];
  return [inInches(nearest(mm / 25.4, 64)), inInches(nearest(mm / 25.4, 1000))];
}

/** A size no smaller, in figures that a rule shows: 0.1 mm, or 1/64 in. */
export function roundUp(mm: number, units: Units): number {
  if (units === 'mm') return Math.ceil(mm * 10 - ROUNDING) / 10;
  return inInches(Math.ceil((mm / 25.4) * 64 - ROUNDING) / 64);
}

/** A size no larger, in figures that a rule shows. */
export function roundDown(mm: number, units: Units): number {
  if (units === 'mm') return Math.floor(mm * 10 + ROUNDING) / 10;
  return inInches(Math.floor((mm / 25.4) * 64 + ROUNDING) / 64);
}

/** The nearest whole number of steps, `steps` to the unit. */
function nearest(value: number, steps: number): number {
  return Math.round(value * steps) / steps;
}

function inInches(inches: number): number {
  return (inches * 254) / 10;
}
