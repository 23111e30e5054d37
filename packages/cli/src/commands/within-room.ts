import { UsageError } from '../arguments.ts';

/** What is drawn; more of it than there is room for is refused with the option, the number and what to do. */
export function withinRoom<T>(option: string, whatToDo: string, draw: () => T): T {
  try {
    return draw();
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(`${option}: ${error.message}. ${whatToDo}`);
    throw error;
  }
}
