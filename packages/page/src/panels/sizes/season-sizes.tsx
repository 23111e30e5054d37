import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { getAt } from '../../job/data.ts';
import { NumberField } from './number-field.tsx';

const TIMES = [
  ['made', 'When made'],
  ['driest', 'At the driest'],
  ['dampest', 'At the dampest'],
] as const;

/** The wood's moisture when the panel is made and over the year. */
export function SeasonSizes(): JSX.Element {
  const desk = useDesk();
  const { data } = desk.doc.value;
  const season = getAt(data, 'season');
  return (
    <>
      {season === undefined ? (
        <button
          type="button"
          class="quiet"
          onClick={() => desk.change([['season', { made: 8, driest: 6, dampest: 11 }]])}
        >
          Allow for the seasons
        </button>
      ) : (
        <>
          {TIMES.map(([key, label]) => {
            const value = getAt(data, `season.${key}`);
            return typeof value === 'number' ? (
              <NumberField
                key={key}
                path={`season.${key}`}
                label={label}
                value={value}
                step={0.5}
                digits={1}
                unit="%"
              />
            ) : (
              <p key={key} class="hint">
                {label}: from the air in the job file.
              </p>
            );
          })}
          <button type="button" class="quiet" onClick={() => desk.change([['season', undefined]])}>
            Leave the seasons out
          </button>
        </>
      )}
    </>
  );
}
