import type { JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { takeBack } from '../../desk/take-back.ts';
import { Field } from '../../entry/field.tsx';
import { Stepper, Unit } from '../../entry/stepper.tsx';
import { faultBeside } from '../../words/plain-fault.ts';

interface NumberFieldProps {
  readonly path: string;
  readonly label: string;
  /** What it is a figure of, where several have the same label. */
  readonly whose?: string;
  readonly value: number | null;
  readonly step: number;
  readonly digits: number;
  readonly unit?: string;
  readonly hint?: string;
  /** Whether it may be left empty, which takes the line out of the job. */
  readonly optional?: boolean;
}

/** A figure that is no length: a share, degrees, per cent. */
export function NumberField({
  path,
  label,
  whose,
  value,
  step,
  digits,
  unit,
  hint,
  optional,
}: NumberFieldProps): JSX.Element {
  const name = whose === undefined ? label : `${label}, ${whose}`;
  const desk = useDesk();
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const text = draft ?? (value === null ? '' : String(Number(value.toFixed(digits))));
  const put = (next: number, key?: string) => desk.change([[path, Number(next.toFixed(digits))]], key);
  const type = (typed: string) => {
    setDraft(typed);
    const read = readNumber(typed);
    if (read !== null) put(read, `${path} typed`);
    else if (optional && typed.trim() === '') desk.change([[path, undefined]], `${path} typed`);
  };
  const by = (way: 1 | -1) => value !== null && put(Math.max(0, value + way * step));
  const typed = draft === null ? null : readNumber(draft);
  const isNoFigure = draft !== null && typed === null && draft.trim() !== '';
  const [fault] = typed === null ? [] : desk.check([[path, typed]]);
  const words = isNoFigure ? `${draft} is not a figure.` : fault ? faultBeside(fault, desk.job.value.units) : '';
  return (
    <Field id={id} label={label} fault={words} hint={hint}>
      <Stepper name={name} step={by}>
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          data-path={path}
          aria-label={whose === undefined ? undefined : name}
          placeholder="–"
          value={text}
          aria-invalid={words !== ''}
          aria-describedby={`${id}-fault`}
          onFocus={(event) => event.currentTarget.select()}
          onInput={(event) => type(event.currentTarget.value)}
          onBlur={() => {
            desk.settle();
            if (words === '') setDraft(null);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Escape') {
              if (takeBack(desk, `${path} typed`) || draft !== null) event.preventDefault();
              setDraft(null);
            }
            if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
            event.preventDefault();
            by(event.key === 'ArrowUp' ? 1 : -1);
          }}
        />
        {unit && <Unit>{unit}</Unit>}
      </Stepper>
    </Field>
  );
}

function readNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  return /^-?\d*\.?\d+$/.test(plain) ? Number(plain) : null;
}
