/** Moves the focus from a field to the next text field of the panel; from the last one it is only taken away. */
export function moveOn(field: HTMLInputElement): void {
  const fields = [...(field.closest('.side')?.querySelectorAll<HTMLInputElement>('input[type="text"]') ?? [])];
  const next = fields.slice(fields.indexOf(field) + 1).find((other) => other.offsetParent !== null);
  field.blur();
  next?.focus();
}
