import type { InputHTMLAttributes, JSX } from 'preact';

/** A word, name or date that is no size of the job: its name, and a wide line. */
export function WordField({ label, ...input }: { id: string; label: string } & InputHTMLAttributes): JSX.Element {
  return (
    <div class="field">
      <label for={input.id}>{label}</label>
      <div class="line wide">
        <input type="text" dir="auto" autocomplete="off" {...input} />
      </div>
    </div>
  );
}
