import type { JSX } from 'preact';

/** The section that a cut of one shape leaves at the panel's edge: its outline in mm, from the edge to beyond the reach. */
export interface ShapeDrawing<V extends string> {
  readonly value: V;
  readonly word: string;
  readonly outline: string;
  readonly width: number;
  readonly thickness: number;
}

/** Shapes to choose from, each drawn as it would be cut. `label` names the row; `name` tells its inputs from others on the page. */
export function ShapeRow<V extends string>({
  label,
  name,
  drawings,
  value,
  choose,
}: {
  label: string;
  name: string;
  drawings: readonly ShapeDrawing<V>[];
  value: unknown;
  choose: (value: V) => void;
}): JSX.Element {
  return (
    <div class={`shapes${drawings.length > 5 ? ' six' : ''}`} role="radiogroup" aria-label={label}>
      {drawings.map(({ value: option, word, outline, width, thickness }) => (
        <label key={option} class="shape">
          <input type="radio" name={name} value={option} checked={value === option} onChange={() => choose(option)} />
          <svg viewBox={`-1 -1 ${width + 1} ${thickness + 2}`} aria-hidden="true" preserveAspectRatio="xMidYMid meet">
            <path d={outline} />
          </svg>
          <span>{word}</span>
        </label>
      ))}
    </div>
  );
}
