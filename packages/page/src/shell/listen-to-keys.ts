import type { Desk } from '../desk/desk.ts';
import { attempt, fetchPart } from '../desk/fetch-part.ts';
import { tell } from '../words/aloud.ts';

type Keys = typeof import('./keys.ts');

/** Undo, redo and save, wherever the focus is; what other keys do is fetched at the first of them. Returns what stops it. */
export function listenToKeys(desk: Desk): () => void {
  let keys: Keys | null = null;
  let stop = () => {};
  const heard = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey) command(desk, event);
    if (keys !== null) return keys.hearKey(event);
    void fetchPart(() => import('./keys.ts')).then(
      (fetched) => {
        if (keys === null) stop = fetched.keepKeyboard();
        keys = fetched;
        keys.hearKey(event);
      },
      // Without it Tab and Enter still reach everything.
      () => {},
    );
  };
  addEventListener('keydown', heard);
  return () => {
    stop();
    removeEventListener('keydown', heard);
  };
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
    const { action } = desk.notice.peek();
    if (action?.undoes) action.run();
    else goStep(desk, 'undo');
  }
  if (key === 'y' || (key === 'z' && event.shiftKey)) {
    event.preventDefault();
    goStep(desk, 'redo');
  }
}

/** A step of undo back or forward, told to those who do not see what changes. */
export function goStep(desk: Desk, way: 'undo' | 'redo'): void {
  const can = way === 'undo' ? desk.canUndo : desk.canRedo;
  if (can.peek()) tell(way === 'undo' ? 'Undone.' : 'Done again.');
  desk[way]();
}
