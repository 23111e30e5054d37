import type { Units } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { beginHistory } from '../../desk/history.ts';
import type { Keeper } from '../../desk/keeper.ts';
import { entryText } from '../../entry/entry-text.ts';
import { LengthLine } from '../../entry/length-line.tsx';
import { type Begun, beginJob, type StartShape } from '../../job/new-job.ts';
import { JointThumb } from '../../stage/joint-thumb.tsx';
import type { Places } from '../../stage/places.ts';
import { ShapeRow } from '../sizes/shape-row.tsx';
import { drawShapes } from './begun-shapes.ts';
import {
  askFor,
  inOtherUnits,
  LENGTH_LABELS,
  LENGTHS,
  type LengthName,
  readLengths,
  usualTexts,
} from './new-lengths.ts';

/** Asks for stock, frame and groove, then what front and back look like; the joint that comes of it stands beside. */
export function NewJobForm({ keeper, places }: { keeper: Keeper; places: Places }): JSX.Element {
  const desk = useDesk();
  const units = desk.units.value;
  const title = useSignal('');
  const front = useSignal<StartShape>('ogee');
  const back = useSignal<StartShape | 'none'>('cove');
  const typed = useSignal({ units, texts: usualTexts(units) });
  const texts = useMemo(() => inOtherUnits(typed.value.texts, typed.value.units, units), [typed.value, units]);
  const read = useMemo(() => readLengths(texts, units), [texts, units]);
  const named = title.value.trim() || 'New job';
  const asked = useMemo(
    () => read.lengths && askFor(read.lengths, named, units, front.value, back.value),
    [read, named, units, front.value, back.value],
  );
  const begun = useMemo(() => asked && beginJob(asked), [asked]);
  const drawn = useRef(asked);
  // While a size is half typed, or none can be made so, the shapes stay as they were.
  if (begun !== null && 'data' in begun) drawn.current = asked;
  const [fronts, backs] = useMemo(() => drawShapes(drawn.current, units), [drawn.current, units]);
  const leave = () => {
    places.place.value = 'joint';
  };
  const begin = async () => {
    if (begun === null || !('data' in begun)) return;
    await keeper.putAside();
    desk.lay(beginHistory({ data: begun.data, source: null, fileName: 'job.yaml', shop: desk.doc.value.shop }));
    desk.units.value = units;
    desk.trace.value = null;
    leave();
    desk.notice.value = { kind: 'note', text: `${named} is on the board. The job before is kept under Job.` };
  };
  const field = (name: LengthName) => (
    <NewLength
      key={name}
      label={LENGTH_LABELS[name]}
      text={texts[name]}
      units={units}
      fault={read.faults[name] ?? ''}
      type={(text) => {
        typed.value = { units, texts: { ...texts, [name]: text } };
      }}
    />
  );
  return (
    <form
      class="new-job"
      aria-labelledby="new-name"
      onSubmit={(event) => {
        event.preventDefault();
        void begin();
      }}
    >
      <h2 id="new-name">A new job</h2>
      <div class="field">
        <label for="new-title">Name</label>
        <div class="line wide">
          <input
            id="new-title"
            type="text"
            autocomplete="off"
            placeholder="Kitchen doors, oak"
            value={title.value}
            onInput={(event) => {
              title.value = event.currentTarget.value;
            }}
          />
        </div>
      </div>
      {LENGTHS.slice(0, -1).map(field)}
      <h3>Front</h3>
      <ShapeRow
        label="Front"
        name="new front"
        drawings={fronts}
        value={front.value}
        choose={(next) => {
          front.value = next;
        }}
      />
      <h3>Back</h3>
      <ShapeRow
        label="Back"
        name="new back"
        drawings={backs}
        value={back.value}
        choose={(next) => {
          back.value = next;
        }}
      />
      {back.value !== 'none' && field('proud')}
      <Preview begun={begun} units={units} back={back.value} />
      <div class="buttons">
        <button type="submit" class="main" disabled={begun === null || !('data' in begun)}>
          Begin
        </button>
        <button type="button" class="quiet" onClick={leave}>
          Cancel
        </button>
      </div>
    </form>
  );
}

function NewLength({
  label,
  text,
  units,
  fault,
  type,
}: {
  label: string;
  text: string;
  units: Units;
  fault: string;
  type: (text: string) => void;
}): JSX.Element {
  const id = `new-${label.toLowerCase().replace(/[^a-z]+/g, '-')}`;
  return (
    <div class={`field${fault ? ' faulty' : ''}`}>
      <label for={id}>{label}</label>
      <LengthLine
        id={id}
        units={units}
        value={text}
        aria-invalid={fault !== ''}
        aria-describedby={`${id}-fault`}
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) => type(event.currentTarget.value)}
      />
      <p class="fault" id={`${id}-fault`} aria-live="polite">
        {fault}
      </p>
    </div>
  );
}

/** The joint as it would be begun, or why it cannot. */
function Preview({ begun, units, back }: { begun: Begun | null; units: Units; back: string }): JSX.Element {
  if (begun === null) return <p class="hint">Type the sizes above to see the joint.</p>;
  if ('reason' in begun)
    return (
      <p class="fault" role="status">
        {begun.reason}
      </p>
    );
  return (
    <div class="preview" role="status">
      <JointThumb doc={{ data: begun.data, shop: null }} />
      <p>
        It fits, and {sayFace(begun.face, units)}
        {back === 'none' && Math.abs(begun.face) > 0.005 && ', since nothing is cut on the back'}.
      </p>
      {begun.warnings.map((warning) => (
        <p key={warning}>{warning}</p>
      ))}
    </div>
  );
}

function sayFace(face: number, units: Units): string {
  if (Math.abs(face) < 0.005) return 'the face is flush';
  return `the face stands ${entryText(Math.abs(face), units)} ${units} ${face > 0 ? 'proud' : 'back'}`;
}
