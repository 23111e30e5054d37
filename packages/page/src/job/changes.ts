import { type Data, setAt } from './data.ts';

/** A change to the job: a path and its new value; undefined takes it out. */
export type JobChange = readonly [path: string, value: Data | undefined];

/** The data with changes made one after the other. */
export function applyChanges(data: Data, changes: readonly JobChange[]): Data {
  return changes.reduce((before, [path, value]) => setAt(before, path, value), data);
}
