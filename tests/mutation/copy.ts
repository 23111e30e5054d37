import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import type { SmallFault } from './faults.ts';

/** What became of a fault: tests failed, they were stopped since they did not come to an end, or they passed. */
type Outcome = 'caught' | 'endless' | 'survived';

export interface Copy {
  /** Runs the tests without a fault, for the time that each file takes and for those that fail all the same. */
  measure(): Promise<Times>;
  /** Makes a fault, runs the tests in the order of their times, and takes it back. */
  tryFault(fault: SmallFault, times: Times): Promise<{ readonly outcome: Outcome; readonly seconds: number }>;
  remove(): void;
}

/** What the tests take without a fault: all of them, in seconds of the processor, and each file, ms, by its name below the project. */
export interface Times {
  readonly all: number;
  readonly files: Readonly<Record<string, number>>;
  /** Files that fail without a fault: nothing can be told from them, and they are left out. */
  readonly failing: readonly string[];
}

/** Tests that take the processor for so many times as long as without a fault are stopped. */
const PATIENCE = 2;

/** Tests of how the project is put together, and those that start other programs. */
const LEFT_OUT = [
  'tests/core/{imports,docs,schema}.test.ts',
  'tests/render/{crossing,renderers,print-scale,pdf,draw-command}.test.ts',
  'tests/exchange/docx.test.ts',
];

/** One thread that keeps what it has loaded, so that a limit of processor time holds for all, the quickest files first, and the end at the first failure. */
const CONFIG = `
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { relative } from 'node:path';
import { configDefaults, defineConfig } from 'vitest/config';
import { BaseSequencer } from 'vitest/node';

const { files, failing } = existsSync('times.json')
  ? JSON.parse(readFileSync('times.json', 'utf8'))
  : { files: {}, failing: [] };
process.on('exit', () => writeFileSync('processor.json', JSON.stringify(process.cpuUsage())));
const timeOf = ({ moduleId }) => files[relative(process.cwd(), moduleId)] ?? 0;
class QuickestFirst extends BaseSequencer {
  sort(files) {
    return [...files].sort((a, b) => timeOf(a) - timeOf(b));
  }
}

export default defineConfig({
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    pool: 'threads',
    isolate: false,
    maxWorkers: 1,
    exclude: [...configDefaults.exclude, ...${JSON.stringify(LEFT_OUT)}, ...failing],
    testTimeout: 300_000,
    bail: 1,
    experimental: { fsModuleCache: true },
    sequence: { sequencer: QuickestFirst },
  },
});
`;

/** A copy of the project whose packages find each other, and not those of the project. */
export function makeCopy(root: string, tests: readonly string[]): Copy {
  const folder = mkdtempSync(join(tmpdir(), 'fielded-mutation-'));
  copyProject(root, folder);
  const vitest = join(root, 'node_modules/vitest/vitest.mjs');

  /** Runs the tests for so many seconds of the processor at most. */
  const run = (most: number, ...options: string[]) =>
    new Promise<{ status: number | null; stopped: boolean }>((settle) => {
      const limit = Number.isFinite(most) ? `ulimit -t ${Math.ceil(most)}; ` : '';
      const command = `${limit}exec "$0" "$@"`;
      const child = spawn('sh', ['-c', command, process.execPath, vitest, 'run', ...options, ...tests], {
        cwd: folder,
        stdio: 'ignore',
      });
      child.on('exit', (status, signal) => settle({ status, stopped: signal !== null }));
    });

  const measure = async () => {
    const answer = join(folder, 'answer.json');
    await run(Number.POSITIVE_INFINITY, '--bail=0', '--reporter=json', `--outputFile=${answer}`);
    const { user, system } = JSON.parse(readFileSync(join(folder, 'processor.json'), 'utf8')) as NodeJS.CpuUsage;
    const { testResults } = JSON.parse(readFileSync(answer, 'utf8')) as { testResults: readonly TimedFile[] };
    const failing = testResults.filter(({ status }) => status === 'failed').map(({ name }) => relative(folder, name));
    const files = testResults.map(({ name, startTime, endTime }) => [relative(folder, name), endTime - startTime]);
    return { all: (user + system) / 1e6, files: Object.fromEntries(files), failing };
  };

  const tryFault = async ({ file, at, from, to }: SmallFault, times: Times) => {
    writeFileSync(join(folder, 'times.json'), JSON.stringify(times));
    const path = join(folder, file);
    const text = readFileSync(path, 'utf8');
    writeFileSync(path, text.slice(0, at) + to + text.slice(at + from.length));
    try {
      const begun = performance.now();
      const { status, stopped } = await run(PATIENCE * times.all);
      const outcome: Outcome = stopped ? 'endless' : status === 0 ? 'survived' : 'caught';
      return { outcome, seconds: (performance.now() - begun) / 1000 };
    } finally {
      writeFileSync(path, text);
    }
  };

  return { measure, tryFault, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

interface TimedFile {
  readonly status: string;
  readonly name: string;
  readonly startTime: number;
  readonly endTime: number;
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
