import { formatLength, type Job } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { LengthField } from '../sizes/size-field.tsx';
import { type Count, countChanges, givenSizes, sizePath, sizesChanges } from './door-changes.ts';
import { QuantityField } from './quantity-field.tsx';

type Door = NonNullable<Job['doors']>[number];

const WORDS = {
  across: { count: 'Panels across', one: 'Column' },
  up: { count: 'Panels up', one: 'Row' },
} as const;

/** How many panels there are one way, and where there are several, the size of each: left empty, it shares the rest. */
export function OpeningFields({ door, at, side }: { door: Door; at: string; side: Count }): JSX.Element {
  const desk = useDesk();
  const { data } = desk.doc.value;
  const number = door[side];
  const index = Number(/\d+/.exec(at)![0]);
  const openings = desk.report.value.doors?.[index]?.openings ?? [];
  const sizes = givenSizes(data, at, side, number);
  const place = side === 'across' ? 'column' : 'row';
  const now = (k: number) => openings.find((opening) => opening[place] === k)?.[side === 'across' ? 'width' : 'height'];
  const withSize = (k: number, size: (typeof sizes)[number]) =>
    sizesChanges(
      at,
      side,
      sizes.map((each, n) => (n === k ? size : each)),
    );
  return (
    <>
      <QuantityField
        path={`${at}.${side}`}
        label={WORDS[side].count}
        whose={door.name}
        value={number}
        changes={countChanges(desk, door, at, side)}
      />
      {number > 1 && number <= MOST_FIELDS && (
        <div class="openings" role="group" aria-label={`${WORDS[side].count}, sizes of their openings`}>
          {sizes.map((size, k) => {
            const mm = now(k);
            const free = size === 'rest';
            return (
              <LengthField
                key={sizePath(at, side, k)}
                label={`${WORDS[side].one} ${k + 1}, opening`}
                whose={door.name}
                {...(free &&
                  mm !== undefined && { hint: `${formatLength(mm, desk.units.value)}: its share of the rest` })}
                place={{
                  path: sizePath(at, side, k),
                  mm: free ? null : (mm ?? null),
                  changes: (value, write, written) => withSize(k, written ?? write(value)),
                  optional: 'rest',
                  emptied: withSize(k, 'rest'),
                }}
              />
            );
          })}
        </div>
      )}
    </>
  );
}

/** The most openings one way that get a field each: more would bury the other fields. */
const MOST_FIELDS = 6;
