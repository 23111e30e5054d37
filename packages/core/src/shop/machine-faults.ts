import type { FaultCode } from '../problem/codes.ts';
import type { Machine } from './shop.ts';

/** A figure of a machine that cannot be: `key` names it, `what` is wrong and what to do `instead`, without full stops. */
export interface MachineFault {
  readonly code: FaultCode;
  readonly key: string;
  readonly what: string;
  readonly instead: string;
}

/**
 * The figures of a machine that contradict each other; `show` writes a length. A figure that is missing contradicts nothing.
 *
 * @example findMachineFaults({ ...machine, opening: 200, rings: [250] }, show)[0].code // 'ring-past-opening'
 */
export function findMachineFaults(machine: Machine, show: (mm: number) => string): MachineFault[] {
  const faults: MachineFault[] = [];
  const { opening, rings = [], spindle = Number.NaN, nutDiameter } = machine;
  rings.forEach((ring, index) => {
    if (!(ring > opening)) return;
    faults.push({
      code: 'ring-past-opening',
      key: `rings[${index}]`,
      what: `a ring with a hole of ${show(ring)} does not close an opening of ${show(opening)}`,
      instead: "Write the holes that the rings leave, none larger than the table's opening",
    });
  });
  if (nutDiameter < spindle)
    faults.push({
      code: 'nut-within-spindle',
      key: 'nutDiameter',
      what: `a nut ${show(nutDiameter)} across holds nothing on a spindle of ${show(spindle)}`,
      instead: 'Write the diameter over the corners of the nut or its washer',
    });
  return faults;
}
