import type { Job } from '@fielded/core';
import { evaluate } from '@fielded/core';
import type { Item, Scene } from '@fielded/render';
import { scene, sheets, viewsOf } from '@fielded/render';
import { describe, expect, test } from 'vitest';
import { JOBS } from './jobs-to-draw.ts';
import { layoutFaults } from './layout-faults.ts';

/** The scene with every figure moved by (x, y). */
function withFiguresMoved(drawing: Scene, x: number, y: number): Scene {
  const move = (items: readonly Item[]): Item[] =>
    items.map((item) => {
      if (item.kind === 'group') return { ...item, items: move(item.items) };
      return item.kind === 'text' && item.key === 'figure' ? { ...item, x: item.x + x, y: item.y + y } : item;
    });
  return { ...drawing, items: move(drawing.items) };
}

describe('no text lies over another text, an arrow or an outline', () => {
  for (const [name, job] of Object.entries<Job>(JOBS)) {
    const report = evaluate(job);
    for (const view of viewsOf(report)) {
      test(`${view}: ${name}`, () => expect(layoutFaults(scene(report, { view }))).toEqual([]));
    }
    test(`sheet: ${name}`, () => {
      for (const sheet of sheets(report, { view: 'sheet', paper: 'a4' })) expect(layoutFaults(sheet)).toEqual([]);
    });
  }
});

describe('the checker finds', () => {
  const drawing = scene(evaluate(JOBS['ogee and cove']!), { view: 'joint' });
  const faultsAt = (x: number, y: number) => layoutFaults(withFiguresMoved(drawing, x, y)).join('\n');

  test('nothing where there is nothing', () => expect(faultsAt(0, 0)).toBe(''));
  test('texts over their arrows', () => expect(faultsAt(0, 3)).toMatch(/over arrow/));
  test('texts over outlines', () => expect(faultsAt(30, 25)).toMatch(/over line/));
  test('texts over texts', () => expect(faultsAt(8, 0)).toMatch(/“29” over .*“margin”/));
  test('texts off the paper', () => expect(faultsAt(-60, 0)).toMatch(/off the paper/));
});
