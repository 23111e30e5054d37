import type { Planned, Report } from '@fielded/core';
import { planSheets, sceneToSvg } from '@fielded/render';
import { scenesPdf } from './pdf.ts';
import { printPages } from './print-pages.ts';

/** The order of work and a sheet for each set-up, as the command line writes them. */
export function planPdf(planned: Planned, report: Report): Promise<Blob> {
  return scenesPdf(planSheets(planned, report));
}

/** Prints the order of work and the sheets. */
export function printPlan(planned: Planned, report: Report): void {
  printPages(
    planSheets(planned, report).map((scene) => sceneToSvg(scene, { theme: 'print' })),
    'a4',
  );
}
