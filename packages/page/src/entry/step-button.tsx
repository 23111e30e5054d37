import type { JSX } from 'preact';

/** The button on one side of a figure that makes it a step less or more. */
export function StepButton({
  way,
  name,
  disabled,
  step,
}: {
  way: 'less' | 'more';
  name: string;
  disabled?: boolean;
  step: (event: MouseEvent) => void;
}): JSX.Element {
  return (
    <button type="button" class="step" tabIndex={-1} aria-label={`${name}: ${way}`} disabled={disabled} onClick={step}>
      {way === 'less' ? '−' : '+'}
    </button>
  );
}
