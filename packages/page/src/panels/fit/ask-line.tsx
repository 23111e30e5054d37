import { parseLength, type Units } from '@fielded/core';
import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { Unit } from '../../entry/stepper.tsx';
import { useTold } from '../../words/aloud.ts';

interface NameChoiceProps<N extends string> {
  readonly id: string;
  readonly label: string;
  /** Names with the words for them. */
  readonly names: readonly (readonly [N, string])[];
  readonly value: N;
  readonly choose: (name: N) => void;
}

/** One of several names within the sentence that asks for a fit. */
export function NameChoice<N extends string>({ id, label, names, value, choose }: NameChoiceProps<N>): JSX.Element {
  return (
    <>
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value as N)}>
        {names.map(([name, words]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </select>
    </>
  );
}

/** The length that is wanted, within the same sentence. */
export function Amount({ name, text, units }: { name: string; text: Signal<string>; units: Units }): JSX.Element {
  return (
    <span class="line">
      <input
        type="text"
        inputMode={units === 'mm' ? 'decimal' : 'text'}
        autocomplete="off"
        aria-label={name}
        aria-invalid={'read' in parseLength(text.value, units)}
        aria-describedby="amount-unit"
        value={text.value}
        onInput={(event) => {
          text.value = event.currentTarget.value;
        }}
      />
      <Unit of="amount">{units}</Unit>
    </span>
  );
}

/** What is wrong with the length that is wanted. */
export function Misread({ words }: { words: string }): JSX.Element {
  useTold(words);
  return <p class="fault">{words}</p>;
}
