import type { JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { takeBack } from '../../desk/take-back.ts';
import { describe, Field } from '../../entry/field.tsx';
import { Stepper } from '../../entry/stepper.tsx';
import type { JobChange } from '../../job/changes.ts';
import { faultBeside } from '../../words/plain-fault.ts';

/** A whole number of things, with a step either way. */
export function QuantityField({
  path,
  label,
  whose,
  value,
  changes = (at, count) => [[at, count]],
}: {
  path: string;
  label: string;
  whose: string;
  value: number;
  changes?: (path: string, count: number) => readonly JobChange[];
}): JSX.Element {
  const id = useId();
  const { text, fault, type, by, leave, listen } = useCount(path, value, changes);
  const name = `${label}, ${whose}`;
  return (
    <Field id={id} label={label} fault={fault}>
      <Stepper name={name} canStep={{ less: value > 1, more: true }} step={by}>
        <input
          id={id}
          type="text"
          inputMode="numeric"
          autocomplete="off"
          data-path={path}
          aria-label={name}
          aria-invalid={fault !== ''}
          aria-describedby={describe(id)}
          value={text}
          onFocus={(event) => event.currentTarget.select()}
          onInput={(event) => type(event.currentTarget.value)}
          onBlur={leave}
          onKeyDown={listen}
        />
      </Stepper>
    </Field>
  );
}

/** The text of a count's field, what is wrong with it, and what typing, stepping, keys and leaving do. */
function useCount(path: string, value: number, changes: (path: string, count: number) => readonly JobChange[]) {
  const desk = useDesk();
  const [draft, setDraft] = useState<string | null>(null);
  const [fault, setFault] = useState('');
  const put = (count: number, key?: string) => {
    const [refused] = desk.change(changes(path, count), key);
    setFault(refused ? faultBeside(refused, desk.job.value.units) : '');
  };
  const type = (text: string) => {
    setDraft(text);
    if (/^\s*\d+\s*$/.test(text)) put(Number(text), `${path} typed`);
    else setFault(text.trim() === '' ? 'Write a whole number.' : `${text.trim()} is not a whole number.`);
  };
  const by = (way: 1 | -1) => {
    setDraft(null);
    put(value + way);
  };
  const listen = (event: KeyboardEvent) => {
    if (event.key === 'Escape') {
      if (takeBack(desk, `${path} typed`) || draft !== null) event.preventDefault();
      setDraft(null);
      setFault('');
    }
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();
    if (event.key === 'ArrowUp' || value > 1) by(event.key === 'ArrowUp' ? 1 : -1);
  };
  const leave = () => {
    desk.settle();
    if (fault === '') setDraft(null);
  };
  return { text: draft ?? String(value), fault, type, by, leave, listen };
}
