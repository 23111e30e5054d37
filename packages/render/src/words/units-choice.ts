import type { Report } from '@fielded/core';

/** The units a drawing is written in: millimetres, inches, or the job's own with the other ones under the line. */
export type UnitsChoice = 'mm' | 'in' | 'both';

/** A report whose lengths are to be shown in both units. */
export interface InBothUnits {
  readonly bothUnits?: boolean;
}

/** The report with its lengths to be shown in other units than the job's own; the lengths themselves stay as they are. */
export function inUnits(report: Report, choice: UnitsChoice | undefined): Report & InBothUnits {
  if (choice === undefined) return report;
  return choice === 'both' ? { ...report, bothUnits: true } : { ...report, units: choice };
}
