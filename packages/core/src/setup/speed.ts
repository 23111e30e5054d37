import type { Head, Machine, Rules } from '../shop/shop.ts';

/** A speed of the machine, rpm, and the rim speed it gives, m/s; `tooSlow` where none that is allowed is fast enough. */
export interface ChosenSpeed {
  readonly speed: number;
  readonly rim: number;
  readonly tooSlow: boolean;
}

/**
 * Speed of the cutting circle, m/s: π·d·n/60 000 (formula U6).
 *
 * @example rimSpeed(160, 6000) // 50.265…
 */
export function rimSpeed(diameter: number, speed: number): number {
  return (Math.PI * diameter * speed) / 60_000;
}

/**
 * The highest speed that the tool's marks and the shop's rim speeds allow; the fastest allowed one where none reaches the
 * least rim speed; undefined where the machine has none that is allowed. The marks on the tool come first.
 */
export function chooseSpeed(head: Head, machine: Pick<Machine, 'speeds'>, rules: Rules): ChosenSpeed | undefined {
  const fastest = speedsAllowed(head, machine, rules).at(-1);
  if (fastest === undefined) return undefined;
  const rim = rimSpeed(head.cuttingDiameter, fastest);
  return { speed: fastest, rim, tooSlow: rim < rules.rimSpeed[0] };
}

/** Speeds of the machine within the tool's marks and below the greatest rim speed, slowest first. */
export function speedsAllowed(head: Head, { speeds }: Pick<Machine, 'speeds'>, rules: Rules): number[] {
  return speeds
    .filter((n) => n <= head.maxSpeed && n >= (head.minSpeed ?? 0))
    .filter((n) => rimSpeed(head.cuttingDiameter, n) <= rules.rimSpeed[1])
    .sort((one, other) => one - other);
}
