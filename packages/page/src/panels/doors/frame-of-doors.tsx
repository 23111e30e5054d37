import { formatLength } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { getAt } from '../../job/data.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { Choice } from '../sizes/choice.tsx';
import { LengthField } from '../sizes/size-field.tsx';

/** What all doors of the job share beyond the joint: the gap at the panels' ends, how rails meet stiles, spare panels. */
export function FrameOfDoors(): JSX.Element {
  const desk = useDesk();
  const { frame, units } = desk.job.value;
  const { data } = desk.doc.value;
  const length = (path: string, label: string, mm: number | null, hint?: string) => (
    <LengthField
      label={label}
      {...(hint !== undefined && { hint: keepTogether(hint) })}
      place={{ path, mm, changes: (value, write, written) => [[path, written ?? write(value)]], optional: true }}
    />
  );
  const endGap = getAt(data, 'frame.endGap') === undefined ? null : (frame.endGap ?? null);
  const joint = getAt(data, 'frame.joint') === undefined ? null : (frame.joint ?? null);
  return (
    <>
      {length(
        'frame.endGap',
        "Gap at the panel's ends",
        endGap,
        endGap === null ? `Assumed: the swell gap, ${formatLength(frame.swellGap, desk.units.value)}.` : undefined,
      )}
      <Choice
        label="Rails meet stiles with a"
        name="frame joint"
        value={joint?.kind ?? ''}
        options={[
          ['cope', 'cope'],
          ['tenon', 'tenon'],
          ['mitre', 'mitre'],
        ]}
        choose={(kind) => {
          const before = getAt(data, 'frame.joint.length');
          const { depth } = frame.groove;
          const fresh = units === 'in' ? `${depth / 25.4} in` : depth;
          desk.change([['frame.joint', { kind, length: before ?? fresh }]]);
        }}
      />
      {joint !== null && length('frame.joint.length', 'Rails go in by', joint.length)}
      {joint === null && (
        <p class="hint">
          {keepTogether(
            `Assumed: a cope as long as the groove is deep, ${formatLength(frame.groove.depth, desk.units.value)}.`,
          )}
        </p>
      )}
      <label class="yes plain">
        <input
          type="checkbox"
          checked={getAt(data, 'spares') === true}
          onChange={(event) => desk.change([['spares', event.currentTarget.checked ? true : undefined]])}
        />
        <span>Spare panels beside narrow ones that fill no blank</span>
      </label>
    </>
  );
}
