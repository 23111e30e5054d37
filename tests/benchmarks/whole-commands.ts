import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { encode } from 'fast-png';
import { drawScan, sampleOf } from '../support/synthetic-scan.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const FIELDED = join(root, 'packages/cli/bin/fielded.js');

/** A whole process: how long it takes, ms, the least of several, since what else runs only adds; and its peak memory, MB. */
export interface CommandTime {
  readonly what: string;
  readonly ms: number;
  readonly peak: number;
}

export interface CommandTimes {
  readonly nothing: CommandTime;
  readonly check: CommandTime;
  readonly thousand: CommandTime;
  readonly trace: CommandTime;
  readonly quotes: readonly CommandTime[];
}

/** Times whole processes by turns, so that a busy minute falls on all of them alike. */
export function timeCommands(): CommandTimes {
  const folder = mkdtempSync(join(tmpdir(), 'fielded-bench-'));
  const example = join(root, 'examples/ogee-cove/job.yaml');
  const jobs = writeJobs(folder, readFileSync(example, 'utf8'));
  const scan = join(folder, 'scan.png');
  writeFileSync(scan, drawA4());
  const formats = ['pdf', 'docx', 'html'];
  const quote = (format: string) => [
    'quote',
    join(root, 'examples/kitchen/job.yaml'),
    ...[
      '--client',
      'A. Client',
      '--number',
      'Q-1',
      '--date',
      '2026-01-31',
      '--force',
      '-o',
      join(folder, `q.${format}`),
    ],
  ];
  const calls: [string, number, string[]][] = [
    ['node -e 0', 15, ['-e', '0']],
    ['fielded check on the first example', 15, [FIELDED, 'check', example]],
    ['fielded check --json on a folder of 1,000 jobs', 5, [FIELDED, 'check', '--json', jobs]],
    ['fielded trace on a scan of A4 at 600 dpi', 3, [FIELDED, 'trace', scan, '--dpi', '600']],
    ...formats.map((format): [string, number, string[]] => [
      `fielded quote on the kitchen, .${format}`,
      5,
      [FIELDED, ...quote(format)],
    ]),
  ];
  const least = calls.map(() => Number.POSITIVE_INFINITY);
  const peaks = calls.map(([what, , args]) => peakOf(what, args));
  for (let round = 0; round < 15; round++)
    calls.forEach(([, rounds, args], k) => {
      if (round < rounds) least[k] = Math.min(least[k]!, timeOf(args));
    });
  rmSync(folder, { recursive: true });
  const times = calls.map(([what], k): CommandTime => ({ what, ms: least[k]!, peak: peaks[k]! }));
  const [nothing, check, thousand, trace, ...quotes] = times;
  return { nothing: nothing!, check: check!, thousand: thousand!, trace: trace!, quotes };
}

/** 1,000 jobs, each a little different, in a folder of their own. */
function writeJobs(folder: string, text: string): string {
  const jobs = mkdtempSync(join(folder, 'jobs-'));
  for (let i = 0; i < 1000; i++)
    writeFileSync(join(jobs, `job-${i}.yaml`), text.replace('depth: 9', `depth: ${9 + i / 10_000}`));
  return jobs;
}

function timeOf(args: string[]): number {
  const start = performance.now();
  spawnSync(process.execPath, args, { stdio: 'ignore' });
  return performance.now() - start;
}

/** A process tells its own peak as it ends, on standard error, in KB; what it had of its parent before it began is not counted. */
const TELL = `import { readFileSync } from 'node:fs';
const peak = () => process.platform === 'linux'
  ? /VmHWM:\\s*(\\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))[1]
  : process.resourceUsage().maxRSS;
process.on('exit', () => process.stderr.write('\\n#' + peak()));`;

/** Peak memory of a process, MB, by a run of its own: what tells it takes time. */
function peakOf(what: string, args: string[]): number {
  const hook = `--import=data:text/javascript,${encodeURIComponent(TELL)}`;
  const { status, stderr } = spawnSync(process.execPath, [hook, ...args], { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (status !== 0) throw new Error(`${what}: ${stderr}`);
  return Number(stderr.split('#').at(-1)) / 1024;
}

const [A4_WIDTH, A4_HEIGHT] = [4961, 7016];

/** A page of A4 at 600 dpi in shades of grey, as PNG: a sample that never was, turned by 2°, with the noise of a scanner all over. */
function drawA4(): Uint8Array {
  const front = (x: number) => (x < 12 ? 8.5 : x < 36 ? 8.5 - (x - 12) * 0.3 : 0);
  const back = (x: number) => (x < 13 ? 5 : 0);
  const sample = drawScan(sampleOf(front, back, 20, 62), { turn: 2, margin: 5 });
  const data = new Uint8Array(A4_WIDTH * A4_HEIGHT);
  // The margin's own noise is carried on over the rest of the page.
  for (let y = 0; y < A4_HEIGHT; y++)
    for (let x = 0; x < A4_WIDTH; x++)
      data[y * A4_WIDTH + x] = sample.grey[((y * 7) % 80) * sample.width + ((x + 13 * y) % sample.width)]!;
  for (let y = 0; y < sample.height; y++)
    data.set(sample.grey.subarray(y * sample.width, (y + 1) * sample.width), (2000 + y) * A4_WIDTH + 900);
  return encode({ width: A4_WIDTH, height: A4_HEIGHT, data, channels: 1, depth: 8 });
}
