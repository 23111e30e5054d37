import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/**
 * A button that opens a short list of commands; a press elsewhere or Escape closes it. The keys down and up go into the list and along it.
 * Its list is rendered when it opens.
 */
export function Menu({ name, children }: { name: string; children: ComponentChildren }): JSX.Element {
  const [opened, setOpened] = useState(false);
  const menu = useRef<HTMLDetailsElement>(null);
  const close = () => {
    if (menu.current) menu.current.open = false;
  };
  useEffect(() => {
    const closeOutside = (event: Event) => {
      if (menu.current?.open && !menu.current.contains(event.target as Node)) menu.current.open = false;
    };
    // Choosing something closes the list; typing in it, or fetching the list itself again, does not.
    const closeChosen = (event: Event) => {
      if ((event.target as Element).closest('.menu-list button:not(.not-fetched *)') === null) return;
      const hadFocus = menu.current?.contains(document.activeElement);
      close();
      if (hadFocus) menu.current?.querySelector('summary')?.focus();
    };
    const { current } = menu;
    current?.addEventListener('click', closeChosen);
    addEventListener('pointerdown', closeOutside);
    addEventListener('focusin', closeOutside);
    return () => {
      current?.removeEventListener('click', closeChosen);
      removeEventListener('pointerdown', closeOutside);
      removeEventListener('focusin', closeOutside);
    };
  }, []);
  const listen = (event: KeyboardEvent) => {
    if (event.key === 'Escape') {
      close();
      menu.current?.querySelector('summary')?.focus();
    }
    // In a list that drops down, the arrows choose from that.
    if (!(event.key in WAYS) || event.target instanceof HTMLSelectElement) return;
    event.preventDefault();
    goAlong(menu.current!, event.target as HTMLElement, WAYS[event.key]!);
  };
  return (
    <details class="menu" ref={menu} onToggle={() => setOpened(menu.current?.open === true)} onKeyDown={listen}>
      <summary>{name}</summary>
      <div class="menu-list">{opened && children}</div>
    </details>
  );
}

const WAYS: Readonly<Record<string, 1 | -1>> = { ArrowDown: 1, ArrowUp: -1 };

/** Goes to the next command of a menu, or the one before; from its button into the list, which opens and may still have to be fetched. */
function goAlong(menu: HTMLDetailsElement, from: HTMLElement, way: 1 | -1): void {
  const items = () => [...menu.querySelectorAll<HTMLElement>('summary, .menu-list :is(button, select)')];
  const go = () =>
    items()
      .at((items().indexOf(from) + way) % items().length)
      ?.focus();
  menu.open = true;
  if (items().length > 1) {
    go();
    return;
  }
  const fetched = new MutationObserver(() => {
    if (items().length === 1) return;
    fetched.disconnect();
    if (menu.open && document.activeElement === from) go();
  });
  fetched.observe(menu, { childList: true, subtree: true });
}
