import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { getAt } from '../../job/data.ts';
import { Fold } from '../../shell/fold.tsx';
import { LengthField } from './size-field.tsx';

const SOURCES = [
  ['thickness', 'Stock ±'],
  ['height', 'Spindle height ±'],
  ['fence', 'Fence ±'],
  ['grooveWidth', 'Groove width ±'],
  ['film', 'Finish on a face ±'],
] as const;

/** How far stock and settings vary from one panel to the next. */
export function SpreadSizes(): JSX.Element {
  const desk = useDesk();
  const { spread } = desk.job.value;
  const { data } = desk.doc.value;
  return (
    <Fold name="Spread of stock and settings">
      {() => (
        <>
          {SOURCES.map(([key, label]) => (
            <LengthField
              key={key}
              label={label}
              place={{
                path: `spread.${key}`,
                mm: getAt(data, `spread.${key}`) === undefined ? null : (spread?.[key] ?? null),
                changes: (mm, write, written) => [[`spread.${key}`, written ?? write(mm)]],
                optional: true,
              }}
            />
          ))}
          {getAt(data, 'spread') !== undefined && (
            <button type="button" class="quiet" onClick={() => desk.change([['spread', undefined]])}>
              Leave the spread out
            </button>
          )}
        </>
      )}
    </Fold>
  );
}
