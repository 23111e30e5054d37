/** How long a task that makes steps begins another one, ms. */
const TASK = 6;

/** Makes steps in tasks of a few milliseconds, so that a touch is answered between them, then does the rest; not once `ended`. */
export function makeSteps(steps: Generator<void, void>, ended: () => boolean, rest: () => void): void {
  setTimeout(() => {
    const end = performance.now() + TASK;
    while (performance.now() < end) {
      if (ended()) return;
      if (steps.next().done) return rest();
    }
    makeSteps(steps, ended, rest);
  });
}
