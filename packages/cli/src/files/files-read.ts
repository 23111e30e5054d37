import type { Stats } from 'node:fs';

/** The files that this run has read, by device and number, so that none of them is written over by what was made of it. */
const read = new Set<string>();

const identityOf = ({ dev, ino }: Stats) => `${dev}:${ino}`;

/** Notes that a file was read. */
export function noteRead(file: Stats): void {
  read.add(identityOf(file));
}

/** Whether this run has read the file, whatever name it was given. */
export function wasRead(file: Stats): boolean {
  return read.has(identityOf(file));
}

/** Begins a run: what an earlier one in this process read no longer counts. */
export function forgetRead(): void {
  read.clear();
}
