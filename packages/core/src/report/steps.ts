/** Makes all steps of a computation in a row, and gives what the last one gives. */
export function runToEnd<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
