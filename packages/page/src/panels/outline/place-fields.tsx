import type { parseLength, Units } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useId, useRef } from 'preact/hooks';

/** The next point typed: exactly there, on no grid. */
export function PlaceFields({
  units,
  read,
  go,
}: {
  units: Units;
  read: (text: string) => ReturnType<typeof parseLength>;
  go: (x: number, y: number) => void;
}): JSX.Element {
  const id = useId();
  const across = useRef<HTMLInputElement>(null);
  const down = useRef<HTMLInputElement>(null);
  const fault = useSignal('');
  const submit = (event: Event) => {
    event.preventDefault();
    const typed = [across.current!, down.current!].map((field) => field.value.trim() || '0');
    const [x, y] = typed.map(read) as [ReturnType<typeof parseLength>, ReturnType<typeof parseLength>];
    if (!('mm' in x)) fault.value = `${typed[0]} is ${x.read}. Write ${x.instead}.`;
    else if (!('mm' in y)) fault.value = `${typed[1]} is ${y.read}. Write ${y.instead}.`;
    else if (x.mm < 0 || y.mm < 0) fault.value = 'In from the edge and down from the face are 0 or more.';
    else {
      fault.value = '';
      go(x.mm, y.mm);
      for (const field of [across.current!, down.current!]) field.value = '';
      across.current!.focus();
    }
  };
  const field = (name: string, ref: typeof across) => (
    <div class="field">
      <label for={`${id}-${name}`}>{name}</label>
      <div class="line short">
        <input
          id={`${id}-${name}`}
          ref={ref}
          type="text"
          inputMode={units === 'mm' ? 'decimal' : 'text'}
          autocomplete="off"
          placeholder="–"
        />
        <span class="unit" aria-hidden="true">
          {units}
        </span>
      </div>
    </div>
  );
  return (
    <form class="place" onSubmit={submit}>
      {field('In from the edge', across)}
      {field('Down from the face', down)}
      <button type="submit">Go there</button>
      <p class="fault" aria-live="polite">
        {fault}
      </p>
    </form>
  );
}
