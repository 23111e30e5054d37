import type { Planned } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { attempt, fetchPart } from '../../desk/fetch-part.ts';
import { fileName, handOver } from '../../files/hand-over.ts';

type Makers = typeof import('../../files/plan-document.ts');

/** Order of work and sheets on paper: as PDF, or printed. */
export function PlanFiles({ planned }: { planned: Planned }): JSX.Element {
  const desk = useDesk();
  const make = (run: (makers: Makers) => Promise<string>) =>
    attempt(desk, async () => {
      const makers = await fetchPart(() => import('../../files/plan-document.ts'));
      desk.notice.value = { kind: 'note', text: await run(makers) };
    });
  const save = () =>
    make(async ({ planPdf }) => {
      const name = fileName(`${desk.job.value.title} set-up`, 'pdf');
      handOver(name, await planPdf(planned, desk.report.value), 'application/pdf');
      return `Saved as ${name}.`;
    });
  const print = () =>
    make(async ({ printPlan }) => {
      printPlan(planned, desk.report.value);
      return 'The sheets are in the print window.';
    });
  return (
    <div class="buttons">
      <button type="button" onClick={save}>
        Sheets as PDF
      </button>
      <button type="button" onClick={print}>
        Print the sheets
      </button>
    </div>
  );
}
