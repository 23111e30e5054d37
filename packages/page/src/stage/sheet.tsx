import { effect, type ReadonlySignal, signal, useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import type { Desk } from '../desk/desk.ts';
import { attempt } from '../desk/fetch-part.ts';
import { DimensionEntry, type OpenDimension } from './dimension-entry.tsx';
import { liveDrawer, loadDrawer } from './drawers.ts';
import { createLiveSheet, type LiveSheet } from './live-sheet.ts';
import { type Closer, createCloser } from './look-closer.ts';
import { type Drawer, isLong, isWorkedOn, nameOf, type ViewName } from './view-scene.ts';

/** The drawing, live: dimensions to tap and arrises to drag. */
export function Sheet({ view, label }: { view: ViewName; label: string }): JSX.Element {
  const desk = useDesk();
  const box = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const open = useMemo(() => signal<OpenDimension | null>(null), []);
  const readout = useMemo(() => signal<Shown | null>(null), []);

  const closer = useMemo(createCloser, []);
  const draw = useDrawer(view);
  const hooks = useMemo(
    () => ({
      openDimension: (dimension: OpenDimension) => {
        open.value = dimension;
      },
      showReadout: (shown: Shown | null) => {
        readout.value = shown;
      },
    }),
    [],
  );
  const live = useRef<LiveSheet | null>(null);
  // Before the browser lays out and paints the page for the first time: it then does so once, with the drawing in it.
  useLayoutEffect(() => {
    if (draw === null) return;
    live.current = createLiveSheet(svg.current!, box.current!, desk, { draw, long: isLong(view) }, closer, hooks);
    return keepPainted(live.current, box.current!, desk, view);
  }, [desk, draw, view]);

  const close = () => {
    const was = open.value;
    open.value = null;
    // The other dimensions come back first: one of them takes the focus.
    desk.moving.value = null;
    if (was !== null) live.current?.focusDimension(was.of);
  };
  return (
    <div class="sheet" ref={box}>
      <svg
        ref={svg}
        class="drawing"
        role="group"
        aria-label={`${nameOf(view, desk.report.peek())}, ${label}`}
        data-view={view}
      />
      <CloserButtons closer={closer} />
      {open.value && <DimensionEntry key={open.value.of} open={open.value} still={isWorkedOn(view)} close={close} />}
      <Readout readout={readout} />
    </div>
  );
}

/** What draws a view: at once where it is worked on, else as soon as it is fetched; null until then. */
function useDrawer(view: ViewName): Drawer | null {
  const desk = useDesk();
  const [draw, setDraw] = useState<Drawer | null>(() => (isWorkedOn(view) ? liveDrawer(view) : null));
  useEffect(() => {
    if (draw !== null) return;
    void attempt(desk, async () => {
      const drawer = await loadDrawer(view);
      setDraw(() => drawer);
    });
  }, [desk, view, draw]);
  return draw;
}

/** Paints a sheet whenever the desk or its box changes; returns what ends that and takes the sheet away. */
function keepPainted(sheet: LiveSheet, box: HTMLElement, desk: Desk, view: ViewName): () => void {
  const triesBefore = desk.tries.peek();
  const stop = effect(() => {
    // While a size is moved there is only the joint: other drawings wait until the hand lets go.
    if (desk.moving.value === null || isWorkedOn(view)) sheet.paint();
  });
  const stopTrying = desk.tries.subscribe((count) => count > triesBefore && sheet.slideIn());
  const resized = new ResizeObserver(() => sheet.resize());
  resized.observe(box);
  return () => {
    stop();
    stopTrying();
    resized.disconnect();
    sheet.close();
  };
}

interface Shown {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

/** The size that is moved, beside the hand: on a sheet of its own, so that nothing else is laid out with it. */
function Readout({ readout }: { readout: ReadonlySignal<Shown | null> }): JSX.Element | null {
  const place = useRef<HTMLDivElement | null>(null);
  const shown = useComputed(() => readout.value !== null);
  const before = useRef<Shown | null>(null);
  const put = (at: Shown | null) => {
    const { current } = place;
    if (at === null || current === null) return;
    const was = before.current;
    before.current = at;
    // Not by a transform: the browser would sort the page into layers anew. Plain lengths, which it reads in no time.
    if (at.x !== was?.x) current.style.marginLeft = `${at.x}px`;
    if (at.y !== was?.y) current.style.marginTop = `${at.y}px`;
    if (at.text !== was?.text) (current.firstElementChild!.firstChild as Text).data = at.text;
  };
  // At once, and not in a frame of its own as an effect of the component would have it.
  useEffect(() => effect(() => put(readout.value)), [readout]);
  if (!shown.value) return null;
  const appear = (element: HTMLDivElement | null) => {
    place.current = element;
    before.current = null;
    put(readout.peek());
  };
  return (
    // The size is read out with the circle that moves it.
    <div class="readout-sheet" aria-hidden="true">
      <div class="readout-place" ref={appear}>
        <output class="readout"> </output>
      </div>
    </div>
  );
}

function CloserButtons({ closer }: { closer: Closer }): JSX.Element {
  const { times } = closer.look.value;
  const more = useRef<HTMLButtonElement>(null);
  return (
    <div class="closer-buttons">
      <button
        type="button"
        ref={more}
        aria-label="Look closer"
        aria-disabled={times >= 7.9}
        onClick={() => closer.step(1)}
      >
        +
      </button>
      {times > 1 && (
        <button
          type="button"
          aria-label="See more"
          onClick={() => {
            closer.step(-1);
            // Nothing more to see, and this button goes.
            if (closer.look.peek().times === 1) more.current?.focus();
          }}
        >
          −
        </button>
      )}
    </div>
  );
}
