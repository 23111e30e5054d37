import type { Units } from './length.ts';

const PARTS_PER_INCH = 64;

/**
 * A length for a person to read, with its unit, in the file's own unit.
 *
 * Millimetres are rounded to `digits` decimals and lose trailing noughts: `6.4 mm`. Inches are given as a fraction to
 * the nearest 1/64: `1-1/4 in`; where that had to be rounded it is marked and the decimal stands beside it, two digits
 * finer than in mm: `≈13/64 in (0.2087 in)`, unless the fraction's own decimal is the same. Less than 1/32 in that is no whole 64th is given as the decimal alone,
 * since a fraction would tell too little. A negative length carries a true minus sign.
 *
 * @example formatLength(6.4, 'mm')   // '6.4 mm'
 * @example formatLength(19.05, 'in') // '3/4 in'
 */
export function formatLength(mm: number, units: Units, digits = 2): string {
  if (!Number.isFinite(mm)) throw new RangeError(`formatLength: ${mm} is not a length`);
  if (units === 'mm') return `${formatNumber(mm, digits)} mm`;
  const inches = (mm * 10) / 254;
  const parts = Math.round(Math.abs(inches) * PARTS_PER_INCH);
  const off = Math.abs(Math.abs(inches) * PARTS_PER_INCH - parts);
  if (off < 1e-6) return `${formatFraction(parts, inches)} in`;
  const decimal = `${formatNumber(inches, digits + 2)} in`;
  if (parts < 2) return decimal;
  // Nearer to the fraction than the decimal can tell.
  if (decimal === `${formatNumber((Math.sign(inches) * parts) / PARTS_PER_INCH, digits + 2)} in`)
    return `${formatFraction(parts, inches)} in`;
  return `≈${formatFraction(parts, inches)} in (${decimal})`;
}

/**
 * A number rounded half away from nothing to `digits` decimals, without trailing noughts and never as -0.
 *
 * @example formatNumber(-0.125, 2) // '−0.13'
 */
export function formatNumber(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`formatNumber: ${value} is not a number`);
  const size = roundDecimal(Math.abs(value), digits).toFixed(digits);
  const short = digits > 0 ? size.replace(/\.?0+$/, '') : size;
  return value < 0 && Number(short) !== 0 ? `−${short}` : short;
}

/** Rounds on the decimal reading of the number, so that 1.005 to two digits is 1.01 although the double lies below. */
function roundDecimal(value: number, digits: number): number {
  const shifted = Number(`${value}e${digits}`);
  return Number.isFinite(shifted) ? Number(`${Math.round(shifted)}e-${digits}`) : value;
}

function formatFraction(parts: number, sign: number): string {
  const whole = Math.floor(parts / PARTS_PER_INCH);
  let top = parts % PARTS_PER_INCH;
  let bottom = PARTS_PER_INCH;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const minus = sign < 0 && parts > 0 ? '−' : '';
  if (top === 0) return `${minus}${whole}`;
  return whole === 0 ? `${minus}${top}/${bottom}` : `${minus}${whole}-${top}/${bottom}`;
}
