import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A small fault: in one place of one file, one text in place of another. */
export interface SmallFault {
  readonly file: string;
  readonly line: number;
  readonly at: number;
  readonly from: string;
  readonly to: string;
}

/** What figures and shapes are computed by. */
const FOLDERS = [
  'packages/geometry/src',
  'packages/core/src/profile',
  'packages/core/src/machining',
  'packages/core/src/joint',
  'packages/core/src/knife',
];

/** Slips of the kind that people make. */
const SLIPS: readonly (readonly [string, string])[] = [
  [' + ', ' - '],
  [' - ', ' + '],
  [' * ', ' / '],
  ['Math.max(', 'Math.min('],
  ['Math.min(', 'Math.max('],
  ['Math.sin(', 'Math.cos('],
  ['Math.cos(', 'Math.sin('],
  [' && ', ' || '],
  [' === ', ' !== '],
  [' > 0', ' < 0'],
  [' < 0', ' > 0'],
];

/** `count` faults, spread evenly over all that could be made, the same ones for the same sources. */
export function listFaults(root: string, count: number): SmallFault[] {
  const all = FOLDERS.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !name.endsWith('index.ts'))
      .sort()
      .flatMap((name) => faultsOf(root, `${folder}/${name}`)),
  );
  return Array.from({ length: Math.min(count, all.length) }, (_, i) => all[Math.floor((i * all.length) / count)]!);
}

/** Every slip that could be made in the code of a file; comments and imports are left as they are. */
function faultsOf(root: string, file: string): SmallFault[] {
  const faults: SmallFault[] = [];
  let at = 0;
  for (const [index, text] of readFileSync(join(root, file), 'utf8').split('\n').entries()) {
    if (!/^\s*(\*|\/\/|\/\*|import |export \{|export type)/.test(text)) {
      for (const [from, to] of SLIPS) {
        for (let found = text.indexOf(from); found >= 0; found = text.indexOf(from, found + from.length))
          faults.push({ file, line: index + 1, at: at + found, from, to });
      }
    }
    at += text.length + 1;
  }
  return faults;
}
