import { evaluate, type Job, type TemplatePart } from '@fielded/core';
import { writeDxf } from '@fielded/exchange';
import { makeTemplate, templateSheets } from '@fielded/render';
import { scenesPdf } from './pdf.ts';
import { usualPaper } from './usual-paper.ts';

/** The template of a part of a shaped door, as `fielded template` writes it; null where nothing is left of the part. */
export async function templateFile(
  job: Job,
  index: number,
  part: TemplatePart,
  format: 'pdf' | 'dxf',
): Promise<Blob | string | null> {
  const report = evaluate(job);
  const template = makeTemplate(report, report.doors![index]!, part);
  if (template === null) return null;
  return format === 'dxf'
    ? writeDxf([{ name: part.toUpperCase(), chains: [template.outline] }])
    : scenesPdf(templateSheets(template, usualPaper()));
}
