import type { JSX } from 'preact';

interface SelectFieldProps {
  readonly id: string;
  readonly label: string;
  /** What it is called where it is read out alone; its label unless told. */
  readonly name?: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, word: string])[];
  /** Stands in the field as long as nothing is chosen. */
  readonly prompt?: string;
  readonly choose: (value: string) => void;
}

/** One of several words, from a list that drops down. */
export function SelectField({ id, label, name, value, options, prompt, choose }: SelectFieldProps): JSX.Element {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select id={id} aria-label={name} value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {prompt !== undefined && (
          <option value="" disabled>
            {prompt}
          </option>
        )}
        {options.map(([option, word]) => (
          <option key={option} value={option}>
            {word}
          </option>
        ))}
      </select>
    </div>
  );
}
