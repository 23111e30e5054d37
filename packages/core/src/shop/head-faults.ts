import { toDegrees } from '../measure/angle.ts';
import { type ToldFault, tellFault } from '../problem/say-fault.ts';
import type { Head } from './shop.ts';

/** Rake from which the face is more a scraper's than a cutter's, radians. */
const RAKE_LIMIT = (60 * Math.PI) / 180;
/** Shear from which the knife lies more along its cut than across it, radians. */
const SHEAR_LIMIT = (45 * Math.PI) / 180;

/** A figure of a head that cannot be: `key` names it. */
export interface HeadFault extends ToldFault {
  readonly key: keyof Head;
}

/**
 * The figures of a head that contradict each other or are past use, whatever is cut with it. A figure that is missing
 * contradicts nothing.
 *
 * @example findHeadFaults({ ...head, rake: 1.2 })[0].sentence // 'fault.head-rake'
 */
export function findHeadFaults(head: Head): HeadFault[] {
  const faults: HeadFault[] = [];
  const { bodyDiameter, cuttingDiameter, bore, rake, wedge, shear } = head;
  if (bodyDiameter >= cuttingDiameter)
    faults.push({
      key: 'bodyDiameter',
      ...tellFault('fault.head-body', { body: bodyDiameter, circle: cuttingDiameter }),
    });
  if (bore !== undefined && bore >= bodyDiameter)
    faults.push({ key: 'bore', ...tellFault('fault.head-bore', { bore, body: bodyDiameter }) });
  if (rake >= RAKE_LIMIT) faults.push({ key: 'rake', ...tellFault('fault.head-rake', { rake: toDegrees(rake) }) });
  if (wedge <= 0) faults.push({ key: 'wedge', ...tellFault('fault.head-wedge.none', { wedge: toDegrees(wedge) }) });
  if (rake + wedge >= Math.PI / 2)
    faults.push({
      key: 'wedge',
      ...tellFault('fault.head-wedge', {
        wedge: toDegrees(wedge),
        rake: toDegrees(rake),
        sum: toDegrees(rake + wedge),
        most: toDegrees(Math.PI / 2 - rake),
      }),
    });
  if (Math.abs(shear) >= SHEAR_LIMIT)
    faults.push({ key: 'shear', ...tellFault('fault.head-shear', { shear: toDegrees(shear) }) });
  return faults;
}
