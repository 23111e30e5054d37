import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { SmallFault } from './faults.ts';

/** A test file by its name below the project, with its text. */
export interface TestFile {
  readonly name: string;
  readonly text: string;
}

/** The test files in some folders of a project. */
export function listTests(root: string, folders: readonly string[]): TestFile[] {
  return folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.test.ts'))
      .map((name) => ({ name: join(folder, name), text: readFileSync(join(root, folder, name), 'utf8') })),
  );
}

/**
 *  The names of test files in the order in which they are likely to see a fault: those that import its file, the ones named for its
 * room first, those that are named like it, those that use what it exports, those that speak of its room, then all others; the
 * shortest first among equals.
 */
export function nearestFirst(tests: readonly TestFile[], { file }: SmallFault, source: string): string[] {
  const exported = [...source.matchAll(/^export (?:async )?(?:function|const|class) (\w+)/gm)].map(([, name]) => name!);
  const names = exported.length === 0 ? null : new RegExp(`\\b(${exported.join('|')})\\b`);
  const stem = basename(file, '.ts');
  const room = basename(dirname(file));
  const words = [...stem.split('-'), room].filter((word) => word.length > 3 && word !== 'src');
  const farness = ({ name, text }: TestFile): number => {
    const called = basename(name);
    if (text.includes(`/${room}/${stem}.ts'`)) return called.includes(room.replace(/s$/, '')) ? 0 : 0.5;
    if (called.includes(stem)) return 1;
    if (names?.test(text)) return 2;
    if (words.some((word) => called.includes(word)) || text.includes(`/${room}/`)) return 3;
    return SLOW.test(name) ? 5 : 4;
  };
  return tests
    .map((test) => ({ ...test, far: farness(test) }))
    .sort((one, other) => one.far - other.far || one.text.length - other.text.length)
    .map(({ name }) => name);
}

/** Tests with thousands of random cases, or with pictures. */
const SLOW = /^tests[\\/](properties|reference|exchange)|fuzz|bounds/;
