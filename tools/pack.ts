// Packs every package as it is published, the same bytes wherever and by whomever it is done: npm run packs -- FOLDER, after npm run build.
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const PACKAGES: readonly string[] = ['geometry', 'core', 'render', 'exchange', 'page', 'cli'];

/** A pack as `npm pack --json` tells of it. */
export interface Pack {
  readonly name: string;
  readonly filename: string;
  readonly files: readonly { readonly path: string }[];
}

/**
 * Packs the packages below `root` into a folder. npm gives files one date but keeps who may read them, which follows from the
 * settings of whoever built: all are made readable first.
 *
 * @throws Error with what npm says where it fails.
 */
export function packAll(root: string, destination: string): readonly Pack[] {
  mkdirSync(destination, { recursive: true });
  for (const name of PACKAGES) makeReadable(join(root, 'packages', name));
  const which = PACKAGES.flatMap((name) => ['-w', `packages/${name}`]);
  const args = ['pack', '--json', '--ignore-scripts', '--pack-destination', resolve(destination), ...which];
  const { status, stdout, stderr } = spawnSync('npm', args, { cwd: root, encoding: 'utf8' });
  if (status !== 0) throw new Error(`npm ${args.join(' ')}: ${status}\n${stdout}\n${stderr}`);
  // Older versions of npm give a list, newer ones an object by name.
  const packed = JSON.parse(stdout) as Pack[] | Record<string, Pack>;
  return Array.isArray(packed) ? packed : Object.values(packed);
}

/** Every file for all to read, those in bin to run as well. */
function makeReadable(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
    if (!entry.isFile() || entry.parentPath.includes('node_modules')) continue;
    chmodSync(join(entry.parentPath, entry.name), /[\\/]bin$/.test(entry.parentPath) ? 0o755 : 0o644);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [, , folder = 'out/packs'] = process.argv;
  for (const { filename } of packAll(fileURLToPath(new URL('..', import.meta.url)), folder))
    console.log(join(folder, filename));
}
