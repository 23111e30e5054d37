import type { Desk } from '../desk/desk.ts';
import { dimensionsOf } from '../stage/dimensions-of.ts';
import { isSmallScreen, seenHeight, seenTop } from '../stage/small-screen.ts';

/** How long a keyboard on the screen takes to come up, ms. */
const KEYBOARD = 260;
/** What was tapped stays under the finger so long: a page laid out anew in the middle of a tap would lose it, ms. */
const TAP = 60;

/** Follows which size is being typed: the drawing shows it, and on a small screen field and drawing both stay in sight. */
export function watchTyping(desk: Desk): () => void {
  let field: HTMLElement | null = null;
  let wait: ReturnType<typeof setTimeout> | undefined;
  let pressed = false;
  const enter = ({ target }: FocusEvent) => {
    if (!(target instanceof HTMLInputElement) || target.type !== 'text') return;
    const place = target.dataset.path ?? target.dataset.of;
    field = target;
    desk.typing.value = place === undefined ? [] : dimensionsOf(place);
    document.documentElement.classList.add('typing');
    clearTimeout(wait);
    wait = setTimeout(keepInSight, KEYBOARD);
  };
  const leave = ({ relatedTarget }: FocusEvent) => {
    if (relatedTarget instanceof HTMLInputElement && relatedTarget.type === 'text') return;
    field = null;
    clearTimeout(wait);
    if (!pressed) rest();
  };
  const rest = () => {
    clearTimeout(wait);
    wait = setTimeout(() => {
      desk.typing.value = null;
      document.documentElement.classList.remove('typing');
    }, TAP);
  };
  const press = () => {
    pressed = true;
  };
  const letGo = () => {
    pressed = false;
    if (field === null && desk.typing.peek() !== null) rest();
  };
  const keepInSight = () => {
    // What is docked above the keyboard is always in sight.
    if (field === null || !isSmallScreen() || field.closest('.docked') !== null) return;
    (field.closest('.field') ?? field).scrollIntoView({ block: 'nearest' });
  };
  // A browser that lays its keyboard over the page tells how high what is seen is, and moves it without a new size.
  const tellSeen = () => {
    // A page enlarged by two fingers changes both too: that is no keyboard.
    if ((visualViewport?.scale ?? 1) !== 1) return;
    const { style } = document.documentElement;
    style.setProperty('--seen', `${seenHeight()}px`);
    style.setProperty('--seen-top', `${seenTop()}px`);
    style.setProperty('--keyboard', `${Math.max(0, innerHeight - seenHeight() - seenTop())}px`);
  };
  const followKeyboard = () => {
    tellSeen();
    if ((visualViewport?.scale ?? 1) === 1) keepInSight();
  };
  const { visualViewport } = globalThis;
  addEventListener('focusin', enter);
  addEventListener('focusout', leave);
  addEventListener('pointerdown', press);
  addEventListener('pointerup', letGo);
  addEventListener('pointercancel', letGo);
  visualViewport?.addEventListener('resize', followKeyboard);
  visualViewport?.addEventListener('scroll', tellSeen);
  return () => {
    removeEventListener('focusin', enter);
    removeEventListener('focusout', leave);
    removeEventListener('pointerdown', press);
    removeEventListener('pointerup', letGo);
    removeEventListener('pointercancel', letGo);
    visualViewport?.removeEventListener('resize', followKeyboard);
    visualViewport?.removeEventListener('scroll', tellSeen);
  };
}
