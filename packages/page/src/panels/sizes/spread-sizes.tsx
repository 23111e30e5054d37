import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { getAt } from '../../job/data.ts';
import { writeAt } from '../../job/sizes.ts';
import { NumberField } from './number-field.tsx';
import { LengthField } from './size-field.tsx';

const SOURCES = [
  ['thickness', 'Stock\u00a0±'],
  ['height', 'Spindle height\u00a0±'],
  ['fence', 'Fence\u00a0±'],
  ['grooveWidth', 'Groove width\u00a0±'],
  ['film', 'Finish on a face\u00a0±'],
  ['setback', 'Setback of the groove\u00a0±'],
  ['grooveDepth', 'Groove depth\u00a0±'],
  ['panelSize', 'Panel size\u00a0±'],
] as const;

/** Those that are no lengths. */
const PLAIN = [
  { key: 'square', label: 'Fence and table out of square\u00a0±', step: 0.05, digits: 3, unit: '°' },
  { key: 'moisture', label: 'Moisture of the panel\u00a0±', step: 0.5, digits: 2, unit: '%' },
] as const;

/** How far stock and settings vary from one panel to the next. */
export function SpreadSizes(): JSX.Element {
  const desk = useDesk();
  const { spread } = desk.job.value;
  const { data } = desk.doc.value;
  return (
    <>
      {SOURCES.map(([key, label]) => (
        <LengthField
          key={key}
          label={label}
          place={{
            path: `spread.${key}`,
            mm: getAt(data, `spread.${key}`) === undefined ? null : (spread?.[key] ?? null),
            changes: writeAt(`spread.${key}`),
            optional: true,
          }}
        />
      ))}
      {PLAIN.map(({ key, ...field }) => (
        <NumberField
          key={key}
          {...field}
          path={`spread.${key}`}
          value={spread?.[key] === undefined ? null : spread[key] * (key === 'square' ? 180 / Math.PI : 1)}
          optional
        />
      ))}
      {getAt(data, 'spread') !== undefined && (
        <button type="button" class="quiet" onClick={() => desk.change([['spread', undefined]])}>
          Leave the spread out
        </button>
      )}
    </>
  );
}
