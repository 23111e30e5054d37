// Times drawings: npx tsx --conditions=source tests/benchmarks/drawings.ts
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { evaluate, readJob } from '@fielded/core';
import { draw, sheets } from '@fielded/render';
import { openFonts } from '../../packages/cli/src/formats/fonts.ts';
import { writePdf } from '../../packages/cli/src/formats/pdf.ts';
import { manyPieces } from '../support/many-pieces.ts';
import { timeEach } from '../support/timing.ts';

const text = readFileSync(fileURLToPath(new URL('../../examples/hall-doors/job.yaml', import.meta.url)), 'utf8');
const report = evaluate(readJob(text).job!);
const twelve = evaluate(manyPieces(12, 12));
const pages = sheets(report, { view: 'sheet', paper: 'a4' });
const fonts = await openFonts(pages);

async function medianOf(work: () => Promise<unknown>, times: number): Promise<number> {
  const took: number[] = [];
  for (let i = 0; i < times; i += 1) {
    const start = performance.now();
    await work();
    took.push(performance.now() - start);
  }
  return took.sort((a, b) => a - b)[Math.floor(times / 2)]!;
}

const show = (what: string, ms: number, goal: string) =>
  console.log(`${what.padEnd(44)} ${ms.toFixed(2).padStart(8)} ms  ${goal}`);
for (const view of ['section', 'joint', 'detail', 'cuts', 'panel', 'door'] as const)
  show(
    `${view} of an example`,
    timeEach(() => draw(report, { view }).length),
    '',
  );
show(
  'joint of a job of 12 pieces',
  timeEach(() => draw(twelve, { view: 'joint' }).length),
  'goal 2',
);
show(
  `layout of ${pages.length} sheets`,
  timeEach(() => sheets(report, { view: 'sheet', paper: 'a4' }).length),
  '',
);
show('PDF of a sheet', await medianOf(() => writePdf(pages.slice(0, 1), { fonts }), 25), 'goal 40');
show(`PDF of ${pages.length} sheets`, await medianOf(() => writePdf(pages), 9), '');
