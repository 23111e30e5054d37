import { type Report, type SetUp, say, sayCurve, sayPlanCaution, sayStartChecks } from '@fielded/core';
import { rectangle } from '@fielded/geometry';
import { PAPERS, SHEET_MARGIN } from '../paper.ts';
import { type Item, itemsBox, moveItems, path } from '../scene.ts';
import { sayPlan } from '../words/english/plan.ts';
import { heading, type Lettering, listTexts, UNDER_HEADING } from './lines.ts';
import { nameUnknown } from './unknown-words.ts';

/** What a set-up's sheet holds within the margins of A4, and the white between two columns, mm. */
export const LEFT: number = SHEET_MARGIN;
export const WIDTH: number = PAPERS.a4.width - 2 * SHEET_MARGIN;
export const BESIDE = 6;

/** A part at the foot of the sheet, and the y of its top, mm. */
export interface FootPart {
  readonly items: readonly Item[];
  readonly top: number;
}

/** The parts at the foot of a sheet `height` mm high, the lowest first. */
export function layFoot(setUp: SetUp, report: Report, type: Lettering, height: number): FootPart[] {
  const foot = cautionOf(setUp, report, height - SHEET_MARGIN, type);
  const open = openQuestions(setUp, report, foot.top - 3, type);
  const checks = startChecks(setUp, report, open.top - 3, type);
  return [foot, open, checks, curveWords(setUp, report, checks.top - 3, type)];
}

/** How the shaped heads are run, across the sheet; nothing where there are none. */
function curveWords(setUp: SetUp, report: Report, foot: number, type: Lettering): FootPart {
  const words = sayCurve(setUp, report);
  if (words.length === 0) return { items: [], top: foot + 3 };
  const { items, y } = listTexts('curve', [words.join(' ')], { x: LEFT, y: type.height, width: WIDTH }, 'none', type);
  const height = y - type.step + 1;
  return { items: moveItems(items, 0, foot - height), top: foot - height };
}

/** What is checked before the start, in two columns, with boxes to tick. */
function startChecks(setUp: SetUp, report: Report, foot: number, type: Lettering): FootPart {
  const checks = sayStartChecks(setUp, report);
  const first = Math.ceil(checks.length / 2);
  const half = (WIDTH - BESIDE) / 2;
  const columns = [checks.slice(0, first), checks.slice(first)].map((some, k) =>
    listTexts(`check ${k}`, some, { x: LEFT + k * (half + BESIDE), y: UNDER_HEADING, width: half }, 'box', type),
  );
  const height = Math.max(...columns.map(({ y }) => y)) - type.step + 1;
  const items = [
    ...heading('checks', sayPlan('set-up.checks', {}, report), LEFT, 0, WIDTH),
    ...columns.flatMap((column) => column.items),
  ];
  return { items: moveItems(items, 0, foot - height), top: foot - height };
}

/** What is assumed and what was not checked, and what only spoils the work, in a box of its own. */
function openQuestions(setUp: SetUp, report: Report, foot: number, type: Lettering): FootPart {
  const assumed = setUp.assumed ? [sayPlan('set-up.assumed', {}, report)] : [];
  const unknown = setUp.notChecked.map((path) => nameUnknown(path, report)).join('; ');
  const open = unknown === '' ? [] : [sayPlan('set-up.not-checked', { unknown }, report)];
  const words = [...assumed, ...open, ...setUp.problems.map(({ message }) => message)];
  const listed = listTexts(
    'open',
    words.length === 0 ? [sayPlan('set-up.all-checked', {}, report)] : words,
    { x: LEFT + 2.5, y: 5, width: WIDTH - 5 },
    words.length === 0 ? 'none' : 'dash',
    type,
  );
  const height = listed.y - type.step + 2.5;
  const frame = rectangle({ x0: LEFT, y0: 0, x1: LEFT + WIDTH, y1: height });
  const items = [path('open box', words.length === 0 ? 'thin' : 'trouble', [frame]), ...listed.items];
  return { items: moveItems(items, 0, foot - height), top: foot - height };
}

/** How a kept sample sets the machine, and the caution that the tool's marks go first. */
function cautionOf(
  { of, cuttingPoint: point, fence, presented, curve }: SetUp,
  report: Report,
  foot: number,
  type: Lettering,
): FootPart {
  const words = [
    ...(of === 'panel' && presented === 0 && !curve?.alone
      ? [say('plan.sample', { point, out: fence.standsOut }, report)]
      : []),
    ...(curve === undefined ? [] : [say('plan.curve', {}, report)]),
    sayPlanCaution(report),
  ];
  const { items } = listTexts('caution', words, { x: LEFT, y: 0, width: WIDTH }, 'none', type);
  const box = itemsBox(items)!;
  const top = foot - box.y1 + box.y0;
  return { items: moveItems(items, 0, foot - box.y1), top: top - 1 };
}
