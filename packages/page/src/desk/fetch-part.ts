import { PartMissing } from '@fielded/render';
import type { Notice } from './notice.ts';

/** A part of the page that could not be fetched: there is no network, or a newer page has taken this one's place. */
class NotFetched extends Error {}

/** What is said where a part could not be fetched. */
export const NOT_FETCHED =
  'A part of the page could not be fetched: there may be no network. Your job is kept. If it fails again, reload the page.';

/** Fetches a part of the page; the next call tries again. Rejects with an error that `attempt` tells from other faults. */
export async function fetchPart<T>(load: () => Promise<T>): Promise<T> {
  try {
    return await load();
  } catch {
    throw new NotFetched(NOT_FETCHED);
  }
}

/** What is said of an act that failed. */
interface Failing {
  /** Where a part could not be fetched, in place of `NOT_FETCHED`. */
  readonly missing?: string;
  /** For any other fault. */
  readonly fault?: (error: Error) => string;
}

/**
 * Runs an act for which parts of the page are fetched, and returns whether it succeeded. A notice says what went wrong;
 * where a part could not be fetched, it has a button that runs the act again.
 */
export async function attempt(
  desk: { readonly notice: { value: Notice } },
  act: () => Promise<unknown>,
  failing: Failing = {},
): Promise<boolean> {
  const { missing = NOT_FETCHED, fault = sayNotMade } = failing;
  try {
    await act();
    return true;
  } catch (error) {
    const again = () => {
      desk.notice.value = { kind: 'note', text: '' };
      void attempt(desk, act, failing);
    };
    desk.notice.value =
      error instanceof NotFetched || error instanceof PartMissing
        ? { kind: 'fault', text: missing, action: { name: 'Try again', run: again } }
        : { kind: 'fault', text: fault(error as Error) };
    return false;
  }
}

function sayNotMade({ message }: Error): string {
  return `That could not be made: ${message.replace(/\.+$/, '')}.`;
}
