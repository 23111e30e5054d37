import { findNearest } from '../reading/nearest.ts';

/** Says that a name means nothing here, and which one it may have been meant for. */
export function unknownName(what: string, name: string, known: readonly string[]): string {
  const near = findNearest(name, known);
  const hint = near === undefined ? `it knows ${known.join(', ')}` : `did you mean ${near}?`;
  return `${name} is not ${what} of this job: ${hint}`;
}
