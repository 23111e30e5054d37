import { cpSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { builtOnce } from './built-once.ts';
import { fillFromKept } from './kept-builds.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const CLI = join(root, 'packages/cli');
const BUNDLE = { name: 'bundle', steps: ['cli'], own: 'packages/cli/bundle' };

/**
 * The command to start as a process, as it is shipped: built from the sources of this moment, once for all test files, so that
 * no stale build is tested and a start takes a tenth of what it takes through a TypeScript loader.
 */
export async function builtCommand(): Promise<string> {
  const folder = await builtOnce('command', async (folder) => {
    const bundle = join(folder, 'bundle');
    await fillFromKept(root, BUNDLE, bundle, async () => {
      const { build } = await import('vite');
      await build({ root: CLI, logLevel: 'error', build: { outDir: bundle } });
    });
    for (const name of ['bin', 'package.json']) cpSync(join(CLI, name), join(folder, name), { recursive: true });
    symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  });
  return join(folder, 'bin/fielded.js');
}
