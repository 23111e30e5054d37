import type { JSX, RefObject } from 'preact';

/** The input behind a button that chooses files: out of sight, opened by a click on `picker`, and emptied after each choice. */
export function FilePicker({
  picker,
  label,
  accept,
  multiple = false,
  take,
}: {
  picker: RefObject<HTMLInputElement | null>;
  label: string;
  accept: string;
  multiple?: boolean;
  take: (files: readonly File[]) => unknown;
}): JSX.Element {
  return (
    <input
      ref={picker}
      class="unseen"
      type="file"
      tabIndex={-1}
      aria-label={label}
      multiple={multiple}
      accept={accept}
      onChange={(event) => {
        const files = [...(event.currentTarget.files ?? [])];
        event.currentTarget.value = '';
        void take(files);
      }}
    />
  );
}
