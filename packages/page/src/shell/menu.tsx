import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/**
 * A button that opens a short list of commands; a press elsewhere or Escape closes it. Its list is rendered when it
 * opens; the keys down and up go into it and along it (`keys.ts`).
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
  };
  return (
    <details class="menu" ref={menu} onToggle={() => setOpened(menu.current?.open === true)} onKeyDown={listen}>
      <summary>{name}</summary>
      <div class="menu-list">{opened && children}</div>
    </details>
  );
}
