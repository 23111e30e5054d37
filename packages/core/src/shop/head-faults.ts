import { toDegrees } from '../measure/angle.ts';
import { formatNumber } from '../measure/format.ts';
import type { FaultCode } from '../problem/codes.ts';
import type { Head } from './shop.ts';

/** Rake from which the face is more a scraper's than a cutter's, radians. */
const RAKE_LIMIT = (60 * Math.PI) / 180;
/** Shear from which the knife lies more along its cut than across it, radians. */
const SHEAR_LIMIT = (45 * Math.PI) / 180;

/** A figure of a head that cannot be: `key` names it, `what` is wrong and what to do `instead`, without full stops. */
export interface HeadFault {
  readonly code: FaultCode;
  readonly key: keyof Head;
  readonly what: string;
  readonly instead: string;
}

/**
 * The figures of a head that contradict each other or are past use, whatever is cut with it; `show` writes a length. A
 * figure that is missing contradicts nothing.
 *
 * @example findHeadFaults({ ...head, rake: 1.2 }, show)[0].code // 'head-rake'
 */
export function findHeadFaults(head: Head, show: (mm: number) => string): HeadFault[] {
  const faults: HeadFault[] = [];
  const { bodyDiameter, cuttingDiameter, bore, rake, wedge, shear } = head;
  if (bodyDiameter >= cuttingDiameter)
    faults.push({
      code: 'head-body',
      key: 'bodyDiameter',
      what: `the body is ${show(bodyDiameter)} across and the cutting circle ${show(cuttingDiameter)}: no knife would stand out of it`,
      instead: 'Write a body smaller than the cutting circle',
    });
  if (bore !== undefined && bore >= bodyDiameter)
    faults.push({
      code: 'head-bore',
      key: 'bore',
      what: `a bore of ${show(bore)} leaves nothing of a body ${show(bodyDiameter)} across`,
      instead: 'Write the bore as it is marked on the head',
    });
  if (rake >= RAKE_LIMIT)
    faults.push({
      code: 'head-rake',
      key: 'rake',
      what: `${degrees(rake)} of rake is past what a cutter's face can have`,
      instead: 'Write less than 60°',
    });
  if (wedge <= 0)
    faults.push({
      code: 'head-wedge',
      key: 'wedge',
      what: `a wedge of ${degrees(wedge)} leaves no steel behind the edge`,
      instead: 'Write more than 0°, such as 45°',
    });
  if (rake + wedge >= Math.PI / 2)
    faults.push({
      code: 'head-wedge',
      key: 'wedge',
      what: `a wedge of ${degrees(wedge)} and ${degrees(rake)} of rake make ${degrees(rake + wedge)}, and leave nothing of 90° for clearance behind the edge`,
      instead: `Write a wedge less than ${degrees(Math.PI / 2 - rake)}, or less rake`,
    });
  if (Math.abs(shear) >= SHEAR_LIMIT)
    faults.push({
      code: 'head-shear',
      key: 'shear',
      what: `${degrees(shear)} of shear lays the knife more along its cut than across it`,
      instead: 'Write less than 45° either way',
    });
  return faults;
}

function degrees(angle: number): string {
  return `${formatNumber(toDegrees(angle), 1)}°`;
}
