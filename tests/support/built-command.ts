import { cpSync, existsSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { inject } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const CLI = join(root, 'packages/cli');

/**
 * The command to start as a process, as it is shipped: built from the sources of this moment, once for all test files, so that
 * no stale build is tested and a start takes a tenth of what it takes through a TypeScript loader.
 */
export async function builtCommand(): Promise<string> {
  const folder = inject('commandFolder');
  const done = join(folder, 'done');
  if (begin(join(folder, 'begun'))) {
    const before = process.env.NODE_ENV;
    process.env.NODE_ENV = 'production';
    await build({ root: CLI, logLevel: 'error', build: { outDir: join(folder, 'bundle') } });
    process.env.NODE_ENV = before;
    for (const name of ['bin', 'package.json']) cpSync(join(CLI, name), join(folder, name), { recursive: true });
    symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
    writeFileSync(done, '');
  }
  while (!existsSync(done)) await wait(50);
  return join(folder, 'bin/fielded.js');
}

/** Whether this is the first to begin. */
function begin(folder: string): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch {
    return false;
  }
}
