import type { JSX } from 'preact';
import type { Places } from '../stage/places.ts';
import { adoptStyles } from '../style/adopt-styles.ts';
import keyStyles from '../style/keys.css?inline';
import { KEYS } from './key-list.ts';

adoptStyles(keyStyles);

/** The keys that the page listens to, and where. */
export function KeyTable({ places }: { places: Places }): JSX.Element {
  const leave = () => {
    places.place.value = 'joint';
  };
  return (
    <section class="keys" aria-labelledby="keys-name">
      <h2 id="keys-name">Keys</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Where</th>
            <th scope="col">Key</th>
            <th scope="col">What it does</th>
          </tr>
        </thead>
        <tbody>
          {KEYS.map(([where, keys, does], index) => (
            <tr key={keys + where}>
              <th scope="row">
                <span class={KEYS[index - 1]?.[0] === where ? 'unseen' : ''}>{where}</span>
              </th>
              <td>{keys}</td>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" class="main" onClick={leave}>
        Back to the board
      </button>
    </section>
  );
}
