import type { Desk } from '../desk/desk.ts';
import { dimensionsOf } from '../stage/dimensions-of.ts';
import { isSmallScreen, seenHeight, seenTop } from '../stage/small-screen.ts';

/** How long a keyboard on the screen takes to come up, ms. */
const KEYBOARD = 260;
/** What was tapped stays under the finger so long: a page laid out anew in the middle of a tap would lose it, ms. */
const TAP = 60;
/** A field that is left so soon after a finger lifted is left by its tap, ms; later, by a key, which finds all dimensions there again. */
const TAPPED = 500;

/** Follows which size is being typed: the drawing shows it, and on a small screen field and drawing both stay in sight. */
export function watchTyping(desk: Desk): () => void {
  let field: HTMLElement | null = null;
  let wait: ReturnType<typeof setTimeout> | undefined;
  let pressed = false;
  let lifted = Number.NEGATIVE_INFINITY;
  const enter = ({ target }: Pick<Event, 'target'>) => {
    if (!isTyped(target)) return;
    const place = target.dataset.path ?? target.dataset.of;
    field = target;
    // The page makes room first: the drawing is then fitted once, into the room that it has from now on.
    document.documentElement.classList.add('typing');
    desk.typing.value = place === undefined ? [] : dimensionsOf(place);
    clearTimeout(wait);
    wait = setTimeout(keepInSight, KEYBOARD);
  };
  const leave = ({ relatedTarget }: FocusEvent) => {
    if (isTyped(relatedTarget)) return;
    field = null;
    clearTimeout(wait);
    if (pressed) return;
    if (performance.now() - lifted < TAPPED) wait = setTimeout(rest, TAP);
    else rest();
  };
  const rest = () => {
    document.documentElement.classList.remove('typing');
    desk.typing.value = null;
  };
  const press = () => {
    pressed = true;
  };
  const letGo = () => {
    pressed = false;
    lifted = performance.now();
    if (field !== null || desk.typing.peek() === null) return;
    clearTimeout(wait);
    wait = setTimeout(rest, TAP);
  };
  const keepInSight = () => {
    // What is docked above the keyboard is always in sight.
    if (field === null || !isSmallScreen() || field.closest('.docked') !== null) return;
    (field.closest('.field') ?? field).scrollIntoView({ block: 'nearest' });
  };
  const followKeyboard = () => {
    tellSeen();
    if (!isEnlarged()) keepInSight();
  };
  const stop = new AbortController();
  const { signal } = stop;
  enter({ target: document.activeElement });
  followKeyboard();
  addEventListener('focusin', enter, { signal });
  addEventListener('focusout', leave, { signal });
  addEventListener('pointerdown', press, { signal });
  addEventListener('pointerup', letGo, { signal });
  addEventListener('pointercancel', letGo, { signal });
  visualViewport?.addEventListener('resize', followKeyboard, { signal });
  visualViewport?.addEventListener('scroll', tellSeen, { signal });
  return () => stop.abort();
}

/** Whether something is a field that text is typed in. */
function isTyped(at: EventTarget | null): at is HTMLInputElement | HTMLTextAreaElement {
  return at instanceof HTMLTextAreaElement || (at instanceof HTMLInputElement && at.type === 'text');
}

/** A page enlarged by two fingers is seen in part too: that is no keyboard. */
function isEnlarged(): boolean {
  return (visualViewport?.scale ?? 1) !== 1;
}

/**
 * Tells the styles how high what is seen is, where it begins, and what a keyboard covers: a browser that lays its keyboard over
 * the page moves what is seen without a new size.
 */
function tellSeen(): void {
  if (isEnlarged()) return;
  const { style } = document.documentElement;
  style.setProperty('--seen', `${seenHeight()}px`);
  style.setProperty('--seen-top', `${seenTop()}px`);
  style.setProperty('--keyboard', `${Math.max(0, innerHeight - seenHeight() - seenTop())}px`);
}
