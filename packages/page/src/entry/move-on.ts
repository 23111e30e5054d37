/** Leaves a field for the next one that is typed in beside it; the last one is only left. */
export function moveOn(field: HTMLInputElement): void {
  const fields = [...(field.closest('.side')?.querySelectorAll<HTMLInputElement>('input[type="text"]') ?? [])];
  const next = fields.slice(fields.indexOf(field) + 1).find((other) => other.offsetParent !== null);
  field.blur();
  next?.focus();
}
