import type { Units } from '@fielded/core';

/** A computed length as the job file keeps it, in the unit shown: without that unit where it is the file's own. */
export function writeLength(mm: number, shown: Units, file: Units): string | number {
  const digits = (value: number, places: number) => Number(value.toFixed(places));
  if (shown === 'mm') return file === 'mm' ? digits(mm, 3) : `${digits(mm, 3)} mm`;
  const inches = (mm * 10) / 254;
  const parts = Math.round(inches * 64);
  if (Math.abs(inches * 64 - parts) < 1e-7 && parts > 0) return `${fraction(parts)}${file === 'in' ? '' : ' in'}`;
  return file === 'in' ? digits(inches, 5) : `${digits(inches, 5)} in`;
}

/** 64ths as a mixed fraction in lowest terms. @example fraction(80) // '1-1/4' */
function fraction(parts: number): string {
  const whole = Math.floor(parts / 64);
  let top = parts % 64;
  let bottom = 64;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return String(whole);
  return whole === 0 ? `${top}/${bottom}` : `${whole}-${top}/${bottom}`;
}
