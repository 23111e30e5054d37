const KEY = 'fielded.ticks.';

/** The steps of a job's work that were ticked off in this browser, by their number and words. */
export function tickedSteps(title: string): ReadonlySet<string> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY + title) ?? '[]');
    return new Set(Array.isArray(kept) ? kept.filter((step): step is string => typeof step === 'string') : []);
  } catch {
    return new Set();
  }
}

/** Ticks a step off, or on again. Where nothing can be stored it holds until the page is closed. */
export function tickStep(title: string, step: string, done: boolean): ReadonlySet<string> {
  const steps = new Set(tickedSteps(title));
  if (done) steps.add(step);
  else steps.delete(step);
  try {
    localStorage.setItem(KEY + title, JSON.stringify([...steps]));
  } catch {
    // It is shown all the same.
  }
  return steps;
}
