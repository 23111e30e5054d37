import { seenTop } from './small-screen.ts';
import type { Spot } from './view-scene.ts';

/** Scrolls the sheet to the top of a small screen, where it stands above field and keyboard; returns what scrolls back. */
export function bringUpSheet(field: HTMLElement | null): () => void {
  const before = scrollY;
  const sheets = field?.closest('.sheets');
  const lift = () => {
    const top = sheets?.getBoundingClientRect().top ?? seenTop();
    scrollTo({ top: scrollY + top - seenTop(), behavior: 'instant' });
  };
  // A browser scrolls by itself once its keyboard is up.
  const liftAgain = () => requestAnimationFrame(lift);
  const { visualViewport } = globalThis;
  lift();
  visualViewport?.addEventListener('resize', liftAgain);
  return () => {
    visualViewport?.removeEventListener('resize', liftAgain);
    scrollTo({ top: before, behavior: 'instant' });
  };
}

/** The middle of a dimension's figure on a sheet, pixels; null where it is not drawn. */
export function figureSpot(sheet: HTMLElement, of: string): Spot | null {
  const figure = sheet.querySelector(`.drawing [data-of="${of}"] text`)?.getBoundingClientRect();
  if (figure === undefined) return null;
  const outer = sheet.getBoundingClientRect();
  return { x: figure.left + figure.width / 2 - outer.left, y: figure.top + figure.height / 2 - outer.top };
}

/** Places an element over its figure, within the sheet. */
export function placeOver(element: HTMLElement | null, { x, y }: Spot): void {
  if (element === null) return;
  const sheet = element.parentElement!;
  const [width, height] = [element.offsetWidth, element.offsetHeight];
  element.style.left = `${Math.min(Math.max(x - width / 2, 4), sheet.clientWidth - width - 4)}px`;
  element.style.top = `${Math.min(Math.max(y - 22, 4), sheet.clientHeight - height - 4)}px`;
}
