import { spawn, spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import type { SmallFault } from './faults.ts';
import { listTests, nearestFirst } from './nearest-first.ts';

/** What became of a fault: tests failed, they were stopped since they did not come to an end, or they passed. */
interface Outcome {
  readonly what: 'caught' | 'endless' | 'survived';
  /** The test file that saw it. */
  readonly by: string | null;
  readonly seconds: number;
}

export interface Copy {
  /** Makes a fault, runs the tests, those that are likely to see it first, until one fails, and takes it back. */
  tryFault(fault: SmallFault): Promise<Outcome>;
  remove(): void;
}

/** Test files that are tried before all others: most faults are seen by one of them, and the fewer are given the sooner the first one has run. */
const AT_FIRST = 8;

/** Tests that finish no file in so many seconds of the processor are stopped: many times what the slowest takes. */
const PATIENCE = 150;
const LOOK_EVERY = 3000;

/** Tests of how the project is put together, and those that start other programs. */
const LEFT_OUT =
  /core.(imports|docs|schema)\.|render.(crossing|renderers|print-scale|pdf|draw-command|layout)|exchange.docx\./;

/** One thread that keeps what it has loaded; the files in a given order, and the end at the first failure. */
const CONFIG = `
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer } from 'vitest/node';
import { BUILT_PACKAGES, builtPackages } from './tests/support/built-packages.ts';

const order = JSON.parse(readFileSync('order.json', 'utf8'));
const placeOf = ({ moduleId }) => order.indexOf(relative(process.cwd(), moduleId));
class InOrder extends BaseSequencer {
  sort(files) {
    return [...files].sort((a, b) => placeOf(a) - placeOf(b));
  }
}

export default defineConfig({
  plugins: [builtPackages()],
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    include: order,
    globalSetup: ['tests/support/built-once.ts'],
    server: { deps: { external: [BUILT_PACKAGES] } },
    isolate: false,
    maxWorkers: 1,
    testTimeout: 300_000,
    bail: 1,
    sequence: { sequencer: InOrder },
  },
});
`;

/** Files that are known to pass, or to fail, without a fault: the same in every copy. */
const passes = new Map<string, boolean>();

/** A copy of the project whose packages find each other, and not those of the project; of its tests the `nearest` to a fault are run. */
export function makeCopy(root: string, folders: readonly string[], nearest = Number.POSITIVE_INFINITY): Copy {
  const folder = mkdtempSync(join(tmpdir(), 'fielded-mutation-'));
  copyProject(root, folder);
  const vitest = join(root, 'node_modules/vitest/vitest.mjs');
  const tests = listTests(root, folders).filter(({ name }) => !LEFT_OUT.test(name));

  /** Runs test files in this order until one fails; which one did, null for none; undefined where they had to be stopped. */
  const run = async (order: readonly string[]): Promise<string | null | undefined> => {
    writeFileSync(join(folder, 'order.json'), JSON.stringify(order));
    const answer = join(folder, 'answer.json');
    rmSync(answer, { force: true });
    const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${answer}`];
    const child = spawn(process.execPath, [vitest, 'run', ...reporters], {
      cwd: folder,
      stdio: ['ignore', 'pipe', 'ignore'],
      detached: true,
    });
    const ended = await untilEnd(child);
    if (!ended) return undefined;
    if (!existsSync(answer)) return 'the start of the tests';
    const { testResults } = JSON.parse(readFileSync(answer, 'utf8')) as { testResults: readonly FileResult[] };
    const failed = testResults.find(({ status }) => status === 'failed');
    return failed === undefined ? null : relative(folder, failed.name);
  };

  const passesAlone = async (file: string): Promise<boolean> => {
    if (!passes.has(file)) passes.set(file, (await run([file])) === null);
    return passes.get(file)!;
  };

  const tryFault = async (fault: SmallFault): Promise<Outcome> => {
    const path = join(folder, fault.file);
    const text = readFileSync(path, 'utf8');
    const begun = performance.now();
    const seconds = () => (performance.now() - begun) / 1000;
    const withFault = async (order: readonly string[]) => {
      writeFileSync(path, text.slice(0, fault.at) + fault.to + text.slice(fault.at + fault.from.length));
      const by = await run(order);
      writeFileSync(path, text);
      return by;
    };
    const order = nearestFirst(tests, fault, text).slice(0, nearest);
    for (const stage of [order.slice(0, AT_FIRST), order.slice(AT_FIRST)]) {
      let left = stage;
      while (left.length > 0) {
        const by = await withFault(left);
        if (by === undefined) return { what: 'endless', by: null, seconds: seconds() };
        if (by === null) break;
        // A file says something only where it passes by itself without the fault and fails by itself with it: else go on without it.
        const isSure = !tests.some(({ name }) => name === by) || by === left[0] || (await withFault([by])) !== null;
        if (isSure && (await passesAlone(by))) return { what: 'caught', by, seconds: seconds() };
        left = left.filter((name) => name !== by);
      }
    }
    return { what: 'survived', by: null, seconds: seconds() };
  };

  return { tryFault, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

interface FileResult {
  readonly status: string;
  readonly name: string;
}

/** Waits for the tests; false where they worked on for `PATIENCE` without a word, and were stopped. */
function untilEnd(child: ReturnType<typeof spawn>): Promise<boolean> {
  let spent = 0;
  let said = 0;
  child.stdout!.on('data', () => {
    said = spent;
  });
  return new Promise((settle) => {
    const look = setInterval(() => {
      spent = Math.max(spent, processorTime(child.pid!));
      if (spent - said < PATIENCE) return;
      // The group that was started here: the tests and their worker.
      process.kill(-child.pid!, 'SIGKILL');
      settle(false);
    }, LOOK_EVERY);
    child.on('exit', () => {
      clearInterval(look);
      settle(true);
    });
  });
}

/** Seconds of the processor that a group of processes has used. */
function processorTime(group: number): number {
  const { stdout } = spawnSync('ps', ['-eo', 'pgid=,cputimes='], { encoding: 'utf8' });
  return stdout
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter(([of]) => of === group)
    .reduce((sum, [, seconds = 0]) => sum + seconds, 0);
}

function copyProject(root: string, copy: string): void {
  for (const name of ['packages', 'tests', 'docs', 'examples', 'tools'])
    cpSync(join(root, name), join(copy, name), {
      recursive: true,
      filter: (path) => !/(node_modules|[\\/]dist)$/.test(path),
    });
  for (const name of readdirSync(root)) if (/\.(json|md)$/.test(name)) cpSync(join(root, name), join(copy, name));
  writeFileSync(join(copy, 'vitest.config.mjs'), CONFIG);
  mkdirSync(join(copy, 'node_modules/@fielded'), { recursive: true });
  for (const name of readdirSync(join(root, 'node_modules')))
    if (name !== '@fielded') symlinkSync(join(root, 'node_modules', name), join(copy, 'node_modules', name));
  for (const name of readdirSync(join(copy, 'packages')))
    symlinkSync(join(copy, 'packages', name), join(copy, 'node_modules/@fielded', name));
}
