import { parseLength } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useId, useMemo, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { FilePicker } from '../../entry/file-picker.tsx';
import { LengthLine } from '../../entry/length-line.tsx';
import type { OutlinePlace } from '../../files/outline-files.ts';
import { createTracer, type PictureScale, type TraceAnswer } from '../../files/trace-picture.ts';
import { sayMisread } from '../../words/say-misread.ts';
import { SeenSample } from './seen-sample.tsx';

type State = TraceAnswer | { readonly kind: 'none' } | { readonly kind: 'reading' };

/** A scan or photo of a kept sample: it is traced here, and what was read becomes an outline of the job. */
export function TracePanel({ place, done }: { place: OutlinePlace; done: () => void }): JSX.Element {
  const state = useSignal<State>({ kind: 'none' });
  const name = useSignal('');
  const tracer = useMemo(createTracer, []);
  useEffect(() => tracer.stop, [tracer]);
  // Only the answer to the last question is shown.
  const asked = useRef(0);
  const wait = async (answer: Promise<TraceAnswer>) => {
    const mine = ++asked.current;
    state.value = { kind: 'reading' };
    const found = await answer;
    if (mine === asked.current) state.value = found;
  };
  const choose = ([file]: readonly File[]) => {
    if (file === undefined) return;
    tracer.stop();
    name.value = file.name;
    void wait(tracer.trace(file));
  };
  const { kind } = state.value;
  return (
    <div class="trace">
      <SamplePickers choose={choose} />
      {kind === 'none' && (
        <p class="hint">
          A kept sample’s end grain, with 20 mm of the field on it: flat on a scanner’s glass at 600 pixels to the inch,
          or on plain paper, photographed straight on from a metre away and enlarged.
        </p>
      )}
      <p role="status">{kind === 'reading' ? `Reading ${name.value}…` : ''}</p>
      {state.value.kind === 'refused' && (
        <p class="fault">
          {name.value}: {state.value.refused}. {state.value.instead}.
        </p>
      )}
      {(kind === 'asks-scale' || kind === 'refused' || kind === 'traced') && (
        <ScaleFields asks={kind === 'asks-scale'} again={(scale) => wait(tracer.again(scale))} />
      )}
      {state.value.kind === 'traced' && <SeenSample seen={state.value} place={place} done={done} />}
    </div>
  );
}

/** Chooses a picture of a sample, or takes one. */
function SamplePickers({ choose }: { choose: (files: readonly File[]) => void }): JSX.Element {
  const picker = useRef<HTMLInputElement>(null);
  const camera = useRef<HTMLInputElement>(null);
  return (
    <>
      <div class="buttons">
        <button type="button" onClick={() => picker.current?.click()}>
          From a scan or photo…
        </button>
        <button type="button" class="by-camera" onClick={() => camera.current?.click()}>
          Photograph it…
        </button>
      </div>
      <FilePicker
        picker={picker}
        label="Scan or photo of a sample’s end grain, PNG or JPEG"
        accept="image/png,image/jpeg,.png,.jpg,.jpeg"
        take={choose}
      />
      <FilePicker
        picker={camera}
        label="Photo of a sample’s end grain, taken now"
        accept="image/jpeg"
        capture="environment"
        take={choose}
      />
    </>
  );
}

/** Asks for the picture's scale, where its file does not say it or says it wrongly: the scanner's setting, or the thickness by a calliper. */
function ScaleFields({ asks, again }: { asks: boolean; again: (scale: PictureScale) => void }): JSX.Element {
  const desk = useDesk();
  const id = useId();
  const fault = useSignal('');
  const dpi = useRef<HTMLInputElement>(null);
  const thickness = useRef<HTMLInputElement>(null);
  const units = desk.units.value;
  const go = () => {
    const [perInch, thick] = [dpi.current!.value.trim(), thickness.current!.value.trim()];
    const read = thick === '' ? null : parseLength(thick, units);
    fault.value = '';
    if (read !== null && 'mm' in read && read.mm > 0) again({ thickness: read.mm });
    else if (read !== null && !('mm' in read)) fault.value = sayMisread(thick, read);
    else if (Number(perInch) > 0) again({ dpi: Number(perInch) });
    else fault.value = 'Give one of the two.';
  };
  const fields = (
    <form
      class="scale"
      onSubmit={(event) => {
        event.preventDefault();
        go();
      }}
    >
      <div class="field">
        <label for={`${id}-thick`}>Its thickness by the calliper</label>
        <LengthLine id={`${id}-thick`} units={units} field={thickness} placeholder="–" />
      </div>
      <div class="field">
        <label for={`${id}-dpi`}>Or pixels to the inch</label>
        <div class="line short">
          <input id={`${id}-dpi`} ref={dpi} type="text" inputMode="numeric" autocomplete="off" placeholder="–" />
        </div>
      </div>
      <p class="fault" aria-live="polite">
        {fault}
      </p>
      <button type="submit" class={asks ? 'main' : ''}>
        Trace at this scale
      </button>
    </form>
  );
  if (asks)
    return (
      <>
        <p>The picture does not say how large it is. Measure the sample’s thickness, or give the scanner’s setting.</p>
        {fields}
      </>
    );
  return (
    <details>
      <summary>Another scale</summary>
      {fields}
    </details>
  );
}
