import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import { Later } from '../desk/later.tsx';
import { useOneStop } from '../entry/one-stop.ts';
import type { ToolsProps } from './more-views.tsx';
import { isSteel, nameOf, type ViewName } from './view-scene.ts';

/** Which drawings are shown, and what can be done with the joint. */
export function Tools(props: ToolsProps): JSX.Element {
  const row = useRef<HTMLElement>(null);
  useOneStop(row);
  // More of them than the screen is wide pass under its edge: the chosen one is brought out.
  useEffect(() => {
    const chosen = row.current?.querySelector<HTMLElement>('[aria-pressed="true"]');
    if (chosen) row.current!.scrollLeft = chosen.offsetLeft - (row.current!.clientWidth - chosen.offsetWidth) / 2;
  }, [props.shown]);
  return (
    <div class="tools">
      <nav class="views" aria-label="Views" ref={row}>
        <PlainViews {...props} />
        {props.views.some(isSteel) && <Later load={loadKnifeViews} {...props} />}
        {props.wide && <SecondView {...props} />}
      </nav>
      <Deeds shown={props.shown} fitting={props.fitting} />
    </div>
  );
}

const loadKnifeViews = () => import('./more-views.tsx').then(({ KnifeViews }) => KnifeViews);
const loadSecondList = () => import('./more-views.tsx').then(({ SecondList }) => SecondList);

function PlainViews({ view, second, views, shown, beside, wide }: ToolsProps): JSX.Element {
  const report = useDesk().report.value;
  return (
    <>
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
    </>
  );
}

function SecondView({ second, views, shown, beside }: ToolsProps): JSX.Element {
  return (
    <>
      <button
        type="button"
        class="quiet"
        onClick={() => {
          second.value = beside ? null : (views.find((name) => name !== shown) ?? null);
        }}
      >
        {beside ? 'One drawing' : 'Two drawings'}
      </button>
      {beside && <Later load={loadSecondList} second={second} views={views} shown={shown} beside={beside} />}
    </>
  );
}

function Deeds({ shown, fitting }: { shown: ViewName; fitting: Signal<boolean> }): JSX.Element {
  const desk = useDesk();
  const row = useRef<HTMLDivElement>(null);
  useOneStop(row);
  return (
    <div class="deeds" role="toolbar" aria-label="With the joint" ref={row}>
      <button
        type="button"
        class="to-fit"
        aria-expanded={fitting.value}
        onClick={() => {
          fitting.value = !fitting.value;
        }}
      >
        Make it fit
      </button>
      {shown === 'joint' && (
        <button
          type="button"
          onClick={() => {
            desk.tries.value += 1;
          }}
        >
          Slide it in
        </button>
      )}
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
  );
}
