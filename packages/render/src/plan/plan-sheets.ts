import {
  listPlanProblems,
  type Planned,
  type Report,
  type Step,
  sayNotChecked,
  sayPlanCaution,
  sayStep,
  stateFit,
  stateRun,
} from '@fielded/core';
import type { Block, TextDocument } from '../document/document.ts';
import { documentPages } from '../document/document-pages.ts';
import { type OfficePaper, PAPERS } from '../paper.ts';
import type { Scene } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { sayNote } from '../words/english/note.ts';
import { sayPlan } from '../words/english/plan.ts';
import { mountAll } from './mounted.ts';
import { setUpSheet } from './set-up-sheet.ts';

/** The sheets of a plan: the order of work, then one page for each set-up. */
export function planSheets(planned: Planned, report: Report, paper: OfficePaper = 'a4'): Scene[] {
  const { plan } = planned;
  const mounted = mountAll(plan);
  const pages = mounted.map((_, k) => setUpSheet(plan, mounted, k, report, paper));
  return [...documentPages(workDocument(planned, report, paper), paper), ...pages];
}

/** The order of work, what running both heads at once takes, and how to have the rest checked. */
function workDocument(planned: Planned, report: Report, paper: OfficePaper): TextDocument {
  const { plan } = planned;
  const problems = listPlanProblems(planned, report);
  const title = sayPlan('work.title', { job: safeText(report.title) }, report);
  const count = plan.setUpCount;
  const [fits, runs] = [stateFit(report).words, stateRun(report).words];
  const unknown = plan.setups.flatMap((setUp) => setUp.notChecked.map((path) => sayNotChecked(path, setUp, report)));
  const stack = stackBlocks(plan.stack, report);
  const notChecked: Block[] =
    unknown.length === 0
      ? []
      : [
          { kind: 'heading', text: sayPlan('work.not-checked', {}, report) },
          { kind: 'list', items: [...new Set(unknown)].map(safeText) },
        ];
  const blocks: Block[] = [
    { kind: 'title', text: title },
    { kind: 'paragraph', text: sayPlan('work.statements', { fits, runs }, report) },
    ...problems.map(
      ({ severity, message }): Block => ({
        kind: 'paragraph',
        text: safeText(message),
        ...(severity === 'error' && { tone: 'trouble' as const }),
      }),
    ),
    { kind: 'heading', text: sayPlan(count === 1 ? 'work.steps.one' : 'work.steps.more', { count }, report) },
    stepTable(plan, linesOn(paper) - 3 * problems.length - countLines([...stack, ...notChecked]), report),
    ...stack,
    ...notChecked,
    { kind: 'paragraph', text: sayPlanCaution(report), tone: 'quiet' },
  ];
  return {
    title,
    language: sayNote('page.language', {}, report),
    foot: title,
    blocks,
    ...(report.language && { spoken: report.language }),
  };
}

/** About how many lines of steps A4 takes, and mm of each; what stands before and after them takes of these. */
const LINES_ON_A4 = 46;
const LINE = 5.2;
/** About how many lines a heading takes with its room, and how many characters of other text stand in one. */
const LINES_OF_HEADING = 2.7;
const CHARACTERS_ACROSS = 92;

/** About how many lines of steps a page takes. */
function linesOn(paper: OfficePaper): number {
  return LINES_ON_A4 - (PAPERS.a4.height - PAPERS[paper].height) / LINE;
}

/** About how many lines of steps the blocks after the steps take of the page. */
function countLines(blocks: readonly Block[]): number {
  const of = (words: string) => Math.ceil(words.length / CHARACTERS_ACROSS);
  return blocks.reduce((sum, block) => {
    if (block.kind === 'heading') return sum + LINES_OF_HEADING;
    const texts = block.kind === 'list' ? block.items : block.kind === 'paragraph' ? [block.text] : [];
    return sum + texts.reduce((lines, words) => lines + of(words), 0.5);
  }, 0);
}

/**
 * The steps with boxes to tick. Where they would not fit the `room` lines left on one page, steps that belong together share
 * a row: setting up with its test piece, and what is run then.
 */
function stepTable(plan: Planned['plan'], room: number, report: Report): Block {
  const said = plan.steps.map((step) => ({ step, words: safeText(sayStep(step, plan, report)) }));
  const lines = said.reduce((sum, { words }) => sum + 0.35 + Math.ceil(words.length / CHARACTERS), 0);
  const tight = lines > room;
  const rows = tight ? joinSteps(said) : said.map(({ words }) => words);
  return {
    kind: 'table',
    about: sayPlan('work.table', {}, report),
    head: ['', sayPlan('work.step', {}, report), sayPlan('work.done', {}, report)],
    rows: rows.map((words, k) => [String(k + 1), words, '']),
    foot: [],
    shares: [6, 82, 12],
    align: ['end', 'start', 'start'],
    dense: true,
  };
}

/** About how many characters of a step stand in one line of the table. */
const CHARACTERS = 78;
const TRYING: readonly Step['kind'][] = ['test-piece', 'measure'];

/** Steps that belong to the one before them said in one row with it: the test after setting up, long edges after the ends. */
function joinSteps(said: readonly { readonly step: Step; readonly words: string }[]): string[] {
  const rows: { kinds: Step['kind'][]; setUp: Step['setUp']; words: string }[] = [];
  for (const { step, words } of said) {
    const last = rows.at(-1);
    const goesOn =
      last !== undefined &&
      last.setUp === step.setUp &&
      (TRYING.includes(step.kind) || (step.kind === 'run-edges' && last.kinds.at(-1) === 'run-ends'));
    if (goesOn) {
      last.kinds.push(step.kind);
      last.words += ` ${words}`;
    } else rows.push({ kinds: [step.kind], setUp: step.setUp, words });
  }
  return rows.map(({ words }) => words);
}

function stackBlocks(stack: Planned['plan']['stack'], report: Report): Block[] {
  if (stack === null) return [];
  const heading = { kind: 'heading', text: sayPlan('work.both', {}, report) } as const;
  const { machine, lower, upper, spacer, notChecked } = stack;
  const paragraph = (words: string): Block[] => [heading, { kind: 'paragraph', text: safeText(words) }];
  if (stack.works) {
    const heads = { machine: machine ?? '', lower: lower ?? '', upper: upper ?? '', spacer: spacer! };
    return paragraph(sayPlan('work.both.works', heads, report));
  }
  if (stack.problems.length === 0)
    return paragraph(sayPlan('work.both.not-known', { unknown: notChecked.join(', ') }, report));
  return [heading, { kind: 'list', items: stack.problems.map(({ message }) => safeText(message)) }];
}
