import type { ComponentChildren, JSX } from 'preact';
import { useState } from 'preact/hooks';

/** Things that are set once, folded away under a name; rendered when first unfolded. */
export function Fold({ name, children }: { name: string; children: () => ComponentChildren }): JSX.Element {
  const [opened, setOpened] = useState(false);
  return (
    <details class="fold" onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>{name}</summary>
      {opened && children()}
    </details>
  );
}
