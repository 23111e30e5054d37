import type { ComponentChildren, JSX } from 'preact';
import { UNITS } from '../words/aloud.ts';

interface StepperProps {
  /** Names the figure for those who hear the buttons read out. */
  readonly name: string;
  readonly canStep?: { readonly less: boolean; readonly more: boolean };
  readonly step: (way: 1 | -1, event: MouseEvent) => void;
  /** What stands on the line. */
  readonly children: ComponentChildren;
}

/** A figure on its line, between a button that makes it a step less and one that makes it a step more. */
export function Stepper({ name, canStep, step, children }: StepperProps): JSX.Element {
  const button = (way: 'less' | 'more') => (
    <button
      type="button"
      class="step"
      tabIndex={-1}
      aria-label={`${name}: ${way}`}
      disabled={canStep?.[way] === false}
      onClick={(event) => step(way === 'less' ? -1 : 1, event)}
    >
      {way === 'less' ? '−' : '+'}
    </button>
  );
  return (
    <div class="entry">
      {button('less')}
      <div class="line">{children}</div>
      {button('more')}
    </div>
  );
}

/** The unit behind a figure: it describes the input of this id, and is not read out beside it once more. */
export function Unit({ of, children }: { of: string; children: string }): JSX.Element {
  return (
    // biome-ignore lint/a11y/useAriaPropsSupportedByRole: it is read as the description of its input alone, by this name
    <span class="unit" id={`${of}-unit`} aria-label={UNITS[children]} aria-hidden="true">
      {children}
    </span>
  );
}
