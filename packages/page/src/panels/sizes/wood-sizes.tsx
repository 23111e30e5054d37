import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { getAt } from '../../job/data.ts';
import { writeAt } from '../../job/sizes.ts';
import { Choice, TextField } from './choice.tsx';
import { LengthField } from './size-field.tsx';

/** The wood, and the clearances that part the verdicts. */
export function WoodSizes(): JSX.Element {
  const desk = useDesk();
  const { panel, fit } = desk.job.value;
  const { data } = desk.doc.value;
  const fitField = (key: 'target' | 'snug' | 'loose', label: string) => (
    <LengthField
      label={label}
      place={{
        path: `fit.${key}`,
        mm: fit[key],
        changes: writeAt(`fit.${key}`),
      }}
    />
  );
  return (
    <>
      <TextField
        path="panel.species"
        label="Wood"
        value={panel.species ?? ''}
        hint="Such as black cherry; needed for the seasons"
      />
      <Choice
        label="Sawn"
        name="sawn"
        value={panel.sawn}
        options={[
          ['flat', 'flat'],
          ['quarter', 'quarter'],
        ]}
        choose={(value) => desk.change([['panel.sawn', value]])}
      />
      <LengthField
        label="Width of panel"
        place={{
          path: 'panel.width',
          mm: getAt(data, 'panel.width') === undefined ? null : (panel.width ?? null),
          changes: writeAt('panel.width'),
          optional: true,
        }}
      />
      {fitField('target', 'Clearance wanted')}
      {fitField('snug', 'Tight below')}
      {fitField('loose', 'Loose above')}
    </>
  );
}
