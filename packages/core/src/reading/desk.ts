import { formatLength } from '../measure/format.ts';
import type { Units } from '../measure/length.ts';
import type { FaultCode } from '../problem/codes.ts';
import { type ReadSteel, readSteel } from './steel.ts';

/** Why another file cannot be had, and what to do: sentences without their full stops. */
export interface Refused {
  readonly refused: string;
  readonly instead: string;
}

/** Where a file's values are checked against each other: what is wrong is reported here, with the path of the value. */
export interface Desk {
  readonly units: Units;
  /** `what` is wrong and what to do `instead`, as sentences without their full stops. */
  report(code: FaultCode, at: string, what: string, instead: string): void;
  /** The outline in a drawing file that the file names, as path data in mm, or why there is none to be had. */
  readonly openOutline: (name: string) => string | Refused;
  /** A length in the file's own unit, for a message. */
  show(mm: number): string;
  /** What a knife cuts whose outline was taken off its steel. */
  readonly readSteel: ReadSteel;
}

/** A desk whose reports go to `report`. */
export function openDesk(
  units: Units,
  report: Desk['report'],
  openOutline: Desk['openOutline'],
  steel: ReadSteel = readSteel,
): Desk {
  return { units, report, openOutline, show: (mm) => formatLength(mm, units), readSteel: steel };
}

/** A struck-out figure compares as false with everything, so that no check fails because of another fault. */
export function figureOf(value: number | undefined): number {
  return value ?? Number.NaN;
}
