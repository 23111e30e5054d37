import type { Units } from '@fielded/core';
import type { JSX, RefObject } from 'preact';
import { describe } from './field.tsx';
import { Unit } from './stepper.tsx';

type Heard = (event: { readonly currentTarget: HTMLInputElement }) => void;

/** The line of a length that is no size of the job, with its unit. */
export function LengthLine({
  units,
  field,
  ...rest
}: {
  units: Units;
  field?: RefObject<HTMLInputElement | null>;
  id: string;
  placeholder?: string;
  value?: string;
  'aria-invalid'?: boolean;
  onFocus?: Heard;
  onInput?: Heard;
}): JSX.Element {
  return (
    <div class="line short">
      <input
        {...rest}
        {...(field && { ref: field })}
        type="text"
        aria-describedby={describe(rest.id)}
        inputMode={units === 'mm' ? 'decimal' : 'text'}
        autocomplete="off"
      />
      <Unit of={rest.id}>{units}</Unit>
    </div>
  );
}
