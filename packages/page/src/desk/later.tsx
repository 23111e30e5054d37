import type { FunctionComponent, JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchPart, NOT_FETCHED } from './fetch-part.ts';

/** A part of the page, fetched when it is first shown: nothing stands in its place until then, and a button to try again where it cannot be fetched. */
export function Later<P extends object>({
  load,
  ...props
}: { readonly load: () => Promise<FunctionComponent<P>> } & P): JSX.Element | null {
  const [fetched, setFetched] = useState<{ readonly by: typeof load; readonly Part: FunctionComponent<P> } | null>(
    null,
  );
  const [failed, setFailed] = useState<typeof load | null>(null);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    let wanted = true;
    setFailed(null);
    fetchPart(load).then(
      (Part) => wanted && setFetched({ by: load, Part }),
      () => wanted && setFailed(() => load),
    );
    return () => {
      wanted = false;
    };
  }, [load, tries]);
  // The part fetched before may be another one: do not show it with this one's properties.
  if (fetched?.by === load) return <fetched.Part {...(props as unknown as P)} />;
  if (failed !== load) return null;
  return (
    <div class="not-fetched" role="alert">
      <p>{NOT_FETCHED}</p>
      <button type="button" onClick={() => setTries(tries + 1)}>
        Try again
      </button>
    </div>
  );
}
