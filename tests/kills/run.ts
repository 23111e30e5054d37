// Kills the command while it writes each kind of file: npm run kills -- --each 100 --commands 10. Prints a table by kind.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { writeWhole } from '../../packages/cli/src/files/write-whole.ts';
import { beside, buildWriter, killCommand, killWriting, type Outcome } from './kill-writing.ts';
import { listKinds, makeWholes, type Wholes } from './kinds.ts';

const number = { type: 'string' } as const;
const { values } = parseArgs({ options: { each: number, commands: number, only: number } });
const each = Number(values.each ?? 50);
/** Kills of the whole command, at any moment from its start to its end: each takes as long as the command does. */
const commands = Number(values.commands ?? Math.ceil(each / 10));
const LANES = 3;

const folder = mkdtempSync(join(tmpdir(), 'fielded-kills-'));
const command = join(import.meta.dirname, '../../packages/cli/bin/fielded.js');
let failed = 0;

/** Kills of one kind, and whether the next run that is let alone leaves nothing but its file. */
async function tryKind(wholes: Wholes, writer: string): Promise<string> {
  const { kind } = wholes;
  const outcomes: Outcome[] = [];
  for (let i = 0; i < each; i++) outcomes.push(await killWriting(writer, wholes, Math.random() * 12));
  writeWhole(kind.file, wholes.old);
  const took = await timeOf(wholes);
  for (let i = 0; i < commands; i++) {
    // The last tenth is where most of the writing is.
    const share = i % 2 === 0 ? Math.random() : 0.9 + 0.2 * Math.random();
    outcomes.push(await killCommand(command, wholes, took * share));
    writeWhole(kind.file, wholes.old);
  }
  const left = beside(kind.file);
  const count = (is: (outcome: Outcome) => boolean) => outcomes.filter(is).length;
  const torn = count(({ found }) => found === 'torn');
  const strange = count((outcome) => outcome.strange.length > 0) + left.strange.length;
  const unswept = left.parts;
  if (torn + strange + unswept > 0) failed++;
  const figures = [
    count(({ killed }) => killed),
    count(({ found }) => found === 'old'),
    count(({ found }) => found === 'new'),
    torn,
    count(({ parts }) => parts > 0),
    unswept + strange,
  ];
  return `| ${[kind.name.padEnd(20), ...figures.map((figure) => String(figure).padStart(6))].join(' | ')} |`;
}

/** How long the command takes, ms, let alone: the lesser of two runs. */
async function timeOf(wholes: Wholes): Promise<number> {
  if (commands === 0) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 2; i++) {
    const begun = performance.now();
    await killCommand(command, wholes, 120_000);
    least = Math.min(least, performance.now() - begun);
    writeWhole(wholes.kind.file, wholes.old);
  }
  return least;
}

try {
  const aside = join(folder, 'aside');
  mkdirSync(aside);
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
  const writer = await buildWriter(folder);
  const kinds = (await listKinds(folder)).filter(({ name }) => values.only === undefined || name.includes(values.only));
  console.log('| kind                 | killed |    old |    new |   torn |  parts | litter |');
  console.log('| -------------------- | -----: | -----: | -----: | -----: | -----: | -----: |');
  const lane = async () => {
    for (let kind = kinds.shift(); kind !== undefined; kind = kinds.shift())
      console.log(await tryKind(await makeWholes(kind, aside), writer));
  };
  await Promise.all(Array.from({ length: LANES }, lane));
  console.log(
    'Parts are what a killed writer leaves beside its file; the next run sweeps them. Litter is what stays all the same.',
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.exitCode = failed > 0 ? 1 : 0;
