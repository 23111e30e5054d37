import type { FunctionComponent, JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A part that is fetched when it is first shown; nothing stands in its place until it is there. */
export function Later<P extends object>({
  load,
  ...props
}: { readonly load: () => Promise<FunctionComponent<P>> } & P): JSX.Element | null {
  const [fetched, setFetched] = useState<{ readonly by: typeof load; readonly Part: FunctionComponent<P> } | null>(
    null,
  );
  useEffect(() => {
    let wanted = true;
    void load().then((Part) => wanted && setFetched({ by: load, Part }));
    return () => {
      wanted = false;
    };
  }, [load]);
  // What stood here before is another part: it is not shown with what is meant for this one.
  return fetched?.by === load ? <fetched.Part {...(props as unknown as P)} /> : null;
}
