import type { Job, Report } from '@fielded/core';
import { evaluate } from '@fielded/core';
import type { GroupItem, Item, PathItem, Scene, TextItem } from '@fielded/render';
import { sceneToSvg, seasonScene, spreadScene } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { cut, plainJob, profile, wedgeJob } from '../core/joints-to-spread.ts';
import { FEW } from '../support/few-joints.ts';
import { layoutFaults } from './layout-faults.ts';

const spread = { thickness: 0.15, height: 0.1, fence: 0.2, grooveWidth: 0.1, film: 0.02 };
const season = { made: 8, driest: 6, dampest: 11, pinned: true };
const flat = (depth: number, other: Partial<Job> = {}) =>
  plainJob({
    cuts: [
      cut('raise', 'front', profile('ogee', 38, 9, 11, 1.5)),
      cut('back relief', 'back', profile('cove', 14, depth, 9)),
    ],
    spread,
    season,
    ...other,
  });

const CHARTS: Readonly<Record<string, Job>> = {
  'sliding, panel turned over': plainJob({ spread, season }),
  'tight, face down for each cut': flat(4.6),
  'in inches': flat(4.7, { units: 'in' }),
  'a wedge': wedgeJob({ spread, season }),
  'a bold spread': flat(4.8, { spread: { ...spread, thickness: 1, height: 0.4 } }),
  'hardly any spread': flat(4.8, { spread: { thickness: 0.01, height: 0, fence: 0, grooveWidth: 0, film: 0 } }),
  'bottoms out': flat(4.9, { season: { ...season, dampest: 14, pinned: false } }),
  'leaves the groove': flat(4.9, { season: { made: 14, driest: 4, dampest: 15, pinned: false } }),
  'made wet': flat(4.9, { season: { made: 12, driest: 6, dampest: 11, pinned: true } }),
  'one long name': flat(4.8, {
    title: 'Doors for the long cupboard under the stairs, the tall one beside it and two spares',
    cuts: [
      cut('the first of the raises along the field', 'front', profile('ogee', 38, 9, 11, 1.5)),
      cut('relief of the back that sizes the tongue', 'back', profile('cove', 14, 4.8, 9)),
    ],
  }),
};

const svgOf = (scene: Scene) => sceneToSvg(scene, { theme: 'print' });

const inGroup = (items: readonly Item[], ...keys: string[]): Item =>
  keys.reduce<{ items: readonly Item[] }>(
    (group, key) => {
      const found = group.items.find((item) => item.key === key);
      if (found === undefined) throw new Error(`no ${key}`);
      return found as GroupItem;
    },
    { items },
  ) as unknown as Item;

/** What a place on an axis stands for, read off two of its figures as a reader would. */
function readAxis(axis: GroupItem, along: 'x' | 'y'): (place: number) => number {
  const figures = axis.items.filter((item): item is TextItem => item.kind === 'text' && item.key.startsWith('figure'));
  const [a, b] = [figures[0]!, figures[figures.length - 1]!];
  const value = (item: TextItem) => Number(item.text.replace('−', '-'));
  return (place) => value(a) + ((place - a[along]) / (b[along] - a[along])) * (value(b) - value(a));
}

const ends = (item: Item): [number, number] => {
  const [{ curves }] = (item as PathItem).loops as [PathItem['loops'][number]];
  return [curves[0]!.x0, curves[curves.length - 1]!.x1];
};

describe.each(Object.entries(CHARTS))('%s', (_, job) => {
  const report = evaluate(job, FEW);

  it('has nothing lying over anything else', () => {
    expect(layoutFaults(spreadScene(report))).toEqual([]);
    expect(layoutFaults(seasonScene(report))).toEqual([]);
  });

  it('draws the worst case and the root of squares where the report has them', () => {
    const { items } = spreadScene(report);
    const chart = inGroup(items, 'simulated') as GroupItem;
    const at = readAxis(inGroup(chart.items, 'axis below') as GroupItem, 'x');
    const unit = report.units === 'mm' ? 1 : 25.4;
    const { worst, rss } = report.spread!.clearance;
    for (const [words, range] of [
      ['at the very worst', worst],
      ['root of squares', rss],
    ] as const) {
      const drawn = ends(inGroup(chart.items, words, 'span')).map((x) => at(x) * unit);
      expect(drawn[0]).toBeCloseTo(range[0], 6);
      expect(drawn[1]).toBeCloseTo(range[1], 6);
    }
  });

  it('has a bar for each step of the simulation, as tall as its joints are many', () => {
    const { items } = spreadScene(report);
    const chart = inGroup(items, 'simulated') as GroupItem;
    const { counts } = report.spread!.clearance.simulated.histogram;
    const tallest = Math.max(...counts);
    const heights = counts.flatMap((count, i) => {
      if (count === 0) return [];
      const [{ curves }] = (inGroup(chart.items, `bar ${i}`) as PathItem).loops as [PathItem['loops'][number]];
      return [[count / tallest, Math.abs(curves[1]!.y1 - curves[1]!.y0)] as const];
    });
    const full = Math.max(...heights.map(([, height]) => height));
    for (const [share, height] of heights) expect(height / full).toBeCloseTo(share, 9);
  });

  it('draws the insertion at the place of each moisture', () => {
    const { items } = seasonScene(report);
    const chart = inGroup(items, 'insertion') as GroupItem;
    const unit = report.units === 'mm' ? 1 : 25.4;
    const atX = readAxis(inGroup(chart.items, 'axis below') as GroupItem, 'x');
    const atY = readAxis(inGroup(chart.items, 'axis left') as GroupItem, 'y');
    // Figures stand half a capital under their tick.
    const half = 2.5 / 2;
    const { curves } = (inGroup(chart.items, 'edge') as PathItem).loops[0]!;
    const drawn = [{ x: curves[0]!.x0, y: curves[0]!.y0 }, ...curves.map(({ x1, y1 }) => ({ x: x1, y: y1 }))];
    const states = [report.season!.driest, report.season!.made, report.season!.dampest].sort(
      (a, b) => a.moisture - b.moisture,
    );
    states.forEach(({ moisture, insertion }, i) => {
      expect(atX(drawn[i]!.x)).toBeCloseTo(moisture, 6);
      expect(atY(drawn[i]!.y + half) * unit).toBeCloseTo(insertion, 6);
    });
  });
});

it('is a file that stays the same', async () => {
  const report = evaluate(CHARTS['tight, face down for each cut']!);
  await expect(svgOf(spreadScene(report))).toMatchFileSnapshot('../snapshots/tight-face-down-spread.svg');
  await expect(svgOf(seasonScene(report))).toMatchFileSnapshot('../snapshots/tight-face-down-season.svg');
});

it('needs a spread, and seasons', () => {
  const bare: Report = evaluate(plainJob());
  expect(() => spreadScene(bare)).toThrow(new RangeError('this report has no spread to draw'));
  expect(() => seasonScene(bare)).toThrow(new RangeError('this report has no seasons to draw'));
});

it('would tell words that lie over each other', () => {
  const scene: Scene = spreadScene(evaluate(CHARTS['a wedge']!));
  const [first] = scene.items as [GroupItem];
  const doubled = { ...scene, items: [...scene.items, { ...first, key: 'again' }] };
  expect(layoutFaults(doubled).length).toBeGreaterThan(5);
});
