import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { SelectField } from '../../entry/select-field.tsx';
import { getAt } from '../../job/data.ts';
import { writeAt } from '../../job/sizes.ts';
import { OwnOutline } from './own-outline.tsx';
import { LengthField } from './size-field.tsx';

const SHAPES = ['bevel', 'cove', 'ovolo', 'ogee', 'rebate'] as const;

/** The profile worked on the frame's front arris. */
export function StickingSizes(): JSX.Element {
  const desk = useDesk();
  const at = 'frame.sticking';
  const { sticking } = desk.job.value.frame;
  const shape = getAt(desk.doc.value.data, `${at}.shape`);
  const inches = desk.job.value.units === 'in';
  const choose = (next: string) => {
    const plain = { shape: next, reach: inches ? '5/16' : 8, depth: inches ? '1/4' : 6 };
    const before = getAt(desk.doc.value.data, at);
    const kept =
      typeof before === 'object' && before !== null && shape !== 'outline' ? { ...before, shape: next } : plain;
    const [fault] = desk.change([[at, next === '' ? undefined : kept]]);
    // Sizes of the other shape may not suit this one: then begin with plain ones.
    if (fault) desk.change([[at, plain]]);
  };
  const size = (key: 'reach' | 'depth', label: string) => (
    <LengthField
      label={label}
      whose="sticking"
      place={{
        path: `${at}.${key}`,
        mm: sticking?.[key] ?? null,
        changes: writeAt(`${at}.${key}`),
      }}
    />
  );
  return (
    <>
      <SelectField
        id="sticking-shape"
        label="Shape"
        value={String(shape ?? '')}
        options={[
          ['', 'none'],
          ...(shape === 'outline' ? [['outline', 'own outline'] as const] : []),
          ...SHAPES.map((name) => [name, name] as const),
        ]}
        choose={choose}
      />
      <OwnOutline place="sticking" whose="sticking" isOutline={shape === 'outline'} />
      {sticking !== undefined && shape !== 'outline' && (
        <>
          {size('reach', 'Reach')}
          {size('depth', 'Depth')}
        </>
      )}
    </>
  );
}
