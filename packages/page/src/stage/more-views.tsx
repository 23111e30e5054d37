import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { useDesk } from '../desk/context.ts';
import { isSteel, nameOf, type ViewName } from './view-scene.ts';

export interface ToolsProps {
  readonly view: Signal<ViewName>;
  /** The drawing beside it; null for none. */
  readonly second: Signal<ViewName | null>;
  readonly fitting: Signal<boolean>;
  readonly views: readonly ViewName[];
  readonly shown: ViewName;
  readonly beside: ViewName | null;
  readonly wide: boolean;
}

/** The views of the knives, in a list that drops down. */
export function KnifeViews({ view, views, shown }: ToolsProps): JSX.Element {
  const report = useDesk().report.value;
  const knives = views.filter(isSteel);
  return (
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
      {knives.map((name) => (
        <option key={name} value={name}>
          {nameOf(name, report)}
        </option>
      ))}
    </select>
  );
}

/** The view that stands beside the first one, in a list that drops down. */
export function SecondList({
  second,
  views,
  shown,
  beside,
}: Pick<ToolsProps, 'second' | 'views' | 'shown'> & { beside: ViewName }): JSX.Element {
  const report = useDesk().report.value;
  return (
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
  );
}
