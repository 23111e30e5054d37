import { type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import { Compare } from '../panels/fit/compare.tsx';
import { Later } from '../shell/later.tsx';
import { useStill } from '../shell/still.ts';
import { Problems } from './problems.tsx';
import { Sheet } from './sheet.tsx';
import { Tools } from './tools.tsx';
import { Verdict, VerdictChip } from './verdict.tsx';
import { type ViewName, viewsFor } from './view-scene.ts';

/** Wide enough for two drawings beside each other, px. */
const ROOM_FOR_TWO = 900;

/** Verdict, drawing and what can be done with it. */
export function Stage({ view }: { view: Signal<ViewName> }): JSX.Element {
  const desk = useDesk();
  const second = useSignal<ViewName | null>(null);
  const fitting = useSignal(false);
  const stage = useRef<HTMLElement>(null);
  const wide = useWide(stage);
  const report = desk.report.value;
  // A joint that is being moved is reported alone: what else there is to be seen stays.
  const known = useRef<ViewName[]>([]);
  if (desk.moving.value === null || known.current.length === 0) known.current = viewsFor(report);
  const views = known.current;
  const shown = views.includes(view.value) ? view.value : views[0]!;
  const beside = wide && second.value !== null && views.includes(second.value) ? second.value : null;
  const tools = useStill(() => (
    <Tools view={view} second={second} fitting={fitting} views={views} shown={shown} beside={beside} wide={wide} />
  ));
  return (
    <section class="stage" ref={stage} aria-label="Drawing">
      <Verdict />
      <div class={beside ? 'sheets two' : 'sheets'}>
        <VerdictChip fitting={fitting} />
        <Sheet key={`1 ${shown}`} view={shown} label={report.title} />
        {beside && <Sheet key={`2 ${beside}`} view={beside} label={report.title} />}
      </div>
      {tools}
      {fitting.value && (
        <Later
          load={loadFit}
          close={() => {
            fitting.value = false;
          }}
        />
      )}
      <Compare />
      <Problems />
    </section>
  );
}

/** The solver comes with its panel, when that is first opened. */
const loadFit = () => import('../panels/fit/make-it-fit.tsx').then(({ MakeItFit }) => MakeItFit);

function useWide(stage: { readonly current: HTMLElement | null }): boolean {
  const [wide, setWide] = useState(false);
  useEffect(() => {
    const watch = new ResizeObserver(() => setWide((stage.current?.clientWidth ?? 0) >= ROOM_FOR_TWO));
    watch.observe(stage.current!);
    return () => watch.disconnect();
  }, [stage]);
  return wide;
}
