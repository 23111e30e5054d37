import type { Head, Machine, Shop } from '../shop/shop.ts';
import { above, finite, groupAt, listAt, oneOf } from './given-values.ts';

/** A shop whose heads and machines have the figures that everything else of them is computed from. */
export function checkShop({ heads, machines, knives, rules }: Shop): void {
  finite('shop.rules', rules);
  for (const name in heads) checkHead(`shop.heads.${name}`, heads[name]!);
  for (const name in machines) checkMachine(`shop.machines.${name}`, machines[name]!);
  for (const name in knives) groupAt(`shop.knives.${name}.profile`, knives[name]?.profile);
}

function checkHead(at: string, head: Head): void {
  finite(at, groupAt(at, head));
  for (const key of ['cuttingDiameter', 'bodyDiameter', 'height', 'knives', 'maxSpeed', 'knifeThickness'] as const)
    above(`${at}.${key}`, head[key]);
  for (const key of ['rake', 'shear', 'wedge', 'limiterGap'] as const)
    if (head[key] === undefined) throw new RangeError(`${at}.${key} must be a number, got undefined`);
  oneOf(`${at}.feed`, head.feed, ['hand', 'mechanical']);
}

function checkMachine(at: string, machine: Machine): void {
  finite(at, groupAt(at, machine));
  above(`${at}.opening`, machine.opening);
  above(`${at}.nutDiameter`, machine.nutDiameter);
  for (const key of ['speeds', 'seat', 'feeds', 'rings', 'tilt'] as const) {
    if (machine[key] === undefined) throw new RangeError(`${at}.${key} must be a list, got undefined`);
    listAt<number>(`${at}.${key}`, machine[key]);
  }
}
