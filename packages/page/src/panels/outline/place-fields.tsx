import type { parseLength, Units } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useId, useRef } from 'preact/hooks';
import { LengthLine } from '../../entry/length-line.tsx';
import { writeLength } from '../../job/write-length.ts';
import { sayMisread } from '../../words/say-misread.ts';

/** The next point typed, or where the point in hand (`from`, mm) goes: exactly there, on no grid. */
export function PlaceFields({
  units,
  from,
  read,
  go,
}: {
  units: Units;
  from: { readonly x: number; readonly y: number } | null;
  read: (text: string) => ReturnType<typeof parseLength>;
  go: (x: number, y: number) => void;
}): JSX.Element {
  const id = useId();
  const across = useRef<HTMLInputElement>(null);
  const down = useRef<HTMLInputElement>(null);
  const fault = useSignal('');
  const submit = (event: Event) => {
    event.preventDefault();
    const kept = from === null ? [0, 0] : [from.x, from.y];
    const typed = [across.current!, down.current!].map((field) => field.value.trim());
    // What is left empty stays as it is.
    const [x, y] = typed.map((text, k) => (text === '' ? { mm: kept[k]! } : read(text))) as [
      ReturnType<typeof parseLength>,
      ReturnType<typeof parseLength>,
    ];
    if (!('mm' in x)) fault.value = sayMisread(typed[0]!, x);
    else if (!('mm' in y)) fault.value = sayMisread(typed[1]!, y);
    else if (x.mm < 0 || y.mm < 0) fault.value = 'In from the edge and down from the face are 0 or more.';
    else {
      fault.value = '';
      go(x.mm, y.mm);
      for (const field of [across.current!, down.current!]) field.value = '';
      across.current!.focus();
    }
  };
  const field = (name: string, ref: typeof across, mm: number | undefined) => (
    <div class="field">
      <label for={`${id}-${name}`}>{name}</label>
      <LengthLine
        id={`${id}-${name}`}
        units={units}
        field={ref}
        placeholder={mm === undefined ? '–' : String(writeLength(mm, units, units))}
      />
    </div>
  );
  return (
    <form class="place" aria-label={from === null ? 'The next point' : 'The point in hand'} onSubmit={submit}>
      {field('In from the edge', across, from?.x)}
      {field('Down from the face', down, from?.y)}
      <button type="submit">{from === null ? 'Add this point' : 'Move it there'}</button>
      <p class="fault" aria-live="polite">
        {fault}
      </p>
    </form>
  );
}
