/**
 * How many random cases a test tries: few each day, chosen so that the faults that it is for are still found, and all with
 * `npm run test:long`, before a release.
 */
export function trials(few: number, all: number): number {
  return process.env.TRIALS === 'all' ? all : few;
}
