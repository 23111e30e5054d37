import type { Planned, Report } from '@fielded/core';
import { planSheets, sceneToSvg } from '@fielded/render';
import { scenesPdf } from './pdf.ts';
import { printPages } from './print-pages.ts';
import { usualPaper } from './usual-paper.ts';

/** The order of work and a sheet for each set-up, as the command line writes them. */
export function planPdf(planned: Planned, report: Report): Promise<Blob> {
  return scenesPdf(planSheets(planned, report, usualPaper()));
}

/** Prints the order of work and the sheets. */
export function printPlan(planned: Planned, report: Report): void {
  const paper = usualPaper();
  printPages(
    planSheets(planned, report, paper).map((scene) => sceneToSvg(scene, { theme: 'print' })),
    paper,
  );
}
