import { useComputed } from '@preact/signals';
import type { FunctionComponent, JSX, RefObject } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { DeskContext } from '../desk/context.ts';
import type { Desk } from '../desk/desk.ts';
import { isChanged } from '../desk/doc.ts';
import { attempt, fetchPart } from '../desk/fetch-part.ts';
import type { Keeper } from '../desk/keeper.ts';
import { Later } from '../desk/later.tsx';
import { createRestingDesk } from '../desk/resting-desk.ts';
import { Sizes } from '../panels/sizes/sizes.tsx';
import { createPlaces, type PagePart, type Places } from '../stage/places.ts';
import { Stage } from '../stage/stage.tsx';
import { listenToKeys } from './listen-to-keys.ts';
import { Notices } from './notices.tsx';
import { RoomNav } from './room-nav.tsx';
import { Said } from './said.tsx';
import { TitleBar } from './title-bar.tsx';

/** The whole page. `greet` shows a first visitor what to touch. */
export function App({ desk, keeper, greet }: { desk: Desk; keeper: Keeper; greet: boolean }): JSX.Element {
  const places = useMemo(createPlaces, []);
  useEffect(() => listenToKeys(desk), [desk]);
  useEffect(() => awaitTyping(desk), [desk]);
  useEffect(() => listenToDrops(desk, keeper), [desk, keeper]);
  const side = useRef<HTMLDivElement>(null);
  useArrival(places, side);
  const resting = useMemo(() => createRestingDesk(desk, () => desk.dragged.value || desk.asideLate.value), [desk]);
  const untouched = useComputed(() => resting.history.value.past.length === 0 && !isChanged(resting.doc.value));
  return (
    <DeskContext.Provider value={desk}>
      <div class="page">
        <button type="button" class="skip" onClick={goToDrawing}>
          To the drawing
        </button>
        <DeskContext.Provider value={resting}>
          <TitleBar places={places} keeper={keeper} />
        </DeskContext.Provider>
        <main data-place={places.place.value}>
          <RoomNav places={places} />
          <div
            class="side"
            ref={side}
            tabIndex={-1}
            role="group"
            aria-label={{ joint: 'Sizes', new: 'New job' }[String(places.place.value)] ?? places.place.value}
            onKeyDown={(event) => closeList(event, places)}
          >
            {greet && untouched.value && places.place.value === 'joint' && <Greeting />}
            <DeskContext.Provider value={resting}>
              <Part places={places} keeper={keeper} />
            </DeskContext.Provider>
          </div>
          <Stage view={places.view} />
        </main>
        <Notices />
        <Said />
      </div>
    </DeskContext.Provider>
  );
}

/** Another part begins at its head, and the keyboard goes on in it; in the row of parts it stays where it is. */
function useArrival({ place }: Places, side: RefObject<HTMLDivElement | null>): void {
  const before = useRef(place.value);
  useLayoutEffect(() => {
    if (before.current === place.value) return;
    before.current = place.value;
    scrollTo({ top: 0, behavior: 'instant' });
    if (document.activeElement?.closest('.rooms') == null) side.current?.focus({ preventScroll: true });
  }, [place.value]);
}

/** Escape leaves what stands in the place of a part for a while. */
function closeList(event: KeyboardEvent, { place }: Places): void {
  if (event.key !== 'Escape' || event.defaultPrevented || !/new|jobs|keys/.test(place.value)) return;
  event.preventDefault();
  place.value = 'joint';
}

/** Typing is followed from the first touch or field on: what follows it is fetched then. Returns what stops it. */
function awaitTyping(desk: Desk): () => void {
  let stop = () => {};
  const listen = () => {
    for (const type of BEGINS) addEventListener(type, begin);
  };
  const begin = () => {
    for (const type of BEGINS) removeEventListener(type, begin);
    // Without it fields are typed in all the same; the next touch asks again.
    fetchPart(() => import('./watch-typing.ts')).then(({ watchTyping }) => {
      stop = watchTyping(desk);
    }, listen);
  };
  listen();
  return () => stop();
}

const BEGINS = ['pointerdown', 'focusin'] as const;

function goToDrawing(): void {
  document.querySelector<HTMLElement>('.sheet [tabindex="0"], .closer-buttons button')?.focus();
}

function Greeting(): JSX.Element {
  return (
    <p class="greeting">
      A finished joint to begin with. Tap a figure on the drawing and type over it, or drag one of the small circles.{' '}
      <b>New</b>, under <b>Job</b>, begins one of your own.
    </p>
  );
}

/** What stands beside the drawing: each part but the sizes is fetched when it is gone to. */
function Part(props: PartProps): JSX.Element {
  const load = PARTS[props.places.place.value];
  return load ? <Later load={load} {...props} /> : <Sizes />;
}

interface PartProps {
  readonly places: Places;
  readonly keeper: Keeper;
}

const PARTS: Readonly<Partial<Record<PagePart, () => Promise<FunctionComponent<PartProps>>>>> = {
  doors: () => import('../panels/doors/doors-panel.tsx').then(({ DoorsPanel }) => DoorsPanel),
  shop: () => import('../panels/shop/shop-panel.tsx').then(({ ShopPanel }) => ShopPanel),
  'set-up': () => import('../panels/set-up/set-up-panel.tsx').then(({ SetUpPanel }) => SetUpPanel),
  quote: () => import('../panels/quote/quote-panel.tsx').then(({ QuotePanel }) => QuotePanel),
  jobs: () => import('./job-list.tsx').then(({ JobList }) => JobList),
  keys: () => import('./key-table.tsx').then(({ KeyTable }) => KeyTable),
  new: () => import('../panels/new/new-job-form.tsx').then(({ NewJobForm }) => NewJobForm),
};

function listenToDrops(desk: Desk, keeper: Keeper): () => void {
  const over = (event: DragEvent) => event.preventDefault();
  const drop = (event: DragEvent) => {
    event.preventDefault();
    // Folders can only be asked for while the drop is being handled.
    const entries = [...(event.dataTransfer?.items ?? [])].map((item) => item.webkitGetAsEntry());
    const files = [...(event.dataTransfer?.files ?? [])];
    void attempt(desk, async () => {
      const { takeInDropped } = await fetchPart(() => import('../files/dropped-files.ts'));
      await takeInDropped(desk, keeper, entries, files);
    });
  };
  addEventListener('dragover', over);
  addEventListener('drop', drop);
  return () => {
    removeEventListener('dragover', over);
    removeEventListener('drop', drop);
  };
}
