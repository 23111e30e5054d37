import type { JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { takeBack } from '../../desk/take-back.ts';
import { describe, Field } from '../../entry/field.tsx';
import { faultBeside } from '../../words/plain-fault.ts';

interface ChoiceProps {
  readonly label: string;
  readonly name: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, word: string])[];
  readonly choose: (value: string) => void;
}

/** So many words, or signs in them all together, have a line of their own under what they are of: beside it they would lie over it. */
const MANY = 5;
const LONG = 34;

/** Chooses one of a few words. */
export function Choice({ label, name, value, options, choose }: ChoiceProps): JSX.Element {
  const signs = options.reduce((sum, [, word]) => sum + word.length, 0);
  return (
    <fieldset class={`field choice${options.length >= MANY || signs > LONG ? ' below' : ''}`}>
      <legend>{label}</legend>
      <div class="words">
        {options.map(([option, word]) => (
          <label key={option}>
            <input type="radio" name={name} value={option} checked={option === value} onChange={() => choose(option)} />
            <span>{word}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface TextFieldProps {
  readonly path: string;
  readonly label: string;
  readonly value: string;
  readonly hint?: string;
}

/** A word or a name of the job; leaving it empty takes the line out of the job. */
export function TextField({ path, label, value, hint }: TextFieldProps): JSX.Element {
  const desk = useDesk();
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const refused = draft === null ? undefined : desk.check([[path, draft || undefined]])[0];
  const fault = refused ?? desk.problems.value.find(({ at }) => at === path);
  const words = fault ? faultBeside(fault, desk.job.value.units, path) : '';
  return (
    <Field id={id} label={label} fault={words} hint={hint}>
      <div class="entry">
        <div class="line wide">
          <input
            id={id}
            type="text"
            dir="auto"
            autocomplete="off"
            data-path={path}
            value={draft ?? value}
            aria-invalid={words !== ''}
            aria-describedby={describe(id)}
            onInput={(event) => {
              setDraft(event.currentTarget.value);
              desk.change([[path, event.currentTarget.value || undefined]], `${path} typed`);
            }}
            onKeyDown={(event) => {
              if (event.key !== 'Escape') return;
              if (takeBack(desk, `${path} typed`) || draft !== null) event.preventDefault();
              setDraft(null);
            }}
            onBlur={() => {
              desk.settle();
              if (refused === undefined) setDraft(null);
            }}
          />
        </div>
      </div>
    </Field>
  );
}
