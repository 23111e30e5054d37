import type { JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { takeBack } from '../../desk/take-back.ts';
import { describe, Field } from '../../entry/field.tsx';
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
export function NumberField(props: NumberFieldProps): JSX.Element {
  const { path, label, whose, unit, hint } = props;
  const name = whose === undefined ? label : `${label}, ${whose}`;
  const id = useId();
  const { text, words, type, step, leave, giveUp } = useNumber(props);
  return (
    <Field id={id} label={label} fault={words} hint={hint}>
      <Stepper name={name} step={step}>
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
          aria-describedby={describe(id)}
          onFocus={(event) => event.currentTarget.select()}
          onInput={(event) => type(event.currentTarget.value)}
          onBlur={leave}
          onKeyDown={(event) => {
            if (event.key === 'Escape' && giveUp()) event.preventDefault();
            if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
            event.preventDefault();
            step(event.key === 'ArrowUp' ? 1 : -1);
          }}
        />
        {unit && <Unit of={id}>{unit}</Unit>}
      </Stepper>
    </Field>
  );
}

/** What stands in the field of a figure, what is wrong with it in words, and what is done with it. */
function useNumber({ path, value, step, digits, optional }: NumberFieldProps) {
  const desk = useDesk();
  const [draft, setDraft] = useState<string | null>(null);
  const put = (next: number, key?: string) => desk.change([[path, Number(next.toFixed(digits))]], key);
  const typed = draft === null ? null : readNumber(draft);
  const isNoFigure = draft !== null && typed === null && draft.trim() !== '';
  const [fault] = typed === null ? [] : desk.check([[path, typed]]);
  const words = isNoFigure ? `${draft} is not a figure.` : fault ? faultBeside(fault, desk.job.value.units) : '';
  return {
    text: draft ?? (value === null ? '' : String(Number(value.toFixed(digits)))),
    words,
    type(typed: string) {
      setDraft(typed);
      const read = readNumber(typed);
      if (read !== null) put(read, `${path} typed`);
      else if (optional && typed.trim() === '') desk.change([[path, undefined]], `${path} typed`);
    },
    step: (way: 1 | -1) => value !== null && put(Math.max(0, value + way * step)),
    leave() {
      desk.settle();
      if (words === '') setDraft(null);
    },
    /** Takes back what was typed; whether there was any. */
    giveUp() {
      const taken = takeBack(desk, `${path} typed`) || draft !== null;
      setDraft(null);
      return taken;
    },
  };
}

function readNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  return /^-?\d*\.?\d+$/.test(plain) ? Number(plain) : null;
}
