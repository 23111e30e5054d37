import { UsageError } from '../arguments.ts';

/** Runs `draw`; turns a RangeError for too much to draw into wrong use, with the option, the number and what to do. */
export function withinRoom<T>(option: string, whatToDo: string, draw: () => T): T {
  try {
    return draw();
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(`${option}: ${error.message}. ${whatToDo}`);
    throw error;
  }
}
