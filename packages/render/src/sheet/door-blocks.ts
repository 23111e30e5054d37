import type { DoorReport, Report } from '@fielded/core';
import { safeText } from '../text/safe-text.ts';
import type { Block, Subject } from './blocks.ts';
import { findBlock, fitBlock } from './blocks.ts';
import { packBlocks } from './pages.ts';
import type { Page } from './paper.ts';

/** Between neighbours on a page, mm. */
const BETWEEN = 12;

/** Every door and every panel, each drawn once: doors of the same sizes share a drawing, and so do doors of the same panel. */
export function doorSubjects(report: Report, views: readonly ('door' | 'panel')[]): Subject[] {
  const doors = report.doors ?? [];
  return [
    ...(views.includes('door') ? groupDoors(doors, 'door', sizesOf, ({ quantity }) => quantity) : []),
    ...(views.includes('panel') ? groupDoors(doors, 'panel', ({ panel }) => panel, panelsOf) : []),
  ];
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

/** So many drawings are tried larger one by one: more would take longer than it is worth. */
const MOST_GROWN = 12;

/**
 * Pages of doors and panels after those begun, drawn as large as lets about three stand on a page; then each is drawn larger
 * if that takes no further page.
 */
export function doorPages(
  report: Report,
  subjects: readonly Subject[],
  page: Page,
  begun: readonly Block[][] = [],
): Block[][] {
  const most = begun.length + Math.ceil(subjects.length / 3);
  const shares = CELLS.map(([across, down]) => ({
    width: (page.width - (across - 1) * BETWEEN) / across,
    height: (page.height - (down - 1) * BETWEEN) / down,
  }));
  let blocks: Block[] = [];
  let pages: Block[][] = [];
  for (const share of shares) {
    blocks = subjects.map((subject) => findBlock(report, subject, share) ?? fitBlock(report, subject, page));
    pages = packBlocks(blocks, page, begun);
    if (pages.length <= most) break;
  }
  if (subjects.length > MOST_GROWN) return pages;
  subjects.forEach((subject, i) => {
    const larger = shares
      .map((share) => findBlock(report, subject, share))
      .filter((block) => block !== null && block.scale > blocks[i]!.scale);
    for (const block of larger) {
      const grown = blocks.with(i, block!);
      const packed = packBlocks(grown, page, begun);
      if (packed.length > pages.length) continue;
      [blocks, pages] = [grown, packed];
      break;
    }
  });
  return pages;
}

/** A door's sizes without what tells it from others of the same. */
function sizesOf({ name: _, quantity: __, ...sizes }: DoorReport): unknown {
  return sizes;
}

function panelsOf({ quantity, across, up }: DoorReport): number {
  return quantity * across * up;
}

function groupDoors(
  doors: readonly DoorReport[],
  view: 'door' | 'panel',
  keyOf: (door: DoorReport) => unknown,
  countOf: (door: DoorReport) => number,
): Subject[] {
  const groups = new Map<string, { index: number; names: string[]; count: number }>();
  doors.forEach((door, index) => {
    const key = JSON.stringify(keyOf(door));
    const known = groups.get(key) ?? { index, names: [], count: 0 };
    known.names.push(safeText(door.name));
    known.count += countOf(door);
    groups.set(key, known);
  });
  return [...groups.values()].map(({ index, names, count }) => {
    const which = `${names.length === 1 ? 'door' : 'doors'} ${names.join(', ')}`;
    return {
      view,
      index,
      name: view === 'door' ? `D${which.slice(1)}` : 'Panel',
      count: view === 'door' ? `${count} off` : `${count} off, of ${which}`,
    };
  });
}
