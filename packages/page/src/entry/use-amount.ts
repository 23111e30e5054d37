import { parseLength } from '@fielded/core';
import { type Signal, useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import { entryText } from './entry-text.ts';

/** The text of an amount, `mm` to begin with, or nothing for null. Where another unit is shown, it says the same amount in that one. */
export function useAmount(mm: number | null): Signal<string> {
  const units = useDesk().units.value;
  const text = useSignal(mm === null ? '' : entryText(mm, units));
  const said = useRef(units);
  if (said.current !== units) {
    const read = parseLength(text.peek(), said.current);
    said.current = units;
    if ('mm' in read) text.value = entryText(read.mm, units);
  }
  return text;
}
