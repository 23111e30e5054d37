import type { FunctionComponent, JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A part that is fetched when it is first shown; nothing stands in its place until it is there. */
export function Later<P extends object>({
  load,
  ...props
}: { readonly load: () => Promise<FunctionComponent<P>> } & P): JSX.Element | null {
  const [Part, setPart] = useState<FunctionComponent<P> | null>(null);
  useEffect(() => {
    void load().then((loaded) => setPart(() => loaded));
  }, [load]);
  return Part && <Part {...(props as unknown as P)} />;
}
