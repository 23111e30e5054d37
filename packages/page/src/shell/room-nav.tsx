import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useOneStop } from '../entry/one-stop.ts';
import type { PagePart, Places } from '../stage/places.ts';
import type { ViewName } from '../stage/view-scene.ts';

const PARTS: readonly (readonly [PagePart, string])[] = [
  ['joint', 'Joint'],
  ['doors', 'Doors'],
  ['shop', 'Shop'],
  ['set-up', 'Set-up'],
  ['quote', 'Quote'],
];

/** The drawing that belongs to a part. */
const DRAWING: Readonly<Partial<Record<PagePart, ViewName>>> = {
  joint: 'joint',
  doors: 'door',
  'set-up': 'cuts',
  quote: 'door',
};

/** The parts of a job, in the order in which it is made. */
export function RoomNav({ places }: { places: Places }): JSX.Element {
  const row = useRef<HTMLElement>(null);
  useOneStop(row);
  return (
    <nav class="rooms" aria-label="Parts of the job" ref={row}>
      {PARTS.map(([place, name]) => (
        <button
          key={place}
          type="button"
          aria-current={places.place.value === place ? 'page' : undefined}
          onClick={() => {
            places.place.value = place;
            places.view.value = DRAWING[place] ?? places.view.value;
          }}
        >
          {name}
        </button>
      ))}
    </nav>
  );
}
