import { spawn } from 'node:child_process';
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { SmallFault } from './faults.ts';
import { listTests, nearestFirst, type TestFile } from './nearest-first.ts';
import { listSaid, type Said } from './said.ts';

/** What became of a fault: the test that failed, or did not come to an end; null where all passed. */
export interface Outcome {
  readonly fault: SmallFault;
  readonly by: string | null;
}

/** Tests of how the project is put together, those that start other programs, and those of time. */
const LEFT_OUT = new RegExp(
  [
    'core.(imports|docs|schema|read-bounds)\\.',
    'render.(crossing|renderers|print-scale|pdf|draw-command|layout)',
    'exchange.docx\\.',
    'cli.(nothing-lost|hostile-size|serve|printed-commands|completion)\\.',
  ].join('|'),
);

/** Tests with thousands of random cases, or with pictures: the last, when few faults are left. */
const DEAR = /^tests[\\/](properties|reference|exchange|cli)|fuzz|match/;

/** So many files are run with a fault made from the start, where it was met while sources were loaded or tests collected. */
const FROM_THE_START = 120;

/**
 * Tries faults all at once: they are planted side by side, each test runs as it is, and then with every fault that it came by and
 * no test has caught. Faults met outside the tests are then made from the start, one at a time.
 */
export async function tryFaults(
  root: string,
  faults: readonly SmallFault[],
  folders: readonly string[],
): Promise<Outcome[]> {
  const folder = mkdtempSync(join(tmpdir(), 'fielded-faults-'));
  try {
    writeFileSync(join(folder, 'faults.json'), JSON.stringify(faults));
    writeFileSync(join(folder, 'said.jsonl'), '');
    const tests = listTests(root, folders).filter(({ name }) => !LEFT_OUT.test(name));
    await runWithAll(root, folder, tests);
    const by = new Map(listSaid(folder).flatMap(({ caught, by = '' }) => (caught === undefined ? [] : [[caught, by]])));
    for (const [number, fault] of faults.entries()) {
      if (by.has(number) || !(await failsFromTheStart(root, folder, tests, number, fault))) continue;
      by.set(number, 'a test with the fault from the start');
    }
    return faults.map((fault, number) => ({ fault, by: by.get(number) ?? null }));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Runs all tests with all faults; where one did not come to an end, its process was stopped, and the files left run in a new one. */
async function runWithAll(root: string, folder: string, tests: readonly TestFile[]): Promise<void> {
  const cost = ({ name, text }: TestFile) => text.length + (DEAR.test(name) ? 1e6 : 0);
  const order = [...tests].sort((one, other) => cost(one) - cost(other)).map(({ name }) => name);
  const made = join(folder, 'made');
  for (let left = order; left.length > 0; ) {
    await run(root, folder, left);
    const stopped = existsSync(made) ? readFileSync(made, 'utf8') : '';
    if (stopped === '') return;
    const endless: Said = { caught: Number(stopped), by: 'a test that did not come to an end' };
    appendFileSync(join(folder, 'said.jsonl'), `${JSON.stringify(endless)}\n`);
    writeFileSync(made, '');
    const done = new Set(listSaid(folder).map((said) => said.done));
    left = order.filter((name) => !done.has(name));
  }
}

/** Whether a test fails where a fault is made from the start: of those outside whose tests it was met, and of the nearest: a constant is met once, by whichever loads it first. */
async function failsFromTheStart(
  root: string,
  folder: string,
  tests: readonly TestFile[],
  number: number,
  fault: SmallFault,
): Promise<boolean> {
  const met = new Set(listSaid(folder).flatMap(({ outside, file }) => (outside === number ? [file!] : [])));
  if (met.size === 0) return false;
  const nearest = nearestFirst(tests, fault, readFileSync(join(root, fault.file), 'utf8'));
  const order = [...new Set([...nearest.slice(0, 2), ...nearest.filter((name) => met.has(name)), ...nearest])];
  return (await run(root, folder, order.slice(0, FROM_THE_START), number)) !== 0;
}

/** Runs test files in this order; with one fault made from the start, until the first failure. Gives the exit status. */
function run(root: string, folder: string, order: readonly string[], always?: number): Promise<number | null> {
  writeFileSync(join(folder, 'order.json'), JSON.stringify(order));
  const args = ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/mutation/vitest.config.ts'];
  const env = { ...process.env, FAULTS_FOLDER: folder };
  const child = spawn(process.execPath, always === undefined ? args : [...args, '--bail', '1'], {
    cwd: root,
    stdio: 'ignore',
    env: always === undefined ? env : { ...env, FAULT_ALWAYS: String(always) },
  });
  return new Promise((settle) => child.on('exit', settle));
}
