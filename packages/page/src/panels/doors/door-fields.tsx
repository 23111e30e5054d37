import type { Job } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { Fold } from '../../entry/fold.tsx';
import { getAt } from '../../job/data.ts';
import { Choice, TextField } from '../sizes/choice.tsx';
import { hungChanges, leavesChanges, sizedByOther } from './door-changes.ts';
import { DoorLength } from './door-length.tsx';
import { HeadFields } from './head-fields.tsx';
import { OpeningFields } from './opening-fields.tsx';
import { QuantityField } from './quantity-field.tsx';

type Door = NonNullable<Job['doors']>[number];

/** One door: by its own size or by the opening that it hangs in, its parts, its panels, its head. */
export function DoorFields({ door, index }: { door: Door; index: number }): JSX.Element {
  const desk = useDesk();
  const { data } = desk.doc.value;
  const at = `doors[${index}]`;
  const byOpening = getAt(data, `${at}.opening`) !== undefined;
  const several = door.across > 1 || door.up > 1;
  const size = (of: string, label: string, mm: number | undefined, optional = false) => (
    <DoorLength key={of} door={door} at={at} of={of} label={label} mm={mm} optional={optional} />
  );
  return (
    <>
      <TextField path={`${at}.name`} label="Name" value={door.name} />
      <QuantityField path={`${at}.quantity`} label="How many" whose={door.name} value={door.quantity} />
      <Choice
        label="Sized by"
        name={`sized ${index}`}
        value={byOpening ? 'opening' : 'door'}
        options={[
          ['door', 'the door'],
          ['opening', 'the opening it hangs in'],
        ]}
        choose={() => desk.change(sizedByOther(desk, door, at, byOpening))}
      />
      {byOpening ? (
        <HungFields door={door} at={at} index={index} />
      ) : (
        <>
          {size('width', 'Width', door.width)}
          {size('height', 'Height', door.height)}
        </>
      )}
      {size('stile', 'Stiles', door.stile)}
      {size('rail', 'Rails', door.rail)}
      <OpeningFields door={door} at={at} side="across" />
      <OpeningFields door={door} at={at} side="up" />
      {several && size('muntin', door.across > 1 ? 'Muntins' : 'Mid rails', door.muntin)}
      <HeadFields door={door} at={at} index={index} />
      <Fold name="More sizes of this door">
        {() => (
          <>
            {size('topRail', 'Top rail', door.topRail, true)}
            {size('bottomRail', 'Bottom rail', door.bottomRail, true)}
            {door.up > 1 && door.across > 1 && size('midRail', 'Mid rail', door.midRail, true)}
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
      <DoorButtons door={door} at={at} />
    </>
  );
}

/** Removes the door. */
function DoorButtons({ door, at }: { door: Door; at: string }): JSX.Element {
  const desk = useDesk();
  const remove = () => {
    const [fault] = desk.change([[(desk.job.value.doors?.length ?? 0) > 1 ? at : 'doors', undefined]]);
    if (!fault) desk.notice.value = { kind: 'note', text: `${door.name} is removed. Undo brings it back.` };
  };
  return (
    <div class="order">
      <button type="button" class="quiet" aria-label={`Remove ${door.name}`} onClick={remove}>
        Remove this door
      </button>
    </div>
  );
}

/** The opening of the carcase, and how the leaves hang in it or before it. */
function HungFields({ door, at, index }: { door: Door; at: string; index: number }): JSX.Element {
  const desk = useDesk();
  const { hungIn, leaves } = door;
  const hung = hungIn?.hung ?? 'inset';
  const size = (of: string, label: string, mm: number | undefined) => (
    <DoorLength key={of} door={door} at={at} of={of} label={label} mm={mm} />
  );
  return (
    <>
      {size('opening.width', 'Opening, width', hungIn?.width)}
      {size('opening.height', 'Opening, height', hungIn?.height)}
      <Choice
        label="Hung"
        name={`hung ${index}`}
        value={hung}
        options={[
          ['inset', 'inset'],
          ['overlay', 'overlay'],
        ]}
        choose={(value) => desk.change(hungChanges(at, value, desk))}
      />
      {hung === 'inset' ? size('gap', 'Gap all round', hungIn?.gap) : size('overlay', 'Laps over', hungIn?.overlay)}
      <QuantityField
        path={`${at}.leaves`}
        label="Leaves"
        whose={door.name}
        value={leaves}
        changes={leavesChanges(at)}
      />
      {leaves > 1 && size('between', 'Between leaves', hungIn?.between)}
    </>
  );
}
