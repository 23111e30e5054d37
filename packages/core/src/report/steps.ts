/** Makes all steps of a computation in a row, and gives what the last one gives. */
export function runToEnd<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The first of each list that serves, where one does; each that is tried is a step. */
export function* firstOfEach<T>(lists: readonly Iterable<T>[], serves: (each: T) => boolean): Generator<void, T[]> {
  const found: T[] = [];
  for (const list of lists) {
    for (const each of list) {
      yield;
      if (!serves(each)) continue;
      found.push(each);
      break;
    }
  }
  return found;
}
