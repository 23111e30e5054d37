import { parseLength, type Units } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { beginHistory } from '../../desk/history.ts';
import type { Keeper } from '../../desk/keeper.ts';
import { entryText } from '../../entry/entry-text.ts';
import { LengthLine } from '../../entry/length-line.tsx';
import { type Begun, beginJob, type NewJob, type ShapeName } from '../../job/new-job.ts';
import type { Places } from '../../shell/places.ts';
import { JointThumb } from '../../shell/thumb.tsx';
import { sayMisread } from '../../words/say-misread.ts';
import { Choice } from '../sizes/choice.tsx';

const SHAPES: readonly (readonly [ShapeName, string])[] = [
  ['rebate', 'rebate'],
  ['bevel', 'bevel'],
  ['cove', 'cove'],
  ['ovolo', 'ovolo'],
  ['ogee', 'ogee'],
];

const LENGTHS = ['stock', 'frame', 'width', 'depth', 'setback', 'swellGap', 'proud'] as const;
type LengthName = (typeof LENGTHS)[number];

const LABELS: Readonly<Record<LengthName, string>> = {
  stock: 'Stock, planed',
  frame: 'Frame, thickness',
  width: 'Groove, width',
  depth: 'Groove, depth',
  setback: 'Groove, setback',
  swellGap: 'Gap for swelling',
  proud: 'Face proud by',
};

/** What is usual in a shop to begin with, mm. */
const USUAL: Readonly<Record<Units, Readonly<Record<LengthName, number>>>> = {
  mm: { stock: 20, frame: 22, width: 6, depth: 10, setback: 8, swellGap: 2, proud: 0 },
  in: {
    stock: 19.05,
    frame: (25.4 * 13) / 16,
    width: 6.35,
    depth: (25.4 * 7) / 16,
    setback: (25.4 * 9) / 32,
    swellGap: 25.4 / 16,
    proud: 0,
  },
};

/** Asks for stock, frame and groove, then what front and back look like; the joint that comes of it stands beside. */
export function NewJobForm({ keeper, places }: { keeper: Keeper; places: Places }): JSX.Element {
  const desk = useDesk();
  const units = desk.units.value;
  const title = useSignal('');
  const front = useSignal<ShapeName>('ogee');
  const back = useSignal<ShapeName | 'none'>('cove');
  const texts = useSignal(usualTexts(units));
  const read = useMemo(() => readLengths(texts.value, units), [texts.value, units]);
  const named = title.value.trim() || 'New job';
  const begun = useMemo(
    () => (read.lengths === null ? null : beginJob(askFor(read.lengths, named, units, front.value, back.value))),
    [read, named, units, front.value, back.value],
  );
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
      label={LABELS[name]}
      text={texts.value[name]}
      units={units}
      fault={read.faults[name] ?? ''}
      type={(text) => {
        texts.value = { ...texts.value, [name]: text };
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
      <Choice
        label="Front"
        name="new front"
        value={front.value}
        options={SHAPES}
        choose={(next) => {
          front.value = next as ShapeName;
        }}
      />
      <Choice
        label="Back"
        name="new back"
        value={back.value}
        options={[['none', 'no cut'], ...SHAPES]}
        choose={(next) => {
          back.value = next as ShapeName | 'none';
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
    </div>
  );
}

function sayFace(face: number, units: Units): string {
  if (Math.abs(face) < 0.005) return 'the face is flush';
  return `the face stands ${entryText(Math.abs(face), units)} ${units} ${face > 0 ? 'proud' : 'back'}`;
}

function usualTexts(units: Units): Readonly<Record<LengthName, string>> {
  return Object.fromEntries(LENGTHS.map((name) => [name, entryText(USUAL[units][name], units)])) as Record<
    LengthName,
    string
  >;
}

function readLengths(texts: Readonly<Record<LengthName, string>>, units: Units) {
  const faults: Partial<Record<LengthName, string>> = {};
  const lengths: Partial<Record<LengthName, number>> = {};
  for (const name of LENGTHS) {
    const read = parseLength(texts[name], units);
    if (!('mm' in read)) faults[name] = sayMisread(texts[name] ?? '', read);
    else if (read.mm < 0 && name !== 'proud') faults[name] = 'A size cannot be negative.';
    else lengths[name] = read.mm;
  }
  const whole = Object.keys(faults).length === 0;
  return { faults, lengths: whole ? (lengths as Record<LengthName, number>) : null };
}

function askFor(
  { stock, frame, width, depth, setback, swellGap, proud }: Record<LengthName, number>,
  title: string,
  units: Units,
  front: ShapeName,
  back: ShapeName | 'none',
): NewJob {
  return { title, units, stock, frame, groove: { width, depth, setback }, swellGap, front, back, proud };
}
