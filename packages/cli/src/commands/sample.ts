import { evaluateJoint } from '@fielded/core';
import { type Command, defineCommand } from '../command.ts';
import { readTextFile } from '../files/read-text.ts';
import { deliver } from './deliver.ts';
import { openShop, readOneJob } from './read-jobs.ts';
import { FILE_ENDINGS, FORCE, LANGUAGE, output, SHOP } from './shared-options.ts';

/** `fielded sample`: a label for the sample of a job that is kept. */
export const sample: Command = defineCommand(
  {
    summary: 'a label for the sample that is kept: section, settings, wood',
    place: { name: 'JOB', least: 1, most: 1, needs: 'a job file', takes: 'one job at a time', endings: FILE_ENDINGS },
    about: [
      'Draws a label for the sample that is kept of a job: the section at full size, every cut with its knife and settings, wood and date, and lines to write on what the test piece measured. fielded board shows which knives have a sample, and where.',
    ],
    options: {
      output: output('.pdf or .svg, at full size; without it, SVG goes to standard output'),
      date: { value: 'WORDS', says: 'as it shall stand on the label; left to be written in, if not said' },
      wood: { value: 'WORDS', says: "what the sample is made of; the job's, if not said" },
      shop: SHOP,
      language: LANGUAGE,
      force: FORCE,
    },
    formats: ['.svg', '.pdf'],
    statuses: ['drawn', null, 'a file could not be read or written'],
  },
  async ({ path, values, format }, io) => {
    const shop = await openShop(values.shop, io);
    if (shop === null) return 2;
    const job = await readOneJob({ path, text: readTextFile(path) }, shop, io);
    if (job === null) return 2;
    const { sampleLabel, sceneToSvg } = await import('@fielded/render');
    const wood = values.wood ?? (typeof job.panel.species === 'string' ? job.panel.species : undefined);
    const scene = sampleLabel({
      report: evaluateJoint(job),
      date: values.date ?? '',
      knives: Object.fromEntries(job.cuts.flatMap(({ name, knife }) => (knife === undefined ? [] : [[name, knife]]))),
      ...(wood !== undefined && { wood }),
    });
    const written = format === '.svg' ? sceneToSvg(scene) : await (await import('../formats/pdf.ts')).writePdf([scene]);
    return (await deliver(io, values.output, written, values.force)) ? 0 : 2;
  },
);
