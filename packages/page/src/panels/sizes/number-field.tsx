import type { JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { moveOn } from '../../entry/move-on.ts';
import { StepButton } from '../../entry/step-button.tsx';
import { faultBeside } from '../../words/plain-fault.ts';

interface NumberFieldProps {
  readonly path: string;
  readonly label: string;
  readonly value: number | null;
  readonly step: number;
  readonly digits: number;
  readonly unit?: string;
  readonly hint?: string;
  /** May be left empty: the line then goes. */
  readonly optional?: boolean;
}

/** A plain figure that is no length: a share, degrees, per cent. */
export function NumberField({ path, label, value, step, digits, unit, hint, optional }: NumberFieldProps): JSX.Element {
  const desk = useDesk();
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const text = draft ?? (value === null ? '' : String(Number(value.toFixed(digits))));
  const put = (next: number, key?: string) => desk.change([[path, Number(next.toFixed(digits))]], key);
  const bad = draft !== null && readNumber(draft) === null && draft.trim() !== '';
  const typed = draft === null ? null : readNumber(draft);
  const [fault] = typed === null ? [] : desk.check([[path, typed]]);
  const words = bad ? `${draft} is not a figure.` : fault ? faultBeside(fault, desk.job.value.units) : '';
  const by = (way: 1 | -1) => value !== null && put(Math.max(0, value + way * step));
  return (
    <div class={`field${words ? ' faulty' : ''}`}>
      <label for={id}>{label}</label>
      <div class="entry">
        <StepButton way="less" name={label} step={() => by(-1)} />
        <div class="line">
          <input
            id={id}
            type="text"
            inputMode="decimal"
            autocomplete="off"
            data-path={path}
            placeholder="–"
            value={text}
            aria-invalid={words !== ''}
            aria-describedby={`${id}-fault`}
            onFocus={(event) => event.currentTarget.select()}
            onInput={(event) => {
              const typed = event.currentTarget.value;
              setDraft(typed);
              const read = readNumber(typed);
              if (read !== null) put(read, `${path} typed`);
              else if (optional && typed.trim() === '') desk.change([[path, undefined]], `${path} typed`);
            }}
            onBlur={() => {
              desk.settle();
              if (words === '') setDraft(null);
            }}
            onKeyDown={(event) => {
              if (event.key === 'Enter') moveOn(event.currentTarget);
              if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
              event.preventDefault();
              by(event.key === 'ArrowUp' ? 1 : -1);
            }}
          />
          {unit && (
            <span class="unit" aria-hidden="true">
              {unit}
            </span>
          )}
        </div>
        <StepButton way="more" name={label} step={() => by(1)} />
      </div>
      {hint && <p class="hint">{hint}</p>}
      <p class="fault" id={`${id}-fault`} aria-live="polite">
        {words}
      </p>
    </div>
  );
}

function readNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  return /^-?\d*\.?\d+$/.test(plain) ? Number(plain) : null;
}
