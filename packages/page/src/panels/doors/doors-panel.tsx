import '../../style/parts.css';
import { type Job, makeCuttingList, type Report } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { type Data, getAt } from '../../job/data.ts';
import { Fold } from '../../shell/fold.tsx';
import { plainMessage } from '../../words/plain-message.ts';
import { Choice, TextField } from '../sizes/choice.tsx';
import { LengthField } from '../sizes/size-field.tsx';
import { CuttingTables } from './cutting-tables.tsx';
import { QuantityField } from './quantity-field.tsx';

type Door = NonNullable<Job['doors']>[number];

/** The doors of the job, and what is sawn for them. */
export function DoorsPanel(): JSX.Element {
  const desk = useDesk();
  const doors = desk.job.value.doors ?? [];
  const report = desk.report.value;
  const chosen = useSignal(0);
  const open = Math.min(chosen.value, doors.length - 1);
  return (
    <section class="doors" aria-labelledby="doors-name">
      <h2 id="doors-name">Doors</h2>
      {doors.length === 0 && (
        <p class="hint">No doors yet. The panels, blanks and the cutting list follow from their sizes.</p>
      )}
      {doors.map((door, index) => (
        <details
          key={`${index}`}
          open={index === open}
          onToggle={(event) => {
            if (event.currentTarget.open) chosen.value = index;
          }}
        >
          <summary>
            {door.quantity} × {door.name}
          </summary>
          {index === open && <DoorSizes door={door} index={index} />}
        </details>
      ))}
      <button
        type="button"
        class="quiet"
        onClick={() => {
          chosen.value = doors.length;
          addDoor(desk, doors);
        }}
      >
        Add a door
      </button>
      <DoorProblems report={report} />
      {report.doors !== undefined && <CuttingTables list={makeCuttingList([report])} />}
    </section>
  );
}

/** One door: by its own size, or by the opening that it hangs in. */
function DoorSizes({ door, index }: { door: Door; index: number }): JSX.Element {
  const desk = useDesk();
  const { data } = desk.doc.value;
  const at = `doors[${index}]`;
  const byOpening = getAt(data, `${at}.opening`) !== undefined;
  const size = (key: string, label: string, mm: number | undefined, optional = false) => (
    <LengthField
      key={key}
      label={label}
      whose={door.name}
      place={{
        path: `${at}.${key}`,
        mm: getAt(data, `${at}.${key}`) === undefined && optional ? null : (mm ?? null),
        changes: (value, write, written) => [[`${at}.${key}`, written ?? write(value)]],
        optional,
      }}
    />
  );
  const several = door.across > 1 || door.up > 1;
  return (
    <>
      <TextField path={`${at}.name`} label="Name" value={door.name} />
      <QuantityField path={`${at}.quantity`} label="How many" whose={door.name} value={door.quantity} />
      {byOpening ? (
        <>
          {size('opening.width', 'Opening, width', door.hungIn?.width)}
          {size('opening.height', 'Opening, height', door.hungIn?.height)}
          <Choice
            label="Hung"
            name={`hung ${index}`}
            value={door.hungIn?.hung ?? 'inset'}
            options={[
              ['inset', 'inset'],
              ['overlay', 'overlay'],
            ]}
            choose={(value) => desk.change(hungChanges(at, value, desk))}
          />
          <QuantityField path={`${at}.leaves`} label="Leaves" whose={door.name} value={door.leaves} />
        </>
      ) : (
        <>
          {size('width', 'Width', door.width)}
          {size('height', 'Height', door.height)}
        </>
      )}
      {size('stile', 'Stiles', door.stile)}
      {size('rail', 'Rails', door.rail)}
      <QuantityField
        path={`${at}.across`}
        label="Panels across"
        whose={door.name}
        value={door.across}
        changes={countChanges(desk, door, at)}
      />
      <QuantityField
        path={`${at}.up`}
        label="Panels up"
        whose={door.name}
        value={door.up}
        changes={countChanges(desk, door, at)}
      />
      {several && size('muntin', 'Muntins', door.muntin)}
      <Fold name="More sizes of this door">
        {() => (
          <>
            {size('topRail', 'Top rail', door.topRail, true)}
            {size('bottomRail', 'Bottom rail', door.bottomRail, true)}
            {several && size('midRail', 'Mid rail', door.midRail, true)}
            <Choice
              label="Grain"
              name={`grain ${index}`}
              value={door.grain}
              options={[
                ['up', 'up'],
                ['across', 'across'],
              ]}
              choose={(value) => desk.change([[`${at}.grain`, value]])}
            />
          </>
        )}
      </Fold>
      <div class="order">
        <button type="button" class="quiet" onClick={() => desk.change(sizedByOther(desk, door, at, byOpening))}>
          {byOpening ? 'Give its own size' : 'Give the opening it hangs in'}
        </button>
        <button
          type="button"
          class="quiet"
          aria-label={`Remove ${door.name}`}
          onClick={() => {
            const [fault] = desk.change([[(desk.job.value.doors?.length ?? 0) > 1 ? at : 'doors', undefined]]);
            if (!fault) desk.notice.value = { kind: 'note', text: `${door.name} is removed. Undo brings it back.` };
          }}
        >
          Remove
        </button>
      </div>
    </>
  );
}

