// What was built before of the same sources: by `npm run build` (which `npm ci` ends with), or by an earlier run of the tests.
import { cpSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { hashSources, isNoted, KEPT } from '../../tools/note-build.ts';

/** What is built, in which steps, and where `npm run build` puts it. */
export interface Built {
  readonly name: string;
  /** As they are noted, in their order. */
  readonly steps: readonly string[];
  readonly own: string;
}

/** So many builds are kept of each kind. */
const MOST_KEPT = 3;

/** Fills a folder with what is built of the sources of this moment: what is kept of the same sources, or else a new build, which is kept. */
export async function fillFromKept(
  root: string,
  { name, steps, own }: Built,
  folder: string,
  build: () => Promise<void>,
): Promise<void> {
  const sources = hashSources(root);
  const kept = join(root, KEPT, `${name}-${sources.slice(0, 16)}`);
  if (isNoted(root, steps, join(root, own), sources)) cpSync(join(root, own), folder, { recursive: true });
  else if (existsSync(kept)) cpSync(kept, folder, { recursive: true });
  else {
    await build();
    // Whoever changed a source meanwhile gets what was built, and the next run builds anew.
    if (hashSources(root) === sources) keep(folder, kept);
  }
}

/** Keeps a copy of a folder, whole or not at all, and lets go of the oldest of its kind. */
function keep(folder: string, kept: string): void {
  const unfinished = `${kept}.${process.pid}`;
  mkdirSync(join(kept, '..'), { recursive: true });
  cpSync(folder, unfinished, { recursive: true });
  try {
    renameSync(unfinished, kept);
  } catch {
    // Another run was first.
    rmSync(unfinished, { recursive: true });
  }
  const kind = kept.replace(/[^-]+$/, '');
  const all = readdirSync(join(kept, '..'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => join(kept, '..', name))
    .filter((path) => path.startsWith(kind))
    .sort((a, b) => statSync(b).mtimeMs - statSync(a).mtimeMs);
  for (const old of all.slice(MOST_KEPT)) rmSync(old, { recursive: true, force: true });
}
