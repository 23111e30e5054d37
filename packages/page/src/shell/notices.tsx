import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';

/** How long a note stays, ms; a fault stays until it is put away. */
const STAY = 5000;

/** What just happened, in a line at the foot; what went wrong, in lines that stay. */
export function Notices(): JSX.Element {
  const desk = useDesk();
  const { text, kind, lines, action } = desk.notice.value;
  const clear = () => {
    desk.notice.value = { text: '', kind: 'note' };
  };
  useEffect(() => {
    if (text === '' || kind === 'fault' || action) return;
    const wait = setTimeout(clear, STAY);
    return () => clearTimeout(wait);
  }, [text, kind, action]);
  return (
    <div class="notices" role="status" aria-live="polite">
      {text !== '' && (
        <div class={`notice ${kind}`}>
          <p>{text}</p>
          {lines && lines.length > 0 && (
            <ul>
              {lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          )}
          {action && (
            <button type="button" onClick={action.run}>
              {action.name}
            </button>
          )}
          <button type="button" onClick={clear}>
            Close
          </button>
        </div>
      )}
    </div>
  );
}
