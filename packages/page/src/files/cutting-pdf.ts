import { assumedRules, evaluate, type Job, makeCuttingList } from '@fielded/core';
import { cuttingSheets } from '@fielded/render';
import { scenesPdf } from './pdf.ts';
import { usualPaper } from './usual-paper.ts';

/** The cutting list as sheets for the saw, every panel and door drawn. */
export function cuttingPdf(job: Job): Promise<Blob> {
  const report = evaluate(job);
  const list = makeCuttingList([report]);
  return scenesPdf(
    cuttingSheets(list, { reports: [report], assumed: assumedRules([job], job.units), paper: usualPaper() }),
  );
}
