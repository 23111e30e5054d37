/** Fields that are typed in. */
const TYPED = 'input[type="text"]';
/** Whatever the keyboard goes to; of a row of choices the one that is chosen. */
const STOPS = `input:not([type="radio"]:not(:checked), [tabindex="-1"]), select, textarea, button:not([tabindex="-1"], :disabled), summary`;

/**
 * Enter in a field goes on to the next text field of the part, and from the last one to what comes after it, which ends the typing. In
 * the form of a new job it goes to every choice too, as none is made yet; a form of one question takes Enter for its answer.
 */
export function moveOnByEnter(event: KeyboardEvent): void {
  const { target: field } = event;
  if (event.defaultPrevented || !(field instanceof HTMLInputElement)) return;
  const part = field.closest('.side');
  const asksAll = field.form?.matches('.new-job') === true;
  if (part === null || (asksAll ? false : field.type !== 'text' || field.form !== null)) return;
  event.preventDefault();
  const later = (selector: string) =>
    [...part.querySelectorAll<HTMLElement>(selector)].find(
      (other) => field.compareDocumentPosition(other) & Node.DOCUMENT_POSITION_FOLLOWING && other.checkVisibility(),
    );
  const next = (asksAll ? undefined : later(TYPED)) ?? later(STOPS);
  if (next === undefined) field.select();
  else next.focus();
}
