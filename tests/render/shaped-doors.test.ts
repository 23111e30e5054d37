// What is drawn of shaped doors is what the report says.
import { readFileSync } from 'node:fs';
import { evaluate, readJob } from '@fielded/core';
import { doorSchedule, type Item, scene } from '@fielded/render';
import { describe, expect, it } from 'vitest';

const report = evaluate(
  readJob(readFileSync('examples/wardrobe/job.yaml', 'utf8'), {
    loadShop: () => readFileSync('examples/wardrobe/shop.yaml', 'utf8'),
  }).job!,
);

function itemsOf(items: readonly Item[]): Item[] {
  return items.flatMap((item) => [item, ...(item.kind === 'group' ? itemsOf(item.items) : [])]);
}

const drawn = (view: 'door' | 'panel', door: number) => itemsOf(scene(report, { view, door, scale: 0.1 }).items);
const radii = (items: readonly Item[], key: string) =>
  items.flatMap((item) =>
    item.kind === 'path' && item.key === key
      ? item.loops.flatMap(({ curves }) =>
          curves.filter(({ turn }) => turn !== 0).map(({ r }) => Math.round(r * 1e4) / 1e3),
        )
      : [],
  );

describe('a shaped door', () => {
  it('is drawn with the arcs of its sight edge, its panel and its field, to scale', () => {
    expect(radii(drawn('door', 1), 'sight')).toEqual([80, 120, 80]);
    // The first outline is the panel's front; its sections follow.
    expect(radii(drawn('panel', 1), 'outline').slice(0, 3)).toEqual([71, 129, 71]);
    expect(radii(drawn('panel', 1), 'field')).toEqual([109, 91, 109]);
    expect(radii(drawn('door', 0), 'sight')).toEqual([510]);
  });

  it('shows its radii and its rise', () => {
    const values = (view: 'door' | 'panel', door: number) =>
      Object.fromEntries(
        drawn(view, door).flatMap((item) => (item.kind === 'group' && item.of ? [[item.of, item.value]] : [])),
      );
    expect(values('door', 1)).toMatchObject({
      'doors[1].head.crown': 120,
      'doors[1].head.ears': 80,
      'doors[1].head.rise': 60,
    });
    expect(values('panel', 1)).toMatchObject({
      'doors[1].head.panelEdge.crown': 129,
      'doors[1].head.panelEdge.ears': 71,
    });
    expect(values('door', 0)['doors[0].head.radius']).toBeCloseTo(510, 9);
  });
});

describe('a schedule of doors', () => {
  it('holds 18 sizes on two sheets', () => {
    const doors = Array.from({ length: 18 }, (_, i) => ({ ...report.doors![0]!, name: `door ${i}` }));
    const sheets = doorSchedule({ ...report, doors });
    expect(sheets).toHaveLength(2);
    const names = sheets
      .flatMap(({ items }) => itemsOf(items))
      .flatMap((item) => (item.kind === 'text' && item.key === 'name' ? [item.text] : []));
    expect(names).toHaveLength(18);
    for (const { items, width, height } of sheets) {
      for (const item of itemsOf(items)) {
        if (item.kind !== 'text') continue;
        expect(item.x).toBeGreaterThan(0);
        expect(item.x).toBeLessThan(width);
        expect(item.y).toBeLessThan(height);
      }
    }
  });
});
