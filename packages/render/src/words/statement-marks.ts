import { type Report, type Stated, stateFit, stateRun } from '@fielded/core';
import { type Loop, polygon } from '@fielded/geometry';
import { ring } from '../geometry/circle.ts';
import { type Item, path, type Role, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';
import { cross } from './verdict-mark.ts';

const MARK = 3.4;
const BETWEEN = 5;

/**
 * The two statements, *fits* and *can be run*, side by side from (x, y) on their base line while there is room, else under
 * each other: each with a mark of its own shape, a tick, a cross or an open ring. `base` is the base line of the last.
 */
export function drawStatements(
  report: Report,
  x: number,
  y: number,
  height: number,
  room: number,
): { items: Item[]; base: number } {
  const items: Item[] = [];
  let left = x;
  let base = y;
  for (const [key, stated] of [
    ['fits', stateFit(report)],
    ['runs', stateRun(report)],
  ] as const) {
    const width = MARK + 1 + textWidth(stated.words, height);
    if (left > x && left + width > x + room) {
      left = x;
      base += height * 1.9;
    }
    const [line, words] = ROLES[stated.mark];
    items.push(
      path(`${key} mark`, line, markOf(stated.mark, left + MARK / 2, base - height / 2)),
      text(`${key} words`, words, left + MARK + 1, base, stated.words, height),
    );
    left += width + BETWEEN;
  }
  return { items, base };
}

const ROLES: Readonly<Record<Stated['mark'], readonly [Role, Role]>> = {
  yes: ['judged', 'judged-text'],
  no: ['trouble', 'trouble-text'],
  open: ['fine', 'text'],
};

function markOf(mark: Stated['mark'], x: number, y: number): Loop[] {
  if (mark === 'no') return cross(x, y, 1.1);
  if (mark === 'open') return [ring(x, y, 1.1)];
  return [
    polygon(
      [
        [x - 1.3, y + 0.1],
        [x - 0.4, y + 1.1],
        [x + 1.3, y - 1.1],
      ],
      false,
    ),
  ];
}
