import { evaluate } from '@fielded/core';
import type { Item, Scene } from '@fielded/render';
import { scene } from '@fielded/render';
import { describe, expect, test } from 'vitest';
import { randomJob } from '../support/random-job.ts';
import { JOBS } from './jobs-to-draw.ts';
import { layoutFaults } from './layout-faults.ts';

const VIEWS = ['section', 'joint'] as const;

/** The scene with every text of the first dimension moved by (x, y). */
function withFirstTextMoved(drawing: Scene, x: number, y: number): Scene {
  const move = (items: readonly Item[]): Item[] =>
    items.map((item) => {
      if (item.kind === 'group') return { ...item, items: move(item.items) };
      return item.kind === 'text' && item.key === 'figure' ? { ...item, x: item.x + x, y: item.y + y } : item;
    });
  return { ...drawing, items: move(drawing.items) };
}

describe('no text lies over another text, an arrow or an outline', () => {
  for (const view of VIEWS) {
    for (const [name, job] of Object.entries(JOBS)) {
      test(`${view}: ${name}`, () => {
        expect(layoutFaults(scene(evaluate(job), { view }))).toEqual([]);
      });
    }

    test(`${view}: 300 random jobs`, () => {
      const faults: string[] = [];
      for (let seed = 1; seed <= 300; seed += 1) {
        for (const fault of layoutFaults(scene(evaluate(randomJob(seed)), { view }))) faults.push(`${seed}: ${fault}`);
      }
      expect(faults).toEqual([]);
    });
  }
});

describe('the checker finds', () => {
  const drawing = scene(evaluate(JOBS['ogee and cove']!), { view: 'joint' });
  const faultsAt = (x: number, y: number) => layoutFaults(withFirstTextMoved(drawing, x, y)).join('\n');

  test('texts over their arrows', () => expect(faultsAt(0, 3)).toMatch(/over arrow/));
  test('texts over outlines', () => expect(faultsAt(30, 25)).toMatch(/over line/));
  test('texts over texts', () => expect(faultsAt(8, 0)).toMatch(/“9” over .*“deep”|“38” over .*“reach”/));
  test('texts off the paper', () => expect(faultsAt(-60, 0)).toMatch(/off the paper/));
});
