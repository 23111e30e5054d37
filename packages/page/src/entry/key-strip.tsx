import type { JSX, RefObject } from 'preact';
import { useDesk } from '../desk/context.ts';
import { adoptStyles } from '../style/adopt-styles.ts';
import keyStripStyles from '../style/key-strip.css?inline';

adoptStyles(keyStripStyles);

const FRACTIONS = ['1/2', '1/4', '1/8', '1/16', '1/32', '1/64'] as const;

/**
 * Keys that a touch screen's own keyboard hides: fractions and signs, under a field that is being typed in. The smallest phone has room
 * for eight, each 44 px wide.
 */
export function KeyStrip({ field }: { field: RefObject<HTMLInputElement | null> }): JSX.Element {
  const desk = useDesk();
  const keys = desk.units.value === 'in' ? [...FRACTIONS, '+', '-'] : ['+', '-', '×', '÷', '(', ')', '/', 'in'];
  return (
    <div class="key-strip" role="group" aria-label="Keys">
      {keys.map((key) => (
        <button
          key={key}
          type="button"
          tabIndex={-1}
          // A press must not take the focus from the field.
          onPointerDown={(event) => event.preventDefault()}
          onClick={() => insert(field.current, key)}
        >
          {key}
        </button>
      ))}
    </div>
  );
}

function insert(field: HTMLInputElement | null, key: string): void {
  if (field === null) return;
  const from = field.selectionStart ?? field.value.length;
  const to = field.selectionEnd ?? from;
  const before = field.value.slice(0, from);
  // 1 and 1/4 make 1-1/4; a sign stands clear of what it joins.
  const joint = key.includes('/') && key.length > 1 && /\d$/.test(before) ? '-' : '';
  const text = /^[+×÷-]$|^(?:mm|in)$/.test(key) && before !== '' ? ` ${key}${/^[+×÷-]$/.test(key) ? ' ' : ''}` : key;
  field.setRangeText(joint + text, from, to, 'end');
  field.dispatchEvent(new Event('input', { bubbles: true }));
}
