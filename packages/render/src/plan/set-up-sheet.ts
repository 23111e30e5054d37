import { listKnifeProblems, type Plan, type Problem, type Report, type SetUp } from '@fielded/core';
import { stroke } from '../geometry/stroke.ts';
import { type OfficePaper, PAPERS, SHEET_MARGIN, toMiddle } from '../paper.ts';
import { type Item, itemsBox, moveItems, path, type Scene, text } from '../scene.ts';
import { fitText, textWidth } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayPlan } from '../words/english/plan.ts';
import { scaleText } from '../words/lengths.ts';
import { drawStatements } from '../words/statement-marks.ts';
import { BIG_FIGURES_HEIGHT, drawBigFigures } from './big-figures.ts';
import { nameCut } from './frame-words.ts';
import { NORMAL, SMALL, TIGHT } from './lines.ts';
import type { Mounted } from './mounted.ts';
import { drawPlanView } from './plan-picture.ts';
import { drawSetUpSection } from './section-picture.ts';
import { drawSetting } from './setting-part.ts';
import { BESIDE, type FootPart, LEFT, layFoot, WIDTH } from './sheet-foot.ts';
import { drawSmaller, isTall, LEAST_SCALE } from './smaller-section.ts';

const TITLE = 5;
const PLAN_HEIGHT = 57;

/** The sheet for one set-up, upright: the figures that are set large, everything else small. */
export function setUpSheet(
  plan: Plan,
  all: readonly Mounted[],
  index: number,
  report: Report,
  paper: OfficePaper,
): Scene {
  const sheet = PAPERS[paper];
  const mounted = all[index]!;
  const { setUp, upper } = mounted;
  const cuts = safeText([setUp, ...(upper ? [upper] : [])].map((each) => nameCut(each, report)).join(' + '));
  const name = sayPlan('set-up.name', { number: index + 1, cuts }, report);
  const figures = SHEET_MARGIN + 21;
  const picture = figures + BIG_FIGURES_HEIGHT + 2;
  const draw = (room: number, by = 1) =>
    drawSetUpSection(report, plan.setups, mounted, { width: WIDTH / by, height: room / by });
  const roomOver = (parts: readonly FootPart[]) => parts.at(-1)!.top - 3 - PLAN_HEIGHT - 2 - picture;
  const problems = [...setUp.problems, ...knifeProblems([setUp, ...(upper ? [upper] : [])], report)];
  const known = { ...setUp, problems };
  const usual = layFoot(known, report, NORMAL, sheet.height);
  // Texts that leave the section no room, as they may in other languages or on low paper, are lettered smaller.
  const first = draw(roomOver(usual));
  const tight = first.scale < LEAST_SCALE || isTall(first.items, roomOver(usual));
  const parts = tight ? layFoot(known, report, TIGHT, sheet.height) : usual;
  const height = roomOver(parts);
  const views = height + 2 + picture;
  const section = tight ? drawSmaller(draw, height) : first;
  const half = (WIDTH - BESIDE) / 2;
  const view = drawPlanView(setUp, report, { width: half, height: PLAN_HEIGHT });
  const from = sayPlan('set-up.from-above', { scale: scaleText(view.scale, report) }, report);
  const items: Item[] = [
    ...headOf(mounted, name, report, sayPlan('set-up.of', { sheet: index + 1, of: all.length }, report)),
    ...drawBigFigures(mounted, report, LEFT, figures, WIDTH),
    ...placeIn(section.items, LEFT, picture, WIDTH, height),
    text('section scale', 'quiet', LEFT, picture + height - 1, scaleText(section.scale, report), SMALL),
    ...placeBeside(view.items, LEFT + textWidth(from, SMALL), views + SMALL, { x: LEFT, y: views, width: half }),
    text('plan scale', 'quiet', LEFT, views + SMALL, from, SMALL),
    ...drawSetting(mounted, report, LEFT + half + BESIDE, views, half),
    ...parts.toReversed().flatMap((part) => part.items),
  ];
  return {
    ...sheet,
    scale: section.scale,
    title: sayPlan('set-up.title', { job: safeText(report.title), name }, report),
    description: sayPlan('set-up.described', { name, machine: setUp.machine }, report),
    items: moveItems(items, toMiddle(paper), 0),
  };
}

