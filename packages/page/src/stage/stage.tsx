import { type Signal, useComputed, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { DeskContext, useDesk } from '../desk/context.ts';
import { Later } from '../desk/later.tsx';
import { createPacedDesk } from '../desk/paced-desk.ts';
import { createRestingDesk } from '../desk/resting-desk.ts';
import { Sheet } from './sheet.tsx';
import { Tools } from './tools.tsx';
import { LiveVerdict, VerdictBar, VerdictChip } from './verdict.tsx';
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
  // What stands round the drawing is not gone over while a size is moved; a joint that is moved is reported alone anyway.
  const resting = useMemo(() => createRestingDesk(desk, () => desk.busy.value), [desk]);
  const paced = useMemo(() => createPacedDesk(desk), [desk]);
  useEffect(() => () => paced.stop(), [paced]);
  const names = useComputed(() => viewsFor(resting.report.value).join('|'));
  // What was wrong once is listed by a part of its own, also when nothing is any more.
  const troubles = useComputed(() => resting.problems.value.length > 0);
  const troubled = useRef(false);
  troubled.current ||= troubles.value;
  const title = useComputed(() => resting.report.value.title);
  const views = names.value.split('|') as ViewName[];
  const shown = views.includes(view.value) ? view.value : views[0]!;
  const beside = wide && second.value !== null && views.includes(second.value) ? second.value : null;
  return (
    <section class="stage" ref={stage} aria-label="Drawing">
      <DeskContext.Provider value={paced.desk}>
        <VerdictBar />
      </DeskContext.Provider>
      <div class={beside ? 'sheets two' : 'sheets'}>
        <Sheet key={`1 ${shown}`} view={shown} label={title.value} />
        {beside && <Sheet key={`2 ${beside}`} view={beside} label={title.value} />}
        <DeskContext.Provider value={paced.desk}>
          <VerdictChip fitting={fitting} />
        </DeskContext.Provider>
      </div>
      <DeskContext.Provider value={resting}>
        <LiveVerdict />
        <Tools view={view} second={second} fitting={fitting} views={views} shown={shown} beside={beside} wide={wide} />
        {fitting.value && (
          <Later
            load={loadFit}
            close={() => {
              fitting.value = false;
            }}
          />
        )}
        {desk.trace.value && <Later load={loadCompare} />}
        {troubled.current && <Later load={loadProblems} />}
      </DeskContext.Provider>
    </section>
  );
}

const loadProblems = () => import('./problems.tsx').then(({ Problems }) => Problems);
const loadCompare = () => import('../panels/fit/compare.tsx').then(({ Compare }) => Compare);
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
