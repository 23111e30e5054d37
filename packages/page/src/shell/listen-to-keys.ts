import type { Desk } from '../desk/desk.ts';
import { attempt, fetchPart } from '../desk/fetch-part.ts';
import { moveOnByEnter } from '../entry/move-on.ts';

/** Keys that mean the same wherever the focus is: undo, redo, save, on to the next field, back to the row of parts. Returns what stops it. */
export function listenToKeys(desk: Desk): () => void {
  const heard = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey) command(desk, event);
    else if (event.key === 'Enter') moveOnByEnter(event);
    else if (event.key === 'Escape') goBack(event);
  };
  addEventListener('keydown', heard);
  return () => removeEventListener('keydown', heard);
}

function command(desk: Desk, event: KeyboardEvent): void {
  if (event.altKey) return;
  const key = event.key.toLowerCase();
  if (key === 's') {
    event.preventDefault();
    void attempt(desk, async () => (await fetchPart(() => import('../files/save-job.ts'))).saveJob(desk));
  }
  // A field that has something typed in it undoes that itself.
  const typing = event.target instanceof HTMLInputElement && event.target.type === 'text';
  if (typing && Object.keys(desk.drafts.value).length > 0) return;
  if (key === 'z' && !event.shiftKey) {
    event.preventDefault();
    desk.undo();
  }
  if (key === 'y' || (key === 'z' && event.shiftKey)) {
    event.preventDefault();
    desk.redo();
  }
}

/** Escape goes from whatever has nothing to take back to the row of parts. */
function goBack(event: KeyboardEvent): void {
  if (event.defaultPrevented || !(event.target as Element).closest('.side, .stage')) return;
  document.querySelector<HTMLElement>('.rooms [tabindex="0"]')?.focus();
}
