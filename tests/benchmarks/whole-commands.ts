import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { median } from '../support/timing.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const FIELDED = join(root, 'packages/cli/bin/fielded.js');

/** Whole processes, ms: Node doing nothing, one example checked, and 1,000 jobs in one call with its peak memory in MB. */
export function timeCommands(): { nothing: number; check: number; thousand: number; peak: number } {
  const example = join(root, 'examples/ogee-cove/job.yaml');
  const folder = mkdtempSync(join(tmpdir(), 'fielded-bench-'));
  const text = readFileSync(example, 'utf8');
  for (let i = 0; i < 1000; i++)
    writeFileSync(join(folder, `job-${i}.yaml`), text.replace('depth: 9', `depth: ${9 + i / 10_000}`));
  // The process tells its own peak as it ends, on standard error.
  const tell = 'process.on("exit",()=>process.stderr.write("\\n#"+process.resourceUsage().maxRSS));';
  const hook = `--import=data:text/javascript,${encodeURIComponent(tell)}`;
  const whole = spawnSync(process.execPath, [hook, FIELDED, 'check', '--json', folder], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  const peak = Number(whole.stderr.split('#').at(-1)) / 1024;
  const thousand = medianOf(3, [FIELDED, 'check', '--json', folder]);
  rmSync(folder, { recursive: true });
  return { nothing: medianOf(11, ['-e', '0']), check: medianOf(11, [FIELDED, 'check', example]), thousand, peak };
}

function medianOf(runs: number, args: string[]): number {
  return median(
    Array.from({ length: runs }, () => {
      const start = performance.now();
      spawnSync(process.execPath, args, { stdio: 'ignore' });
      return performance.now() - start;
    }),
  );
}
