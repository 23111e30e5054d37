import { type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import { Compare } from '../panels/fit/compare.tsx';
import { Later } from '../shell/later.tsx';
import { useStill } from '../shell/still.ts';
import { Problems } from './problems.tsx';
import { Sheet } from './sheet.tsx';
import { Verdict, VerdictChip } from './verdict.tsx';
import { isSteel, isWorkedOn, nameOf, type ViewName, viewsFor } from './view-scene.ts';

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
  const views = viewsFor(report);
  const shown = views.includes(view.value) ? view.value : views[0]!;
  const beside = wide && second.value !== null && views.includes(second.value) ? second.value : null;
  const tools = useStill(() => (
    <div class="tools">
      <nav class="views" aria-label="Views">
        {views
          .filter((name) => !isSteel(name))
          .map((name) => (
            <button
              key={name}
              type="button"
              aria-pressed={name === shown || name === beside}
              onClick={(event) => {
                if (wide && event.shiftKey && name !== shown) second.value = name;
                else view.value = name;
              }}
            >
              {nameOf(name, report)}
            </button>
          ))}
        {views.some(isSteel) && (
          <select
            class={isSteel(shown) ? 'chosen' : ''}
            aria-label="Knives"
            value={isSteel(shown) ? shown : ''}
            onChange={(event) => {
              view.value = event.currentTarget.value as ViewName;
            }}
          >
            <option value="" disabled hidden>
              Knives
            </option>
            {views.filter(isSteel).map((name) => (
              <option key={name} value={name}>
                {nameOf(name, report)}
              </option>
            ))}
          </select>
        )}
        {wide && (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              second.value = beside ? null : (views.find((name) => name !== shown) ?? null);
            }}
          >
            {beside ? 'One drawing' : 'Two drawings'}
          </button>
        )}
        {beside && (
          <select
            aria-label="Second drawing"
            value={beside}
            onChange={(event) => {
              second.value = event.currentTarget.value as ViewName;
            }}
          >
            {views
              .filter((name) => name !== shown)
              .map((name) => (
                <option key={name} value={name}>
                  {nameOf(name, report)}
                </option>
              ))}
          </select>
        )}
      </nav>
      <div class="deeds">
        {isWorkedOn(shown) && shown === 'joint' && <TryTheFit />}
        <button
          type="button"
          aria-expanded={fitting.value}
          onClick={() => {
            fitting.value = !fitting.value;
          }}
        >
          Make it fit
        </button>
        <button
          type="button"
          aria-pressed={desk.trace.value !== null}
          onClick={() => {
            desk.trace.value = desk.trace.value === null ? desk.report.value : null;
          }}
        >
          Compare
        </button>
      </div>
    </div>
  ));
  return (
    <section class="stage" ref={stage} aria-label="Drawing">
      <Verdict />
      <div class={beside ? 'sheets two' : 'sheets'}>
        <VerdictChip />
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

function TryTheFit(): JSX.Element {
  const desk = useDesk();
  return (
    <button
      type="button"
      onClick={() => {
        desk.tries.value += 1;
      }}
    >
      Try the fit
    </button>
  );
}

function useWide(stage: { readonly current: HTMLElement | null }): boolean {
  const [wide, setWide] = useState(false);
  useEffect(() => {
    const watch = new ResizeObserver(() => setWide((stage.current?.clientWidth ?? 0) >= ROOM_FOR_TWO));
    watch.observe(stage.current!);
    return () => watch.disconnect();
  }, [stage]);
  return wide;
}
