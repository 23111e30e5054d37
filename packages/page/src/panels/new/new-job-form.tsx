import type { Units } from '@fielded/core';
import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { beginHistory } from '../../desk/history.ts';
import type { Keeper } from '../../desk/keeper.ts';
import { entryText } from '../../entry/entry-text.ts';
import { Field } from '../../entry/field.tsx';
import { LengthLine } from '../../entry/length-line.tsx';
import { WordField } from '../../entry/word-field.tsx';
import type { Begun } from '../../job/new-job.ts';
import { JointThumb } from '../../stage/joint-thumb.tsx';
import type { Places } from '../../stage/places.ts';
import { adoptStyles } from '../../style/adopt-styles.ts';
import newJobStyles from '../../style/new-job.css?inline';
import { useTold } from '../../words/aloud.ts';
import { type ShapeDrawing, ShapeRow } from '../sizes/shape-row.tsx';
import { LENGTH_LABELS, LENGTHS, type LengthName } from './new-lengths.ts';
import { type NewJobEntry, useNewJob } from './use-new-job.ts';

adoptStyles(newJobStyles);

/** Asks for stock, frame and groove, then what front and back look like; the joint that comes of it stands beside. */
export function NewJobForm({ keeper, places }: { keeper: Keeper; places: Places }): JSX.Element {
  const desk = useDesk();
  const entry = useNewJob();
  const { title, front, back, named, begun, drawings } = entry;
  const [fronts, backs] = drawings;
  const leave = () => {
    places.place.value = 'joint';
  };
  const begin = async () => {
    if (begun === null || !('data' in begun)) return;
    const units = desk.units.value;
    await keeper.putAside();
    desk.lay(beginHistory({ data: begun.data, source: null, fileName: 'job.yaml', shop: desk.doc.value.shop }));
    desk.units.value = units;
    desk.trace.value = null;
    leave();
    desk.notice.value = { kind: 'note', text: `${named} is on the board. The job before is kept under Job.` };
  };
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
      <WordField
        id="new-title"
        label="Name"
        placeholder="Kitchen doors, oak"
        value={title.value}
        onInput={(event) => {
          title.value = event.currentTarget.value;
        }}
      />
      {LENGTHS.slice(0, -1).map((name) => (
        <NewLength key={name} name={name} entry={entry} />
      ))}
      <SideShapes side="Front" drawings={fronts} chosen={front} />
      <SideShapes side="Back" drawings={backs} chosen={back} />
      {back.value !== 'none' && <NewLength name="proud" entry={entry} />}
      <Preview begun={begun} units={desk.units.value} back={back.value} />
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

function NewLength({ name, entry }: { name: LengthName; entry: NewJobEntry }): JSX.Element {
  const units = useDesk().units.value;
  const label = LENGTH_LABELS[name];
  const fault = entry.faults[name] ?? '';
  const id = `new-${label.toLowerCase().replace(/[^a-z]+/g, '-')}`;
  return (
    <Field id={id} label={label} fault={fault}>
      <LengthLine
        id={id}
        units={units}
        value={entry.texts[name]}
        aria-invalid={fault !== ''}
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) => entry.type(name, event.currentTarget.value)}
      />
    </Field>
  );
}

function SideShapes<V extends string>({
  side,
  drawings,
  chosen,
}: {
  side: 'Front' | 'Back';
  drawings: readonly ShapeDrawing<V>[];
  chosen: Signal<V>;
}): JSX.Element {
  return (
    <>
      <h3>{side}</h3>
      <ShapeRow
        label={side}
        name={`new ${side.toLowerCase()}`}
        drawings={drawings}
        value={chosen.value}
        choose={(shape) => {
          chosen.value = shape;
        }}
      />
    </>
  );
}

/** The joint as it would be begun, or why it cannot. */
function Preview({ begun, units, back }: { begun: Begun | null; units: Units; back: string }): JSX.Element {
  const lines = sayBegun(begun, units, back);
  useTold(lines.join(' '));
  return (
    <div class={`preview${begun === null ? ' hint' : 'reason' in begun ? ' fault' : ''}`}>
      {begun !== null && 'data' in begun && <JointThumb doc={{ data: begun.data, shop: null }} />}
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}

/** What there is to say of a joint that would be begun. */
function sayBegun(begun: Begun | null, units: Units, back: string): readonly string[] {
  if (begun === null) return ['Give every size to see the joint.'];
  if ('reason' in begun) return [begun.reason];
  const bare = back === 'none' && Math.abs(begun.face) > 0.005 ? ', since nothing is cut on the back' : '';
  return [`It fits, and ${sayFace(begun.face, units)}${bare}.`, ...begun.warnings];
}

function sayFace(face: number, units: Units): string {
  if (Math.abs(face) < 0.005) return 'the face is flush';
  return `the face stands ${entryText(Math.abs(face), units)} ${units} ${face > 0 ? 'proud' : 'back'}`;
}
