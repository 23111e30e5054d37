import type { Units } from '../measure/length.ts';

/** A setting in figures that can be set, and what the wanted figure is there. */
export interface Rounded {
  readonly setting: number;
  readonly value: number | null;
}

/** Tolerance for a rounded setting, mm: closer than a machine holds. */
const SERVES = 0.02;

/** Steps to the unit, the roundest first: hundredths of a mm; 64ths, then thousandths of an inch. */
const STEPS: Readonly<Record<Units, readonly number[]>> = { mm: [100, 1000, 1e6], in: [64, 1000, 10_000, 1e6] };

/**
 * The roundest setting near an exact one that is still good enough: the figure there is within 0.02 mm of the one wanted.
 */
export function roundSetting(
  exact: number,
  units: Units,
  read: (setting: number) => number | null,
  wanted: number,
): Rounded {
  const unit = units === 'mm' ? 1 : 25.4;
  for (const steps of STEPS[units]) {
    const setting =
      units === 'mm' ? Math.round(exact * steps) / steps : (Math.round((exact / unit) * steps) * 254) / (steps * 10);
    const value = read(setting);
    if (value !== null && Math.abs(value - wanted) <= SERVES) return { setting, value };
  }
  return { setting: exact, value: read(exact) };
}
