import type { Units } from '../measure/length.ts';
import {
  type FaultFigures,
  type FaultRemedy,
  type FaultSentence,
  type ToldFault,
  tellFault,
} from '../problem/say-fault.ts';
import { type ReadSteel, readSteel } from './steel.ts';

/** Why a file cannot be had, read or written, and what to do: sentences without their full stops. */
export interface Refusal {
  readonly refused: string;
  readonly instead: string;
}

/** Where a file's values are checked against each other: what is wrong is reported here, with the path of the value. */
export interface FaultDesk {
  readonly units: Units;
  /** A sentence of the catalogue, with its figures, about the value at a path. */
  report<K extends FaultSentence, R extends FaultRemedy = `${K}.do`>(
    sentence: K,
    at: string,
    figures: FaultFigures<K, R>,
    remedy?: R,
  ): void;
  /** The same for a fault that was told before its place was known. */
  place(fault: ToldFault, at: string): void;
  /** The outline in a drawing file that the file names, as path data in mm, or why there is none to be had. */
  readonly openOutline: (name: string) => string | Refusal;
  /** What a knife cuts whose outline was taken off its steel. */
  readonly readSteel: ReadSteel;
}

/** A desk whose reports go to `place`. */
export function openDesk(
  units: Units,
  place: FaultDesk['place'],
  openOutline: FaultDesk['openOutline'],
  steel: ReadSteel = readSteel,
): FaultDesk {
  const report: FaultDesk['report'] = (sentence, at, figures, remedy) =>
    place(tellFault(sentence, figures, remedy), at);
  return { units, report, place, openOutline, readSteel: steel };
}

/** A struck-out figure compares as false with everything, so that no check fails because of another fault. */
export function orNaN(value: number | undefined): number {
  return value ?? Number.NaN;
}
