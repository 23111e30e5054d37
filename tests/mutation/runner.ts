// Runs each test as it is, and then again with each fault that it came by and that no test has caught yet.
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { Worker } from 'node:worker_threads';
import { TestRunner } from 'vitest';
import { ASKED } from './plant.ts';
import { listSaid, type Said } from './said.ts';

/** A test as the runner is given it. */
type Test = Parameters<TestRunner['onAfterTryTask']>[0];

const folder = process.env.FAULTS_FOLDER!;
const HOW_MANY = (JSON.parse(readFileSync(join(folder, 'faults.json'), 'utf8')) as unknown[]).length;
/** The one fault that is made from the start, while the tests are collected too; none otherwise. */
const always = Number(process.env.FAULT_ALWAYS ?? -1);

/** The fault that is made now, and at how many seconds of the processor a test with it is stopped: shared with the watch. */
const watched = new Float64Array(new SharedArrayBuffer(16));
const NONE = -1;
watched[0] = NONE;

let made = always;
let met = new Set<number>();
const caught = new Set<number>(listSaid(folder).flatMap(({ caught }) => (caught === undefined ? [] : [caught])));

Object.assign(globalThis, {
  [ASKED]: (number: number): boolean => {
    met.add(number);
    return number === made;
  },
});

/** Tests that use the processor for so many times what they need without the fault, and for so long at least, will not come to an end. */
const PATIENCE = { times: 20, seconds: 10 };

const WATCH = `
const { workerData } = require('node:worker_threads');
const watched = new Float64Array(workerData);
setInterval(() => {
  const { user, system } = process.cpuUsage();
  if (watched[0] >= 0 && (user + system) / 1e6 > watched[1]) process.kill(process.pid, 'SIGKILL');
}, 500);
`;
new Worker(WATCH, { eval: true, workerData: watched.buffer }).unref();

function say(what: Said): void {
  appendFileSync(join(folder, 'said.jsonl'), `${JSON.stringify(what)}\n`);
}

function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

export default class FaultRunner extends TestRunner {
  async runTask(test: Test): Promise<void> {
    const run = TestRunner.getTestFn(test) as () => Promise<void>;
    if (always >= 0) return run();
    if (caught.size === HOW_MANY) return;
    this.noteOutside(test.file.filepath);
    const begun = processorSeconds();
    await run();
    const needs = processorSeconds() - begun;
    const reached = [...met].filter((number) => !caught.has(number));
    for (const number of reached) {
      if (!(await this.failsWith(number, run, needs))) continue;
      // A test that cannot be run twice says nothing, nor one that failed once for want of time.
      if (await fails(run)) break;
      if (!(await this.failsWith(number, run, needs))) continue;
      caught.add(number);
      say({ caught: number, by: `${relative(process.cwd(), test.file.filepath)}  ${test.name}` });
    }
    met = new Set();
  }

  private async failsWith(number: number, run: () => Promise<void>, needs: number): Promise<boolean> {
    writeFileSync(join(folder, 'made'), String(number));
    watched[1] = processorSeconds() + Math.max(PATIENCE.seconds, PATIENCE.times * needs);
    watched[0] = number;
    made = number;
    try {
      return await fails(run);
    } finally {
      made = NONE;
      watched[0] = NONE;
      writeFileSync(join(folder, 'made'), '');
    }
  }

  /** Faults met while files were loaded and tests collected or prepared: they were not made then. */
  private noteOutside(path: string): void {
    for (const number of met) if (!caught.has(number)) say({ outside: number, file: relative(process.cwd(), path) });
    met = new Set();
  }

  override async onAfterRunSuite(suite: Parameters<TestRunner['onAfterRunSuite']>[0]): Promise<void> {
    await super.onAfterRunSuite(suite);
    if ('filepath' in suite && always < 0) say({ done: relative(process.cwd(), suite.filepath as string) });
  }
}

async function fails(run: () => Promise<void>): Promise<boolean> {
  try {
    await run();
    return false;
  } catch {
    return true;
  }
}
