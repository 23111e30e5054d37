import type { DoorReport, Report } from '@fielded/core';
import type { Page } from '../paper.ts';
import { safeText } from '../text/safe-text.ts';
import { VIEWS } from '../views/views.ts';
import { saySheet } from '../words/english/sheet.ts';
import type { BlockSubject, SheetBlock } from './blocks.ts';
import { findBlock, fitBlock } from './blocks.ts';
import { type PageBlocks, packBlocks } from './pages.ts';

/** Between neighbours on a page, mm. */
const BETWEEN = 12;

/** Every door and every panel, each drawn once: doors of the same sizes share a drawing, and so do panels, of whatever door. */
export function doorSubjects(report: Report, views: readonly ('door' | 'panel')[]): BlockSubject[] {
  const { doors = [] } = report;
  return [
    ...(views.includes('door') ? groupAlike(doors.map(doorMade), (made) => nameDoors(report, made)) : []),
    ...(views.includes('panel') ? groupAlike(doors.flatMap(panelsMade), (made) => namePanel(report, made)) : []),
  ];
}

/** How many are made from one drawing, for which doors. */
interface Alike {
  readonly doors: string;
  readonly single: boolean;
  readonly count: number;
}

type Naming = Pick<BlockSubject, 'name' | 'title' | 'count'>;

function nameDoors(report: Report, { single, ...made }: Alike): Naming {
  const named = { ...made, job: safeText(report.title) };
  return {
    name: saySheet(single ? 'sheet.door' : 'sheet.doors', named, report),
    title: saySheet(single ? 'title.sheet.door' : 'title.sheet.doors', named, report),
    count: saySheet('sheet.count', named, report),
  };
}

function namePanel(report: Report, { single, ...made }: Alike): Naming {
  const named = { ...made, job: safeText(report.title) };
  return {
    name: saySheet('sheet.panel', {}, report),
    title: saySheet('title.sheet.panel', named, report),
    count: saySheet(single ? 'sheet.count.door' : 'sheet.count.doors', named, report),
  };
}

/** What is made of one drawing for one door. */
interface Made {
  readonly subject: Pick<BlockSubject, 'view' | 'index' | 'panel'>;
  readonly door: string;
  readonly count: number;
  /** The same for what is made from the same drawing. */
  readonly alike: string;
}

function doorMade(door: DoorReport, index: number): Made {
  const { name, quantity, leaves, width, height, stile, topRail, bottomRail, midRail, muntin, grain, openings, head } =
    door;
  const alike = JSON.stringify([width, height, stile, topRail, bottomRail, midRail, muntin, grain, openings, head]);
  return { subject: { view: 'door', index }, door: safeText(name), count: quantity * leaves, alike };
}

function panelsMade({ name, panels, head }: DoorReport, index: number): Made[] {
  return panels.map(({ width, height, grain, quantity, shaped }, panel) => ({
    subject: { view: 'panel', index, panel },
    door: safeText(name),
    count: quantity,
    alike: JSON.stringify([width, height, grain, shaped ? head : null]),
  }));
}

function groupAlike(all: readonly Made[], nameOf: (made: Alike) => Naming): BlockSubject[] {
  const groups = new Map<string, Made[]>();
  for (const made of all) groups.set(made.alike, [...(groups.get(made.alike) ?? []), made]);
  return [...groups.values()].map((group) => {
    const names = [...new Set(group.map(({ door }) => door))];
    const count = group.reduce((sum, made) => sum + made.count, 0);
    return { ...group[0]!.subject, ...nameOf({ doors: names.join(', '), single: names.length === 1, count }) };
  });
}

/** Shares of a page's width and height that a drawing may take, the largest first. */
const CELLS: readonly (readonly [number, number])[] = [
  [1, 1],
  [1, 2],
  [2, 1],
  [2, 2],
  [3, 2],
  [3, 3],
];

/** Of more drawings than this none is tried larger: it would take longer than it is worth. */
const MOST_GROWN = 12;

/** More drawings than this stand in the job's order, four on a page, and none is drawn before its page is asked for. */
export const MOST_PACKED = 120;
/** What dimensions and caption take beside a drawing, mm. */
const AROUND = 45;

/** Pages of many drawings, each drawn only when it is asked for. */
function cellPages(report: Report, subjects: readonly BlockSubject[], page: Page): PageBlocks[] {
  const quarter = { width: (page.width - BETWEEN) / 2, height: (page.height - BETWEEN) / 2 };
  // Where one is too large for a quarter at its least scale, each has a page to itself.
  const fit = subjects.every(
    ({ view, index }) => VIEWS[view].extent(report, index) * VIEWS[view].least + AROUND < quarter.width,
  );
  const [cell, count] = fit ? [quarter, 4] : [page, 1];
  return Array.from({ length: Math.ceil(subjects.length / count) }, (_, k) => () => {
    const here = subjects.slice(k * count, (k + 1) * count);
    return here.map((subject) => findBlock(report, subject, cell) ?? fitBlock(report, subject, cell));
  });
}

/**
 * Pages of doors and panels after those begun, drawn as large as lets about three stand on a page; then each is drawn larger
 * if that takes no further page. Of more than `MOST_PACKED`, four stand on each.
 */
export function doorPages(
  report: Report,
  subjects: readonly BlockSubject[],
  page: Page,
  begun: readonly SheetBlock[][] = [],
): PageBlocks[] {
  if (subjects.length > MOST_PACKED) return [...begun, ...cellPages(report, subjects, page)];
  const most = begun.length + Math.ceil(subjects.length / 3);
  const shares = CELLS.map(([across, down]) => ({
    width: (page.width - (across - 1) * BETWEEN) / across,
    height: (page.height - (down - 1) * BETWEEN) / down,
  }));
  const drawn = subjects.map(() => new Map<number, SheetBlock>());
  let blocks: SheetBlock[] = [];
  let pages: SheetBlock[][] = [];
  for (const share of shares) {
    blocks = subjects.map(
      (subject, i) => findBlock(report, subject, share, drawn[i]) ?? fitBlock(report, subject, page),
    );
    pages = packBlocks(blocks, page, begun);
    if (pages.length <= most) break;
  }
  if (subjects.length > MOST_GROWN) return pages;
  subjects.forEach((subject, i) => {
    const { scale } = blocks[i]!;
    for (const share of shares) {
      const block = findBlock(report, subject, share, drawn[i], scale);
      if (block === null) continue;
      const grown = blocks.with(i, block);
      const packed = packBlocks(grown, page, begun);
      if (packed.length > pages.length) continue;
      [blocks, pages] = [grown, packed];
      break;
    }
  });
  return pages;
}
