import { inEnglish, type Unsaid, UsageError } from '../usage-error.ts';

/** Runs `draw`; turns a RangeError for too much to draw into wrong use, with the option, the number and what to do. */
export function withinRoom<T>(option: string, whatToDo: Unsaid, draw: () => T): T {
  try {
    return draw();
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(inEnglish(`${option}: ${error.message}.`), whatToDo);
    throw error;
  }
}
