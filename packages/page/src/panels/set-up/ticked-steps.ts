import { readNote, writeNote } from '../../desk/job-notes.ts';

const NOTE = 'ticks';

/** The steps of a job's work that were ticked off in this browser, by their number and words. */
export function tickedSteps(id: string): ReadonlySet<string> {
  const kept = readNote(id, NOTE);
  return new Set(Array.isArray(kept) ? kept.filter((step): step is string => typeof step === 'string') : []);
}

/** Ticks a step off, or takes the tick back; returns the steps that are ticked off now. */
export function tickStep(id: string, step: string, done: boolean): ReadonlySet<string> {
  const steps = new Set(tickedSteps(id));
  if (done) steps.add(step);
  else steps.delete(step);
  writeNote(id, NOTE, [...steps]);
  return steps;
}
