// What a build was made of: a note of its sources and of what it wrote, by which it is known whether it can be used again.
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import type { Plugin } from 'vite';

/** Beside the libraries: gone with them, and in no commit. */
export const KEPT = 'node_modules/.cache/fielded';

/** What stands in a package's folder and is not built from: what is built, and what its tests put there for a moment. */
const NOT_A_SOURCE = /^(?:dist|bundle|node_modules|first-program-.*)$/;

interface Note {
  readonly sources: string;
  readonly written: string;
}

/** A fingerprint of everything that a build of this workspace reads: its own files, and by the lock file the libraries. */
export function hashSources(root: string): string {
  const settings = readdirSync(root).filter((name) => /^(?:package(?:-lock)?|tsconfig.*)\.json$/.test(name));
  const packages = readdirSync(join(root, 'packages')).flatMap((name) =>
    readdirSync(join(root, 'packages', name))
      .filter((entry) => !NOT_A_SOURCE.test(entry))
      .map((entry) => join('packages', name, entry)),
  );
  return hashOf(root, [...settings, 'tools', ...packages], process.version);
}

/** A fingerprint of the names and contents of all files below a folder. */
export function hashFolder(folder: string): string {
  return hashOf(folder, readdirSync(folder));
}

function hashOf(root: string, entries: readonly string[], also = ''): string {
  const hash = createHash('sha256').update(also);
  for (const file of entries.flatMap((entry) => filesAt(join(root, entry))).sort()) {
    const bytes = readFileSync(file);
    hash.update(`\0${relative(root, file)}\0${bytes.length}\0`).update(bytes);
  }
  return hash.digest('hex');
}

function filesAt(path: string): string[] {
  try {
    const entries = readdirSync(path, { recursive: true, withFileTypes: true });
    return entries.filter((entry) => entry.isFile()).map(({ parentPath, name }) => join(parentPath, name));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOTDIR') return [path];
    throw error;
  }
}

/** Writes a note of a build into `folder`, where that is where it goes, unless the sources changed meanwhile. */
export function noteBuild(root: string, name: string, folder: string): Plugin {
  let sources: string | undefined;
  let isOwn = false;
  return {
    name: 'note-build',
    apply: 'build',
    configResolved({ root: at, build: { outDir } }) {
      isOwn = resolve(at, outDir) === resolve(folder);
    },
    buildStart() {
      if (isOwn) sources = hashSources(root);
    },
    closeBundle(error?: Error) {
      if (!isOwn || error !== undefined || sources !== hashSources(root)) return;
      const note: Note = { sources, written: hashFolder(folder) };
      mkdirSync(join(root, KEPT), { recursive: true });
      writeFileSync(noteOf(root, name), JSON.stringify(note));
    },
  };
}

/**
 * Whether a folder holds, unchanged, what builds of these names made one after the other of the sources that have this
 * fingerprint.
 */
export function isNoted(root: string, names: readonly string[], folder: string, sources: string): boolean {
  try {
    const notes = names.map((name) => JSON.parse(readFileSync(noteOf(root, name), 'utf8')) as Note);
    return notes.every((note) => note.sources === sources) && notes.at(-1)?.written === hashFolder(folder);
  } catch {
    return false;
  }
}

function noteOf(root: string, name: string): string {
  return join(root, KEPT, `${name}.json`);
}
