import {
  formatLength,
  type Planned,
  type Report,
  sayNotChecked,
  sayPlanCaution,
  sayStep,
  stateFit,
  stateRun,
} from '@fielded/core';
import type { Block, TextDocument } from '../document/document.ts';
import { documentPages } from '../document/document-pages.ts';
import type { Scene } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { setUpSheet } from './set-up-sheet.ts';

/** The sheets of a plan, A4: the order of work, then one page for each set-up. */
export function planSheets(planned: Planned, report: Report): Scene[] {
  const { plan } = planned;
  const pages = plan.setups.map((_, k) => setUpSheet(plan, k, report, plan.setups.length));
  return [...documentPages(workDocument(planned, report), 'a4'), ...pages];
}

/** The whole order of work, both heads at once, and how to have checked what was not. */
function workDocument({ plan, problems }: Planned, report: Report): TextDocument {
  const title = `Order of work: ${safeText(report.title)}`;
  const count = plan.setUpCount === 1 ? 'one set-up' : `${plan.setUpCount} set-ups`;
  const unknown = plan.setups.flatMap((setUp) => setUp.notChecked.map((path) => sayNotChecked(path, setUp, report)));
  const blocks: Block[] = [
    { kind: 'title', text: title },
    { kind: 'paragraph', text: `${stateFit(report).words} · ${stateRun(report).words}` },
    ...problems.map(
      ({ severity, message }): Block => ({
        kind: 'paragraph',
        text: safeText(message),
        ...(severity === 'error' && { tone: 'trouble' as const }),
      }),
    ),
    { kind: 'heading', text: `Steps, with ${count}` },
    {
      kind: 'table',
      about: 'The order of work',
      head: ['', 'Step', 'Done'],
      rows: plan.steps.map((step, k) => [String(k + 1), safeText(sayStep(step, plan, report)), '']),
      foot: [],
      shares: [6, 82, 12],
      align: ['end', 'start', 'start'],
    },
    ...stackBlocks(plan.stack, report),
    ...(unknown.length === 0
      ? []
      : [
          { kind: 'heading', text: 'Not checked' } as const,
          { kind: 'list', items: [...new Set(unknown)].map(safeText) } as const,
        ]),
    { kind: 'paragraph', text: sayPlanCaution(report), tone: 'quiet' },
  ];
  return { title, language: 'en', foot: title, blocks };
}

function stackBlocks(stack: Planned['plan']['stack'], { units }: Report): Block[] {
  if (stack === null) return [];
  const heading = { kind: 'heading', text: 'Both heads at once' } as const;
  if (stack.works)
    return [
      heading,
      {
        kind: 'paragraph',
        text: safeText(
          `Works on ${stack.machine}: ${stack.lower} below, ${stack.upper} above, with a spacer of ${formatLength(stack.spacer!, units)} between the heads. The tongue then follows neither the stock nor the height.`,
        ),
      },
    ];
  if (stack.problems.length === 0)
    return [heading, { kind: 'paragraph', text: safeText(`Not known: ${stack.notChecked.join(', ')}.`) }];
  return [heading, { kind: 'list', items: stack.problems.map(({ message }) => safeText(message)) }];
}
