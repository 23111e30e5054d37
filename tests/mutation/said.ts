import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What tests write down while faults are tried: a fault that was caught, one met outside all tests, a file that is done. */
export interface Said {
  readonly caught?: number;
  readonly by?: string;
  readonly outside?: number;
  /** Where it was met. */
  readonly file?: string;
  readonly done?: string;
}

export function listSaid(folder: string): Said[] {
  const lines = readFileSync(join(folder, 'said.jsonl'), 'utf8').split('\n');
  return lines.filter((line) => line !== '').map((line) => JSON.parse(line) as Said);
}
