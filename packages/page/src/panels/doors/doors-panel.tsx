import { type Job, makeCuttingList } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { Fold } from '../../entry/fold.tsx';
import { type Data, getAt } from '../../job/data.ts';
import { shownDoor } from '../../job/shown-door.ts';
import { adoptStyles } from '../../style/adopt-styles.ts';
import partsStyles from '../../style/parts.css?inline';
import { plainFault } from '../../words/plain-fault.ts';
import { CuttingTables } from './cutting-tables.tsx';
import { DoorFields } from './door-fields.tsx';
import { FrameOfDoors } from './frame-of-doors.tsx';

adoptStyles(partsStyles);

/** Doors are told apart as on a schedule: type A, type B. */
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

type Door = NonNullable<Job['doors']>[number];

/** The doors of the job, and what is sawn for them. The one unfolded is the one that is drawn. */
export function DoorsPanel(): JSX.Element {
  const desk = useDesk();
  const doors = desk.job.value.doors ?? [];
  const report = desk.report.value;
  const open = Math.min(shownDoor.value, doors.length - 1);
  const panel = useRef<HTMLElement>(null);
  const added = useSignal(0);
  // The keyboard goes on in the door that was added.
  useLayoutEffect(() => {
    if (added.value > 0) panel.current!.querySelector<HTMLElement>('details[open] > summary')?.focus();
  }, [added.value]);
  return (
    <section class="doors" aria-labelledby="doors-name" ref={panel}>
      <h2 id="doors-name">Doors</h2>
      {doors.length === 0 ? (
        <p class="hint">No doors yet. The panels, blanks and the cutting list follow from their sizes.</p>
      ) : (
        <p class="hint">The door unfolded here is the one drawn. Every figure on it can be tapped and typed over.</p>
      )}
      {doors.map((door, index) => (
        <details
          key={`${index}`}
          aria-label={door.name}
          open={index === open}
          onToggle={(event) => {
            if (!event.currentTarget.open || shownDoor.value === index) return;
            shownDoor.value = index;
            // One that is larger than its sheet is looked at from its head.
            document.querySelector('.sheet')?.scrollTo(0, 0);
          }}
        >
          <summary>
            <span>
              {door.quantity} <span aria-hidden="true">×</span>
              <span class="unseen">of</span> {door.name}
            </span>
          </summary>
          {index === open && <DoorFields door={door} index={index} />}
        </details>
      ))}
      <button
        type="button"
        class={doors.length === 0 ? 'main' : 'quiet'}
        onClick={() => {
          shownDoor.value = doors.length;
          addDoor(desk, doors);
          added.value += 1;
        }}
      >
        Add a door
      </button>
      {doors.length > 0 && <Fold name="Gap at the ends, rails and spare panels">{() => <FrameOfDoors />}</Fold>}
      {report.doors !== undefined && <CuttingTables list={makeCuttingList([report])} />}
    </section>
  );
}

/** A door like the last one, or a plain one, under a name of its own. */
function addDoor(desk: Desk, doors: readonly Door[]): void {
  const last = doors.at(-1);
  const index = doors.length;
  const inches = desk.job.value.units === 'in';
  let name = 'type A';
  for (let count = 1; doors.some((door) => door.name === name); count++) name = `type ${LETTERS[count] ?? count + 1}`;
  const before = last && getAt(desk.doc.value.data, `doors[${index - 1}]`);
  const plain: Data = inches
    ? { name, width: 20, height: 28, stile: '2-3/8', rail: '2-3/8' }
    : { name, width: 500, height: 700, stile: 60, rail: 60 };
  const [fault] = desk.change([[`doors[${index}]`, before ? { ...(before as object), name } : plain]]);
  if (fault) desk.notice.value = { kind: 'fault', text: plainFault(fault, desk.job.value.units) };
}
