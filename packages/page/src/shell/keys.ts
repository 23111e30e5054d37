import { moveOnByEnter } from '../entry/move-on.ts';
import { STOPS, stopsOf } from '../entry/one-stop.ts';
import { nextDimension } from '../stage/next-dimension.ts';
import { keepFocus } from './keep-focus.ts';

/** Keeps the keyboard where it was, from the first key on; returns what ends that. */
export function keepKeyboard(): () => void {
  const part = (name: string) => document.querySelector<HTMLElement>(name)!;
  return keepFocus(part('.side'), part('.notices'));
}

/** What keys do beyond typing, pressing and Tab; fetched at the first key. Those of one field alone stand with it. */
export function hearKey(event: KeyboardEvent): void {
  const target = event.target as HTMLElement;
  // What stood in a field stands there again: what is typed next takes its place.
  if (event.key === 'Escape' && event.defaultPrevented && isTyped(target)) setTimeout(() => target.select());
  if (event.defaultPrevented || event.altKey || event.isComposing) return;
  const { key } = event;
  if (event.ctrlKey || event.metaKey) {
    if (key === 'Enter') askForFit(event);
  } else if (key === 'Enter') moveOnByEnter(event);
  else if (key === 'Escape') goBack(target);
  else go(event, nextOf(target, key));
}

/** Where a key goes to along what the focus is in: a menu, a row, the grips or the dimensions of a drawing. */
function nextOf(target: HTMLElement, key: string): Element | undefined {
  const menu = target.closest<HTMLDetailsElement>('.menu');
  // In a list that drops down, the arrows choose from that.
  const isList = target instanceof HTMLSelectElement;
  if (menu && !isList && (key === 'ArrowDown' || key === 'ArrowUp'))
    return nextInMenu(menu, target, key === 'ArrowDown' ? 1 : -1);
  const row = target.closest<HTMLElement>('[data-row]');
  if (row && target.matches(STOPS)) return nextIn(stopsOf(row), target, key);
  const grips = target.closest('.grips');
  // The arrow keys move the arris itself.
  if (grips && key in TURNS) return nextIn([...grips.querySelectorAll<HTMLElement>('.grip')], target, TURNS[key]!);
  const drawing = target.closest('.dimension') && target.closest('.drawing');
  if (!drawing) return undefined;
  return nextDimension(key, target as Element as SVGElement, [...drawing.querySelectorAll<SVGElement>('.dimension')]);
}

/** What keys that turn pages stand for among grips, as on squared paper. */
const TURNS: Readonly<Record<string, string>> = {
  PageDown: 'ArrowRight',
  PageUp: 'ArrowLeft',
  Home: 'Home',
  End: 'End',
};

function go(event: KeyboardEvent, to: Element | undefined): void {
  if (to === undefined) return;
  event.preventDefault();
  (to as HTMLElement).focus();
}

/** Right and left go along a row, from its end to its start; Home and End to its ends. */
function nextIn(stops: readonly HTMLElement[], from: HTMLElement, key: string): HTMLElement | undefined {
  const at = stops.indexOf(from);
  const to = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: -1 }[key];
  return to === undefined ? undefined : stops.at(to % stops.length);
}

/** The next command of a menu, or the one before; from its button into the list, which opens and may still have to be fetched. */
function nextInMenu(menu: HTMLDetailsElement, from: HTMLElement, way: 1 | -1): HTMLElement | undefined {
  const items = () => [...menu.querySelectorAll<HTMLElement>('summary, .menu-list :is(button, select)')];
  const next = () => items().at((items().indexOf(from) + way) % items().length);
  menu.open = true;
  if (items().length > 1) return next();
  const fetched = new MutationObserver(() => {
    if (items().length === 1) return;
    fetched.disconnect();
    if (menu.open && document.activeElement === from) next()?.focus();
  });
  fetched.observe(menu, { childList: true, subtree: true });
  return from;
}

function isTyped(target: Element): target is HTMLInputElement {
  return target instanceof HTMLInputElement && target.type === 'text';
}

/** Escape goes from whatever has nothing to take back to the row of parts; from there, and from elsewhere, it closes the notice. */
function goBack(from: Element): void {
  if (from.closest('.side, .stage')) document.querySelector<HTMLElement>('.rooms [tabindex="0"]')?.focus();
  else document.querySelector<HTMLElement>('.notice .close')?.click();
}

/** Ctrl and Enter ask how to make it fit, and then make the move. */
function askForFit(event: KeyboardEvent): void {
  const seen = (selector: string) =>
    [...document.querySelectorAll<HTMLButtonElement>(selector)].find((each) => each.checkVisibility());
  const button = seen('.fit-panel .main') ?? seen('.chip button, .to-fit');
  if (button === undefined) return;
  event.preventDefault();
  button.click();
}
