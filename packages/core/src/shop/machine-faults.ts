import { type ToldFault, tellFault } from '../problem/say-fault.ts';
import type { Machine } from './shop.ts';

/** A figure of a machine that cannot be: `key` names it. */
export interface MachineFault extends ToldFault {
  readonly key: string;
}

/**
 * The figures of a machine that contradict each other. A figure that is missing contradicts nothing.
 *
 * @example findMachineFaults({ ...machine, opening: 200, rings: [250] })[0].sentence // 'fault.ring-past-opening'
 */
export function findMachineFaults(machine: Machine): MachineFault[] {
  const faults: MachineFault[] = [];
  const { opening, rings = [], spindle = Number.NaN, nutDiameter } = machine;
  rings.forEach((ring, index) => {
    if (ring > opening)
      faults.push({ key: `rings[${index}]`, ...tellFault('fault.ring-past-opening', { ring, opening }) });
  });
  if (nutDiameter < spindle)
    faults.push({ key: 'nutDiameter', ...tellFault('fault.nut-within-spindle', { nut: nutDiameter, spindle }) });
  return faults;
}
