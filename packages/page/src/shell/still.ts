import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';

/** What is rendered, kept as it was while a size is moved by hand: parts that show no sizes need not be gone over at every frame. */
export function useStill(render: () => JSX.Element): JSX.Element {
  const desk = useDesk();
  const kept = useRef<JSX.Element | null>(null);
  if (kept.current === null || desk.moving.value === null) kept.current = render();
  return kept.current;
}
