import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import { seenTop } from '../stage/small-screen.ts';

/** How long a note stays, ms; a fault stays until it is closed. */
const STAY = 5000;

/** What just happened, in a line at the foot; what went wrong, in lines that stay. */
export function Notices(): JSX.Element {
  const desk = useDesk();
  const { text, kind, lines, action } = desk.notice.value;
  const clear = () => {
    desk.notice.value = { text: '', kind: 'note' };
  };
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (text === '') return;
    const follow = () => placeOverDrawing(box.current!);
    follow();
    addEventListener('scroll', follow, { passive: true });
    addEventListener('resize', follow);
    // Problems or a panel below the drawing take of its height.
    const grown = new ResizeObserver(follow);
    for (const sheets of document.querySelectorAll('.sheets')) grown.observe(sheets);
    return () => {
      grown.disconnect();
      removeEventListener('scroll', follow);
      removeEventListener('resize', follow);
    };
  }, [text]);
  // Whoever works on the drawing, or types a figure, has read a note.
  const worked = desk.moving.value !== null || desk.typing.value !== null;
  useEffect(() => {
    if (worked && text !== '' && kind === 'note' && !action) clear();
  }, [worked]);
  useEffect(() => {
    if (text === '' || kind === 'fault' || action) return;
    const wait = setTimeout(clear, STAY);
    return () => clearTimeout(wait);
  }, [text, kind, action]);
  return (
    <div class="notices" role="status" aria-live="polite" ref={box}>
      {text !== '' && (
        <div class={`notice ${kind}${worked ? ' aside' : ''}`}>
          <p>{text}</p>
          <button type="button" class="close" aria-label="Close" onClick={clear}>
            ×
          </button>
          {lines && lines.length > 0 && (
            // biome-ignore lint/a11y/noNoninteractiveTabindex: a long list scrolls, and keys must reach it
            <ul tabIndex={0} aria-label="What is wrong">
              {lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          )}
          {action && (
            <button type="button" aria-keyshortcuts={action.undoes && 'Control+Z'} onClick={action.run}>
              {action.name}
            </button>
          )}
        </div>
      )}
    </div>
  );
}

/** Distance of a notice from the edges of what it lies over, and how much of the drawing has to be in sight for it to lie there, px. */
const INSIDE = 8;
const IN_SIGHT = 120;

/** Places a notice over the foot of the drawing, which has no buttons; over the job's title where no drawing is in sight. */
function placeOverDrawing(box: HTMLElement): void {
  const drawing = document.querySelector('.sheet')?.getBoundingClientRect();
  const title = document.querySelector('.title')?.getBoundingClientRect();
  const low = drawing !== undefined && drawing.height > 0 && drawing.bottom > IN_SIGHT && drawing.top < innerHeight;
  box.classList.toggle('low', low);
  const at = low ? Math.min(drawing.bottom, innerHeight) - INSIDE : Math.max(seenTop() + INSIDE, title?.top ?? 0);
  box.style.top = `${at}px`;
  box.style.left = `${low ? drawing.left : 0}px`;
  box.style.right = `${low ? innerWidth - drawing.right : 0}px`;
}