/** Errors that speak of doors: what cannot be made so. */
function DoorProblems({ report }: { report: Report }): JSX.Element | null {
  const found = report.problems.filter(({ at }) => at.startsWith('doors'));
  if (found.length === 0) return null;
  return (
    <ul class="door-problems" aria-label="Problems of the doors">
      {found.map(({ code, at, message }) => (
        <li key={`${code} ${at}`}>{plainMessage(message)}</li>
      ))}
    </ul>
  );
}

function addDoor(desk: Desk, doors: readonly Door[]): void {
  const last = doors.at(-1);
  const index = doors.length;
  const inches = desk.job.value.units === 'in';
  let name = 'door 1';
  for (let count = 2; doors.some((door) => door.name === name); count++) name = `door ${count}`;
  const before = last && getAt(desk.doc.value.data, `doors[${index - 1}]`);
  const plain: Data = inches
    ? { name, width: 20, height: 28, stile: '2-3/8', rail: '2-3/8' }
    : { name, width: 500, height: 700, stile: 60, rail: 60 };
  const [fault] = desk.change([[`doors[${index}]`, before ? { ...(before as object), name } : plain]]);
  if (fault) desk.notice.value = { kind: 'fault', text: plainMessage(fault.message) };
}

/** More panels in a door need muntins between them: as wide as the stiles, unless told. */
function countChanges(desk: Desk, door: Door, at: string) {
  return (path: string, count: number) => {
    const needs = count > 1 && getAt(desk.doc.value.data, `${at}.muntin`) === undefined;
    const stile = getAt(desk.doc.value.data, `${at}.stile`) ?? door.stile;
    return [[path, count] as const, ...(needs ? [[`${at}.muntin`, stile] as const] : [])];
  };
}

/** An overlay needs how far the leaf laps over; an inset has a gap of its own. */
function hungChanges(at: string, hung: string, desk: Desk): readonly (readonly [string, Data | undefined])[] {
  const lap = desk.job.value.units === 'in' ? '1/2' : 12;
  return hung === 'overlay'
    ? [
        [`${at}.hung`, 'overlay'],
        [`${at}.overlay`, lap],
        [`${at}.gap`, undefined],
      ]
    : [
        [`${at}.hung`, 'inset'],
        [`${at}.overlay`, undefined],
      ];
}

/** The same door given by its opening instead of its own size, or the other way about. */
function sizedByOther(
  desk: Desk,
  door: Door,
  at: string,
  byOpening: boolean,
): readonly (readonly [string, Data | undefined])[] {
  const write = (mm: number): Data => {
    const places = desk.job.value.units === 'in' ? 5 : 3;
    return Number((desk.job.value.units === 'in' ? mm / 25.4 : mm).toFixed(places));
  };
  if (byOpening)
    return [
      ...(['opening', 'hung', 'gap', 'overlay', 'between', 'leaves'] as const).map(
        (key) => [`${at}.${key}`, undefined] as const,
      ),
      [`${at}.width`, write(door.width)],
      [`${at}.height`, write(door.height)],
    ];
  const GAP = 2;
  return [
    [`${at}.width`, undefined],
    [`${at}.height`, undefined],
    [`${at}.opening`, { width: write(door.width + 2 * GAP), height: write(door.height + 2 * GAP) }],
    [`${at}.hung`, 'inset'],
  ];
}
