// Times the engine in one run, so that its figures can be compared with each other: npm run bench
import { spawnSync } from 'node:child_process';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { evaluate } from '@fielded/core';
import { draw } from '@fielded/render';
import { makeEdge } from '../../packages/core/src/panel/edge.ts';
import { manyPieces } from '../support/many-pieces.ts';
import { median, timeEach } from '../support/timing.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const rows: [string, number, string, string][] = [];

for (const [pieces, goal] of [
  [12, '≤ 0.05 ms'],
  [500, '≤ 0.6 ms'],
  [5000, ''],
  [50_000, ''],
] as const) {
  const job = manyPieces(pieces, 1);
  rows.push([
    `section alone, ${pieces} pieces`,
    timeEach(() => makeEdge(job.panel, job.cuts).section.wood.area),
    'ms',
    '',
  ]);
  rows.push([`evaluate, ${pieces} pieces`, timeEach(() => evaluate(job).section.removedArea), 'ms', goal]);
}
const report = evaluate(manyPieces(12, 1));
rows.push(['draw joint, 12 pieces', timeEach(() => draw(report, { view: 'joint' }).length), 'ms', '≤ 2 ms']);

const processTime = (...args: string[]) =>
  median(
    Array.from({ length: 9 }, () => {
      const start = performance.now();
      spawnSync(process.execPath, args, { cwd: root, stdio: 'ignore' });
      return performance.now() - start;
    }),
  );
rows.push(['node -e 0, whole process', processTime('-e', '0'), 'ms', '']);
const check = ['packages/cli/bin/fielded.js', 'check', 'examples/ogee-cove/job.yaml'];
rows.push(['fielded check, whole process', processTime(...check), 'ms', '≤ 400 ms']);

console.log(`node ${process.version}, ${cpus()[0]?.model}, medians\n`);
for (const [what, value, unit, goal] of rows) {
  console.log(`${what.padEnd(34)} ${value.toPrecision(3).padStart(10)} ${unit}  ${goal}`);
}
