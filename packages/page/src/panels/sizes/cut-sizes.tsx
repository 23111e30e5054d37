import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { getAt } from '../../job/data.ts';
import { NumberField } from './number-field.tsx';
import { OwnOutline } from './own-outline.tsx';
import { ShapePicker } from './shape-picker.tsx';
import { SizeField } from './size-field.tsx';

/** The shape of one cut and its sizes. */
export function CutSizes({ index, several }: { index: number; several: boolean }): JSX.Element | null {
  const desk = useDesk();
  const cut = desk.job.value.cuts[index];
  if (cut === undefined) return null;
  const { profile } = cut;
  const at = `cuts[${index}]`;
  const knife = getAt(desk.doc.value.data, `${at}.knife`);
  const plain = profile.shape === 'rebate';
  return (
    <div class="cut">
      {several && <h3>{cut.name}</h3>}
      {knife === undefined ? (
        <ShapePicker index={index} whose={cut.name} />
      ) : (
        <p class="hint">
          Cut with the shop's knife <b>{String(knife)}</b>: its shape is ground in, its setting is yours.
        </p>
      )}
      {knife === undefined && <OwnOutline place={index} whose={cut.name} isOutline={profile.shape === 'outline'} />}
      <SizeField of={`${at}.reach`} label="Reach" whose={cut.name} mm={cut.reach} />
      <SizeField of={`${at}.depth`} label="Depth" whose={cut.name} mm={cut.depth} />
      {profile.shape !== 'outline' && !plain && (
        <>
          <SizeField of={`${at}.profile.land`} label="Land" whose={cut.name} mm={profile.land} />
          <SizeField of={`${at}.profile.shoulder`} label="Shoulder" whose={cut.name} mm={profile.shoulder} />
        </>
      )}
      {profile.shape === 'ogee' && knife === undefined && (
        <NumberField
          path={`${at}.profile.balance`}
          label="Hollow"
          whose={cut.name}
          hint="Share of the curve that is hollow"
          value={profile.balance}
          step={0.05}
          digits={2}
        />
      )}
    </div>
  );
}
