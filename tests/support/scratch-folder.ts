import { accessSync, constants, mkdirSync, readdirSync, readFileSync, rmSync, statfsSync } from 'node:fs';
import { freemem } from 'node:os';
import { join } from 'node:path';

const MEMORY = '/dev/shm';
const NAME = 'fielded-tests-';
/** What must be free, bytes: ten times what the tests put there. */
const ENOUGH = 4e9;

/**
 * Has the tests, and the programs that they start, put their temporary files into memory where Linux has room for them there: they
 * make and delete some 20,000 small files, which costs a disk several seconds of the processor's time. Whoever names a folder for
 * temporary files, in TMPDIR, keeps it. The folder goes with this process.
 */
export function scratchInMemory(): void {
  if (process.env.TMPDIR !== undefined || !hasRoom()) return;
  // Those of runs that were killed go first.
  for (const name of readdirSync(MEMORY)) {
    if (!name.startsWith(NAME) || isRunning(Number(name.slice(NAME.length)))) continue;
    rmSync(join(MEMORY, name), { recursive: true, force: true });
  }
  const folder = join(MEMORY, `${NAME}${process.pid}`);
  mkdirSync(folder, { recursive: true });
  process.env.TMPDIR = folder;
  process.on('exit', () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
}

/** Whether files can be put there and run there. */
function hasRoom(): boolean {
  try {
    accessSync(MEMORY, constants.W_OK);
    const { bavail, bsize } = statfsSync(MEMORY);
    const mounted = readFileSync('/proc/mounts', 'utf8')
      .split('\n')
      .find((line) => line.split(' ')[1] === MEMORY);
    return mounted !== undefined && !/\bnoexec\b/.test(mounted) && Math.min(bavail * bsize, freemem()) > ENOUGH;
  } catch {
    return false;
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
