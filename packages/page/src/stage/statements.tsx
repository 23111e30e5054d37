import { type Report, type Stated, stateFit, stateRun } from '@fielded/core';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';

const SIGNS = { yes: '✓', no: '×', open: '?' } as const;

/** Both statements, whether it fits and whether it can be run, always side by side. */
export function Statements({ report, run }: { report: Report; run: Stated }): JSX.Element {
  return (
    <p class="statements">
      <Statement {...stateFit(report)} />
      <Statement {...run} />
    </p>
  );
}

/** Whether the job can be run. While a size is moved that is not computed, and stays as it was. */
export function useSettledRun(): Stated {
  const desk = useDesk();
  const settled = useRef<Stated | null>(null);
  const report = desk.report.value;
  if (!desk.busy.value || settled.current === null) settled.current = stateRun(report);
  return settled.current;
}

function Statement({ mark, words }: Stated): JSX.Element {
  return (
    <span class={`statement ${mark}`}>
      <span class="sign" aria-hidden="true">
        {SIGNS[mark]}
      </span>
      {words}
    </span>
  );
}
