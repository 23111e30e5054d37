import { computed, type ReadonlySignal } from '@preact/signals';
import { getAt } from '../job/data.ts';
import type { Desk } from './desk.ts';

/**
 * The same desk for what stands beside the sheet: while `isBusy` its signals keep their values, and what shows them is
 * rendered once, when that is over.
 */
export function createRestingDesk(desk: Desk, isBusy: () => boolean): Desk {
  const atRest = <T>(live: ReadonlySignal<T>): ReadonlySignal<T> => {
    let kept: { readonly value: T } | null = null;
    return computed(() => {
      if (kept === null || !isBusy()) kept = { value: live.value };
      return kept.value;
    });
  };
  const doc = atRest(desk.doc);
  return {
    ...desk,
    doc,
    job: atRest(desk.job),
    report: atRest(desk.report),
    problems: atRest(desk.problems),
    history: atRest(desk.history),
    canUndo: atRest(desk.canUndo),
    canRedo: atRest(desk.canRedo),
    value: (path) => getAt(doc.value.data, path),
  };
}
