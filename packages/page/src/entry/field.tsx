import type { ComponentChildren, JSX } from 'preact';
import { useTold } from '../words/aloud.ts';

/** What surrounds the input of a field; the input's id is `id`, and it is described by `describe(id)`. */
interface FieldProps {
  readonly id: string;
  readonly label: string;
  /** What is wrong with what was typed; '' for nothing. */
  readonly fault: string;
  readonly hint?: string | undefined;
  /** A further class of the field, for its layout. */
  readonly layout?: 'list' | 'lines';
  /** What stands under the fault. */
  readonly below?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A field that can be wrong: its name, its input, a hint, and what is wrong with it. */
export function Field({ id, label, fault, hint, layout, below, children }: FieldProps): JSX.Element {
  useTold(fault && `${label}: ${fault}`);
  return (
    <div class={`field${layout ? ` ${layout}` : ''}${fault ? ' faulty' : ''}`}>
      <label for={id}>{label}</label>
      {children}
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <p class="fault" id={`${id}-fault`}>
        {fault}
      </p>
      {below}
    </div>
  );
}

/** What describes the input of a field: its unit, what is wrong with it, and its hint. */
export function describe(id: string): string {
  return `${id}-unit ${id}-fault ${id}-hint`;
}