/** What is said of the knives that a sheet sets up. */
function knifeProblems(setUps: readonly SetUp[], report: Report): Problem[] {
  return setUps
    .filter(({ of }) => of === 'panel')
    .flatMap(({ cut }) =>
      listKnifeProblems(
        report,
        report.section.cuts.findIndex(({ name }) => name === cut),
      ),
    );
}

/** Names the set-up, the job, the machine and the tool, with both statements. */
function headOf({ setUp, upper, spacer }: Mounted, name: string, report: Report, place: string): Item[] {
  const { machine } = setUp;
  const tool = sayTool(setUp, report);
  const how = upper
    ? sayPlan('set-up.how.both', { machine, lower: tool, spacer: spacer!, upper: sayTool(upper, report) }, report)
    : sayPlan('set-up.how', { machine, tool, hold: sayHold(setUp, report) }, report);
  const below = SHEET_MARGIN + TITLE + 11;
  // What is stated goes before the job's name, which may be cut short.
  const stated = drawStatements(report, LEFT, below, SMALL, WIDTH).items;
  const room = LEFT + WIDTH - itemsBox(stated)!.x1 - 5;
  return [
    text('name', 'text', LEFT, SHEET_MARGIN + TITLE, fitText(name, TITLE, WIDTH - 30), TITLE),
    text('place', 'quiet', LEFT + WIDTH, SHEET_MARGIN + TITLE, place, 3.5, 'end'),
    text('how', 'text', LEFT, SHEET_MARGIN + TITLE + 6, fitText(safeText(how), 2.8, WIDTH), 2.8),
    text(
      'job',
      'quiet',
      LEFT + WIDTH,
      below,
      fitText(safeText(report.title), SMALL, Math.min(room, WIDTH / 2)),
      SMALL,
      'end',
    ),
    ...stated,
    path('head rule', 'thin', [stroke(LEFT, SHEET_MARGIN + 18, LEFT + WIDTH, SHEET_MARGIN + 18)]),
  ];
}

/** The head with its knife, and which slot that goes into. */
function sayTool({ head, knife, slot, turnedOver }: SetUp, report: Report): string {
  const held =
    knife === null ? sayPlan('tool.to-grind', { head }, report) : sayPlan('tool.knife', { head, knife }, report);
  const placed = slot === null ? held : sayPlan(`tool.slot.${slot}`, { tool: held }, report);
  return turnedOver ? sayPlan('tool.turned-over', { tool: placed }, report) : placed;
}

/** How the work is held, in words. */
function sayHold({ run, presented, frame }: SetUp, report: Report): string {
  if (frame !== undefined) return sayPlan(`hold.${frame.kind}.${run}`, {}, report);
  if (presented === 90) return sayPlan('hold.on-edge', {}, report);
  if (presented === 0) return sayPlan(`hold.${run}.flat`, {}, report);
  return sayPlan(`hold.${run}.tilted`, { tilt: presented }, report);
}

/** The view from above in the middle of its room, or as far to the right as keeps its circle off words that end at (right, base). */
function placeBeside(
  items: readonly Item[],
  right: number,
  base: number,
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): Item[] {
  const placed = placeIn(items, x, y, width, PLAN_HEIGHT);
  const box = itemsBox(placed)!;
  const circle = itemsBox(placed.filter(({ key }) => key === 'circle'))!;
  const radius = (circle.x1 - circle.x0) / 2;
  const above = Math.max(0, (circle.y0 + circle.y1) / 2 - base - 1);
  const side = (circle.x0 + circle.x1) / 2 - Math.sqrt(Math.max(0, radius * radius - above * above));
  return moveItems(placed, Math.max(0, Math.min(right + 1.5 - side, x + width - box.x1)), 0);
}

/** Moves items into the middle of a room. */
function placeIn(items: readonly Item[], x: number, y: number, width: number, height: number): Item[] {
  const box = itemsBox(items)!;
  return moveItems(items, x + (width - (box.x1 - box.x0)) / 2 - box.x0, y + (height - (box.y1 - box.y0)) / 2 - box.y0);
}
