import { type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { FilePicker } from '../../entry/file-picker.tsx';
import { Fold } from '../../entry/fold.tsx';
import { useOpenedPart } from '../../entry/opened-part.ts';
import { readFiles } from '../../files/open-text.ts';
import { type OutlinePlace, placeName, useOutlineAndSay, useOutlineFile } from '../../files/outline-files.ts';
import { getAt } from '../../job/data.ts';
import { adoptStyles } from '../../style/adopt-styles.ts';
import outlineStyles from '../../style/outline.css?inline';
import { UNITS } from '../../words/aloud.ts';
import { DrawingPad } from './drawing-pad.tsx';
import { TracePanel } from './trace-panel.tsx';

adoptStyles(outlineStyles);

/** An outline of one's own for a cut or the sticking: from a drawing, a scan or photo, as path data, or drawn here. */
export function OutlinePanel({ place, close }: { place: OutlinePlace; close: () => void }): JSX.Element {
  const desk = useDesk();
  const picker = useRef<HTMLInputElement>(null);
  const panel = useRef<HTMLDivElement>(null);
  useOpenedPart(panel, close);
  const name = placeName(desk, place);
  const at = place === 'sticking' ? 'frame.sticking' : `cuts[${place}].profile`;
  const written = getAt(desk.doc.value.data, `${at}.path`);
  const path = useSignal(typeof written === 'string' ? written : '');
  const take = async (files: readonly File[]) => {
    const given = await readFiles(files);
    if ('message' in given) desk.notice.value = { kind: 'fault', text: given.message };
    else if (given[0] && useOutlineFile(desk, place, given[0])) close();
  };
  return (
    <div class="outline-panel" ref={panel} role="group" aria-label={`Own outline for the ${name}`}>
      <div class="buttons">
        <button type="button" onClick={() => picker.current?.click()}>
          From a drawing…
        </button>
        <button type="button" class="quiet" onClick={close}>
          Close
        </button>
      </div>
      <FilePicker picker={picker} label={`Drawing for the ${name}, SVG or DXF`} accept=".svg,.dxf" take={take} />
      <p class="hint">
        One outline of lines and arcs, SVG or DXF: the panel's edge at the left, the worked face at the top.
      </p>
      <TracePanel place={place} done={close} />
      <Fold name="Draw it by hand">{() => <DrawingPad place={place} done={close} />}</Fold>
      <Fold name="As path data">{() => <PathEntry place={place} path={path} done={close} />}</Fold>
    </div>
  );
}

/** An outline typed as path data; what is typed stays in `path`. */
function PathEntry({
  place,
  path,
  done,
}: {
  place: OutlinePlace;
  path: Signal<string>;
  done: () => void;
}): JSX.Element {
  const desk = useDesk();
  return (
    <>
      <label class="path-label" for={`path-${place}`}>
        Path data, in {UNITS[desk.job.value.units]}
      </label>
      <textarea
        id={`path-${place}`}
        rows={3}
        spellcheck={false}
        value={path.value}
        placeholder="M 0 9 H 12 A 27 27 0 0 0 30 2 V 0"
        onInput={(event) => {
          path.value = event.currentTarget.value;
        }}
      />
      <button
        type="button"
        disabled={path.value.trim() === ''}
        onClick={() => {
          if (useOutlineAndSay(desk, place, path.value.trim(), 'The path')) done();
        }}
      >
        Use this path
      </button>
    </>
  );
}
