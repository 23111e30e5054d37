import { formatLength, formatNumber, parseLength } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useId, useMemo, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { FilePicker } from '../../entry/file-picker.tsx';
import { LengthLine } from '../../entry/length-line.tsx';
import { type OutlinePlace, outlineChanges, pathInUnits, useOutlines } from '../../files/outline-files.ts';
import { createTracer, type PictureScale, type SeenSide, type TraceAnswer } from '../../files/trace-picture.ts';
import type { JobChange } from '../../job/changes.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { sayMisread } from '../../words/say-misread.ts';

type Seen = Extract<TraceAnswer, { kind: 'traced' }>;
/** Below this, mm, a figure would read as nothing. */
const LEAST_SAID = 0.005;
type State = TraceAnswer | { readonly kind: 'none' } | { readonly kind: 'reading' };

/** A scan or photo of a kept sample, traced in place: what was read over what was seen, and into the job with it. */
export function TracePanel({ place }: { place: OutlinePlace }): JSX.Element {
  const picker = useRef<HTMLInputElement>(null);
  const state = useSignal<State>({ kind: 'none' });
  const name = useSignal('');
  const tracer = useMemo(createTracer, []);
  useEffect(() => tracer.stop, [tracer]);
  /** The answer that is waited for last is the one that counts. */
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
      <button type="button" onClick={() => picker.current?.click()}>
        From a scan or photo…
      </button>
      <FilePicker
        picker={picker}
        label="Scan or photo of a sample’s end grain, PNG or JPEG"
        accept="image/png,image/jpeg,.png,.jpg,.jpeg"
        take={choose}
      />
      {kind === 'none' && (
        <p class="hint">
          A kept sample’s end grain: flat on a scanner’s glass at 600 to the inch, or photographed straight on, with 20
          mm of the field on it.
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
      {state.value.kind === 'traced' && <SeenSample seen={state.value} place={place} />}
    </div>
  );
}

/** How large the picture is, where its file does not say or says it wrongly: by the scanner's setting or by a calliper. */
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
        <label for={`${id}-dpi`}>Pixels to the inch</label>
        <div class="line short">
          <input id={`${id}-dpi`} ref={dpi} type="text" inputMode="numeric" autocomplete="off" placeholder="600" />
        </div>
      </div>
      <div class="field">
        <label for={`${id}-thick`}>or its thickness by the calliper</label>
        <LengthLine id={`${id}-thick`} units={units} field={thickness} placeholder="–" />
      </div>
      <p class="fault" aria-live="polite">
        {fault}
      </p>
      <button type="submit">Trace it so</button>
    </form>
  );
  if (asks)
    return (
      <>
        <p>The picture does not say how large it is. Give the scanner’s setting, or measure the sample.</p>
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

/** What was read, in figures and over the picture; and the ways to use it. */
function SeenSample({ seen, place }: { seen: Seen; place: OutlinePlace }): JSX.Element {
  const desk = useDesk();
  const say = (mm: number) => keepTogether(formatLength(mm, desk.units.value, 2));
  const picture = useMemo(() => `data:image/svg+xml;charset=utf-8,${encodeURIComponent(seen.svg)}`, [seen]);
  const { front, back, thickness, turned } = seen;
  const use = (changes: readonly JobChange[], what: string) => () => {
    if (useOutlines(desk, changes))
      desk.notice.value = { kind: 'note', text: `The sample is now the ${what}. Undo takes it back.` };
  };
  const path = (side: SeenSide) => pathInUnits(rounded(side.path), desk.job.value.units);
  return (
    <div class="seen">
      <img
        src={picture}
        alt={`What was read drawn over the picture: front ${say(front.reach)} in, ${say(front.depth)} deep`}
      />
      <p>
        {say(thickness)} thick, turned by {formatNumber(turned, 1)}° until level. Check the thickness with a calliper.
      </p>
      <SideWords name="Front" side={front} say={say} />
      {back ? <SideWords name="Back" side={back} say={say} /> : <p>Back: no cut.</p>}
      <div class="buttons">
        {place === 'sticking' ? (
          <button type="button" class="main" onClick={use(outlineChanges('sticking', path(front)), 'sticking')}>
            Use it as the sticking
          </button>
        ) : (
          <>
            {back !== null && (
              <button
                type="button"
                class="main"
                onClick={use(
                  [...sideChanges(desk, 'front', path(front)), ...sideChanges(desk, 'back', path(back), 'front')],
                  'outline of front and back',
                )}
              >
                Use both outlines
              </button>
            )}
            <button
              type="button"
              class={back === null ? 'main' : ''}
              onClick={use(sideChanges(desk, 'front', path(front)), 'outline of the front')}
            >
              Use as front outline
            </button>
            <button type="button" onClick={use(sideChanges(desk, 'back', path(back ?? front)), 'outline of the back')}>
              Use as back outline
            </button>
          </>
        )}
      </div>
    </div>
  );
}

function SideWords({ name, side, say }: { name: string; side: SeenSide; say: (mm: number) => string }): JSX.Element {
  const { reach, depth, deviation, arcs } = side;
  const atMost = (mm: number) => (mm < LEAST_SAID ? `less than ${say(2 * LEAST_SAID)}` : say(mm));
  return (
    <>
      <p>
        <b>{name}</b>: {say(reach)} in, {say(depth)} deep. Lines and arcs within{' '}
        {say(Math.max(deviation, 2 * LEAST_SAID))} of what was seen.
      </p>
      {arcs.length > 0 && (
        <ul class="arcs">
          {arcs.map(({ from, to, radius, uncertainty, nominal, deviation: off }) => (
            <li key={from}>
              {say(from)} to {say(to)} in: radius {say(radius)} ± {atMost(uncertainty)}
              {nominal !== null && `; ${say(nominal)} would lie ${atMost(off)} off in its middle`}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** The first cut on a side with another outline; a new cut where there is none yet. `added` names a side that another change adds. */
function sideChanges(desk: Desk, side: 'front' | 'back', path: string, added?: 'front'): JobChange[] {
  const { cuts } = desk.job.value;
  const index = cuts.findIndex((cut) => cut.side === side);
  if (index >= 0) return outlineChanges(index, path);
  const before = added !== undefined && !cuts.some((cut) => cut.side === added) ? 1 : 0;
  return [[`cuts[${cuts.length + before}]`, { name: side, side, profile: { shape: 'outline', path } }]];
}

/** Path data to a thousandth of a millimetre: finer than any scan. */
function rounded(path: string): string {
  return path.replace(/-?\d+\.\d+(?:e-?\d+)?/g, (number) => String(Math.round(Number(number) * 1000) / 1000 + 0));
}
