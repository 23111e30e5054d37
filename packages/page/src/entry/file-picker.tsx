import type { JSX, RefObject } from 'preact';

/** The input behind a button that chooses files: out of sight, opened by a click on `picker`, and emptied after each choice. */
export function FilePicker({
  picker,
  label,
  accept,
  multiple = false,
  capture,
  take,
}: {
  picker: RefObject<HTMLInputElement | null>;
  label: string;
  accept: string;
  multiple?: boolean;
  /** Asks for a picture from the camera at the back rather than for a file, where there is one. */
  capture?: 'environment';
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
      {...(capture && { capture })}
      accept={accept}
      onChange={(event) => {
        const files = [...(event.currentTarget.files ?? [])];
        event.currentTarget.value = '';
        void take(files);
      }}
    />
  );
}
