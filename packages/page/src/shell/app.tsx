import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { DeskContext } from '../desk/context.ts';
import type { Desk } from '../desk/desk.ts';
import type { Keeper } from '../desk/keeper.ts';
import { createPrinting, PrintSheets } from '../files/print-sheets.tsx';
import { EXAMPLE } from '../job/start.ts';
import { Sizes } from '../panels/sizes/sizes.tsx';
import { Stage } from '../stage/stage.tsx';
import type { ViewName } from '../stage/view-scene.ts';
import { Notices } from './notices.tsx';
import { TitleBar } from './title-bar.tsx';

/** The whole page. `greet` shows a first visitor what to touch. */
export function App({ desk, keeper, greet }: { desk: Desk; keeper: Keeper; greet: boolean }): JSX.Element {
  const view = useSignal<ViewName>('joint');
  const printing = useMemo(createPrinting, []);
  useEffect(() => listenToKeys(desk), [desk]);
  useEffect(() => listenToDrops(desk), [desk]);
  return (
    <DeskContext.Provider value={desk}>
      <div class="page">
        <TitleBar view={view.value} keeper={keeper} printing={printing} />
        <main>
          <Stage
            view={view.value}
            setView={(next) => {
              view.value = next;
            }}
          />
          <div class="side">
            {greet && desk.doc.value.data === EXAMPLE && (
              <p class="greeting">
                A finished joint to begin with. Tap a figure on the drawing and type over it, or drag one of the small
                circles. <b>New</b>, under <b>Job</b>, starts from stock and groove.
              </p>
            )}
            <Sizes />
          </div>
        </main>
        <Notices />
      </div>
      <PrintSheets printing={printing} />
    </DeskContext.Provider>
  );
}

function listenToKeys(desk: Desk): () => void {
  const heard = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const typing = event.target instanceof HTMLInputElement && event.target.type === 'text';
    if (key === 's') {
      event.preventDefault();
      void import('../files/save-job.ts').then(({ saveJob }) => saveJob(desk));
    }
    // A field that has something typed in it undoes that itself.
    if (typing && Object.keys(desk.drafts.value).length > 0) return;
    if (key === 'z' && !event.shiftKey) {
      event.preventDefault();
      desk.undo();
    }
    if (key === 'y' || (key === 'z' && event.shiftKey)) {
      event.preventDefault();
      desk.redo();
    }
  };
  addEventListener('keydown', heard);
  return () => removeEventListener('keydown', heard);
}

function listenToDrops(desk: Desk): () => void {
  const over = (event: DragEvent) => event.preventDefault();
  const drop = (event: DragEvent) => {
    event.preventDefault();
    const files = [...(event.dataTransfer?.files ?? [])];
    void import('../files/take-in.ts').then(({ takeInFiles }) => takeInFiles(desk, files));
  };
  addEventListener('dragover', over);
  addEventListener('drop', drop);
  return () => {
    removeEventListener('dragover', over);
    removeEventListener('drop', drop);
  };
}
