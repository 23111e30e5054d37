import type { CutReport, Report } from '@fielded/core';
import { readLoops } from '@fielded/geometry';
import type { Room } from '../dimension/lay-within.ts';
import { layWithin } from '../dimension/lay-within.ts';
import type { Item } from '../scene.ts';
import { group, itemsBox, moveItems, text } from '../scene.ts';
import { wrapText, wrapTitle } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayView } from '../words/english/view.ts';
import { spokenNumber } from '../words/lengths.ts';
import { poseCut, sayPose } from './cut-pose.ts';
import { sketchCut } from './cut-sketch.ts';
import { outlineCorners } from './profile-dimensions.ts';

const HEADING = 3.5;
const HEADING_LINE = 5.2;
const WORDS = 2.5;
const UNDER_HEADING = 3;
const BETWEEN = 14;
const BESIDE = 20;

/**
 * What each cut takes, in running order, as the panel lies at the machine: its sizes, the face on the table, and the knife's
 * edge. They stand one under the other; on paper at least `across` mm wide as many beside each other as it has room for.
 */
export function drawCuts(report: Report, scale: number, room: Room | null, across = 0): Item[] {
  const drawings = [...report.section.cuts.keys()].map((index) => {
    const items = drawCut(report, index, scale, room);
    return { items, box: itemsBox(items)! };
  });
  const rows = countRows(
    drawings.map(({ box }) => box.x1 - box.x0),
    across,
  );
  // No row much shorter than the others.
  const inRow = Math.ceil(drawings.length / rows);
  const items: Item[] = [];
  let [x, top, foot] = [0, 0, 0];
  for (const [index, drawing] of drawings.entries()) {
    if (index > 0 && index % inRow === 0) [x, top] = [0, foot + BETWEEN];
    const { box } = drawing;
    items.push(group(`cut ${index + 1}`, moveItems(drawing.items, x - box.x0, top - box.y0)));
    x += box.x1 - box.x0 + BESIDE;
    foot = Math.max(foot, top + box.y1 - box.y0);
  }
  return items;
}

/** The fewest rows, as long as each other, that are no wider than `across`; one to a row where even two are wider. */
function countRows(widths: readonly number[], across: number): number {
  for (let rows = 1; rows < widths.length; rows++) {
    const inRow = Math.ceil(widths.length / rows);
    const widest = Math.max(
      ...widths.map((_, at) =>
        at % inRow === 0 ? widths.slice(at, at + inRow).reduce((sum, width) => sum + width + BESIDE, -BESIDE) : 0,
      ),
    );
    if (widest <= across) return rows;
  }
  return Math.max(1, widths.length);
}

/** How the machine is set for a cut: its deepest point above the table, and how far the knife stands out of the fence. */
function settingWords(report: Report, cut: CutReport): string {
  const { thickness } = report.panel;
  const { depth, reach } = cut;
  if (poseCut(cut, thickness, 1).against === 'fence') return sayView('set.on-edge', { depth, reach }, report);
  const height = cut.run === 'under' ? depth : thickness - depth;
  return sayView(cut.presented > 0.05 ? 'set.tilted' : 'set.flat', { height, reach }, report);
}

/** One cut: what it takes, under its name. */
export function drawCut(report: Report, index: number, scale: number, room: Room | null): Item[] {
  const drawing = layWithin(sketchCut(report, index, scale), room && { width: room.width, height: Infinity });
  const box = itemsBox(drawing)!;
  const heading = headingOf(report, index, box.x1 - box.x0);
  const low = itemsBox(heading)!.y1;
  return [...moveItems(heading, box.x0, box.y0 - low - UNDER_HEADING), ...drawing];
}

/** The cut's number and name, how it is run, and what it takes that its drawing keeps. */
function headingOf(report: Report, index: number, room: number): Item[] {
  const cut = report.section.cuts[index]!;
  const name = safeText(cut.name);
  const how = sayPose(cut, report);
  const lost = cut.takenFromDrawing;
  const posed = lost > 0.005 ? sayView('pose.lost', { how, area: spokenNumber(lost, 1, report) }, report) : how;
  const corners = cut.shape === 'outline' ? outlineCorners(readLoops(cut.drawn)) : { given: [], all: 0 };
  const some = { count: corners.given.length, all: corners.all };
  const title = wrapTitle(`${index + 1}  ${name}`, '', HEADING, Math.max(room, 60));
  const under = (title.length - 1) * HEADING_LINE;
  const told = some.count < some.all ? [sayView('outline.some', some, report)] : [];
  const lines = [posed, settingWords(report, cut), ...told].flatMap((line) =>
    wrapText(line, WORDS, Math.max(room, 80)),
  );
  return [
    ...title.map((line, i) => text(`name ${i}`, 'text', 0, i * HEADING_LINE, line, HEADING)),
    ...lines.map((line, i) => text(`how ${i}`, 'quiet', 0, under + 5.2 + i * 4.2, line, WORDS)),
  ];
}
