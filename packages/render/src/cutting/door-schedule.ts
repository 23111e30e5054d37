import type { DoorReport, Report } from '@fielded/core';
import { drawElevation } from '../client/elevation.ts';
import { PAPERS, type PaperName } from '../paper.ts';
import { group, type Item, itemsBox, moveItems, type Scene, text } from '../scene.ts';
import { breakLines, fitText, heightToFit } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { drawGrainArrow } from '../views/grain.ts';
import { sayList } from '../words/english/list.ts';
import { type InVoice, scaleText, spokenLength } from '../words/lengths.ts';

/** The most doors that are drawn: nobody looks through more. */
const MOST_DOORS = 120;

/** Doors on a sheet: three beside each other, three rows. */
const ACROSS = 3;
const DOWN = 3;
const SIDE = 15;
const TOP = 24;
const FOOT = 14;
const GAP = 6;
/** Heights of capitals, mm. */
const NAME = 2.6;
const LINE = 2;
const LINE_STEP = 4;
const CAPTION = 23;
/** The most lines for the panels' sizes: what does not fit stands in the tables. */
const PANEL_LINES = 3;
const SCALES = [5, 10, 15, 20, 25, 30, 40, 50, 75, 100, 200];

/**
 * All doors of a job from the front, nine to a sheet, at one scale so that their sizes compare: name and quantity, door, opening
 * and panel sizes under each.
 */
export function doorSchedule(report: Report, paper: PaperName = 'a4'): Scene[] {
  const all = report.doors ?? [];
  if (all.length === 0) return [];
  const doors = all.slice(0, MOST_DOORS);
  const { width, height } = PAPERS[paper];
  const cell = {
    width: (width - 2 * SIDE - (ACROSS - 1) * GAP) / ACROSS,
    height: (height - TOP - FOOT - (DOWN - 1) * GAP) / DOWN,
  };
  const parts = SCALES.find((n) =>
    doors.every((door) => door.width / n <= cell.width && door.height / n <= cell.height - CAPTION),
  );
  const scale = 1 / (parts ?? SCALES.at(-1)!);
  const each = ACROSS * DOWN;
  const sheets = Math.ceil(doors.length / each);
  return Array.from({ length: sheets }, (_, sheet) => {
    const shown = doors.slice(sheet * each, (sheet + 1) * each);
    const items = shown.flatMap((door, i) => {
      const x = SIDE + (i % ACROSS) * (cell.width + GAP);
      const y = TOP + Math.floor(i / ACROSS) * (cell.height + GAP);
      return [group(`door ${i}`, drawDoor(report, door, sheet * each + i, scale, x, y, cell))];
    });
    const named = { job: safeText(report.title), shown: doors.length, all: all.length };
    const title = sayList(all.length > doors.length ? 'schedule.title.some' : 'schedule.title', named, report);
    return {
      width,
      height,
      scale: 1,
      title,
      description: sayList('schedule.sheet', { title, sheet: sheet + 1, of: sheets }, report),
      items: [
        text('title', 'text', SIDE, 15, fitText(title, 3.5, width - 2 * SIDE - 40), 3.5),
        text('scale', 'quiet', width - SIDE, 15, `${scaleText(scale, report)}   ${report.units}`, LINE, 'end'),
        ...(sheet === 0 ? troubleLine(report, width - 2 * SIDE) : []),
        ...items,
        text('page', 'quiet', width - SIDE, height - 8, `${sheet + 1} / ${sheets}`, LINE, 'end'),
      ],
    };
  });
}

/** The first error of the job and the number of the others, under the title of the first sheet. */
function troubleLine(report: Report, room: number): Item[] {
  const [first, ...more] = report.problems.filter(({ severity }) => severity === 'error');
  if (first === undefined) return [];
  const figures = { message: first.message, count: more.length };
  const key = more.length > 0 ? 'schedule.trouble.more' : 'schedule.trouble';
  const words = safeText(sayList(key, figures, report));
  const size = heightToFit(words, LINE, LINE * 0.7, room);
  return [text('trouble', 'trouble-text', SIDE, 20.5, fitText(words, size, room), size)];
}

function drawDoor(
  report: Report,
  door: DoorReport,
  index: number,
  scale: number,
  x: number,
  y: number,
  cell: { readonly width: number; readonly height: number },
): Item[] {
  const arrows = door.openings.flatMap(({ x: left, y: top, width, height }, i) =>
    drawGrainArrow(
      `grain ${i}`,
      { x0: left * scale, y0: top * scale, x1: (left + width) * scale, y1: (top + height) * scale },
      door.grain === 'up',
    ),
  );
  const drawing = [...drawElevation(report, scale, index), ...arrows];
  const box = itemsBox(drawing)!;
  const room = cell.height - CAPTION;
  // Doors stand on one line, in the middle of their cell.
  const left = x + (cell.width - (box.x1 - box.x0)) / 2 - box.x0;
  const top = y + room - (box.y1 - box.y0) - box.y0;
  const lines = describeDoor(door, report);
  // A number that is cut short is worse than a small one.
  const size = heightToFit(lines[0]!, NAME, LINE * 0.8, cell.width);
  const named = [fitText(lines[0]!, size, cell.width), size] as const;
  return [
    group('elevation', moveItems(drawing, left, top)),
    text('name', 'text', x, y + room + 5, ...named),
    ...lines
      .slice(1)
      .flatMap((words) => sizeLines(words, cell.width, report))
      .map((line, i) => text(`line ${i}`, 'quiet', x, y + room + 5 + (i + 1) * LINE_STEP, line, LINE)),
  ];
}

/** Sizes on as many lines as they take, none of them cut short; those that fit no line are left to the tables. */
function sizeLines(words: string, room: number, voice: InVoice): string[] {
  const lines = breakLines(words, LINE, room);
  if (lines.length <= PANEL_LINES) return lines;
  return [...lines.slice(0, PANEL_LINES - 1), sayList('schedule.more', {}, voice)];
}

/** Name and quantity, the door's size, its panels with how many each door has. */
function describeDoor(door: DoorReport, voice: InVoice): string[] {
  const { units } = voice;
  const size = (of: { readonly width: number; readonly height: number }) =>
    `${spokenLength(of.width, voice, 1).replace(` ${units}`, '')} × ${spokenLength(of.height, voice, 1)}`;
  const { quantity: doors, leaves } = door;
  const made = doors * leaves;
  const panels = door.panels.map((panel) => {
    const count = panel.quantity / made;
    const words = `${count > 1 ? `${count} × ` : ''}${size(panel)}`;
    // Millimetres are short enough for a size to stay on one line.
    return units === 'mm' ? words.replaceAll(' ', '\u00a0') : words;
  });
  const name = { made, doors, leaves, door: safeText(door.name) };
  return [
    sayList(leaves > 1 ? 'schedule.made.leaves' : 'schedule.made', name, voice),
    sayList('schedule.door', { size: size(door) }, voice),
    sayList(door.grain === 'across' ? 'schedule.panel.across' : 'schedule.panel', { sizes: panels.join(', ') }, voice),
  ];
}
