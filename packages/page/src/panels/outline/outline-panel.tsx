import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { readFiles } from '../../files/open-text.ts';
import { useOutline, useOutlineFile } from '../../files/outline-files.ts';
import { getAt } from '../../job/data.ts';
import { DrawingPad } from './drawing-pad.tsx';

/** An outline of one's own for a cut: from a drawing, as path data, or drawn here. */
export function OutlinePanel({ index, close }: { index: number; close: () => void }): JSX.Element | null {
  const desk = useDesk();
  const picker = useRef<HTMLInputElement>(null);
  const cut = desk.job.value.cuts[index];
  const written = getAt(desk.doc.value.data, `cuts[${index}].profile.path`);
  const path = useSignal(typeof written === 'string' ? written : '');
  if (cut === undefined) return null;
  const take = async (field: HTMLInputElement) => {
    const files = [...(field.files ?? [])];
    field.value = '';
    const given = await readFiles(files);
    if ('message' in given) desk.notice.value = { kind: 'fault', text: given.message };
    else if (given[0]) useOutlineFile(desk, index, given[0]);
  };
  return (
    <div class="outline-panel">
      <div class="buttons">
        <button type="button" onClick={() => picker.current?.click()}>
          From a drawing…
        </button>
        <button type="button" class="quiet" onClick={close}>
          Close
        </button>
      </div>
      <input
        ref={picker}
        class="unseen"
        type="file"
        tabIndex={-1}
        aria-label={`Drawing for the ${cut.name}, SVG or DXF`}
        accept=".svg,.dxf"
        onChange={(event) => take(event.currentTarget)}
      />
      <p class="hint">
        One outline of lines and arcs, SVG or DXF: x in from the panel's edge, the worked face at the top.
      </p>
      <label class="path-label" for={`path-${index}`}>
        Or its path data, in {desk.job.value.units}
      </label>
      <textarea
        id={`path-${index}`}
        rows={3}
        spellcheck={false}
        value={path.value}
        placeholder="M 0 9 H 12 A 20 20 0 0 1 30 2 V 0"
        onInput={(event) => {
          path.value = event.currentTarget.value;
        }}
      />
      <button
        type="button"
        disabled={path.value.trim() === ''}
        onClick={() => useOutline(desk, index, path.value.trim())}
      >
        Cut this path
      </button>
      <DrawingPad index={index} />
    </div>
  );
}
