// Every figure that is drawn of a door can be typed over: what is typed is then what is drawn, whatever else the door is given by.
import { evaluate, type Report, readJobData } from '@fielded/core';
import { type Item, scene } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { type Data, setAt } from '../../packages/page/src/job/data.ts';
import { doorSize } from '../../packages/page/src/job/door-sizes.ts';
import { addDoorSizes, findSize } from '../../packages/page/src/job/sizes.ts';

addDoorSizes(doorSize);

const jobOf = (door: Data): Data => ({
  fielded: 1,
  panel: { thickness: 20 },
  frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2, endGap: 1 },
  cuts: [
    { name: 'raise', side: 'front', profile: { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5 } },
    { name: 'back', side: 'back', profile: { shape: 'cove', reach: 14, depth: 4.9, land: 9 }, run: 'over' },
  ],
  doors: [{ name: 'other', width: 400, height: 700, stile: 60, rail: 60 }, door],
});

function made(data: Data) {
  const { job, faults } = readJobData(data);
  if (job === null) throw new Error(faults.map(({ message }) => message).join('\n'));
  return { job, report: evaluate(job) };
}

function itemsOf(items: readonly Item[]): Item[] {
  return items.flatMap((item) => [item, ...(item.kind === 'group' ? itemsOf(item.items) : [])]);
}

type View = 'door' | 'panel';

/** What a view of the door shows, by the path each figure has. */
function figuresIn(view: View, report: Report): ReadonlyMap<string, number> {
  const figures = new Map<string, number>();
  for (const item of itemsOf(scene(report, { view, door: 1, scale: 0.1 }).items))
    if (item.kind === 'group' && item.of !== undefined && item.value !== undefined) figures.set(item.of, item.value);
  return figures;
}

/** What the door's elevation and its panel show, by the path each figure has, with the view that shows it last. */
function figuresOf(report: Report): ReadonlyMap<string, { readonly value: number; readonly view: View }> {
  return new Map(
    (['door', 'panel'] as const).flatMap((view) =>
      [...figuresIn(view, report)].map(([of, value]) => [of, { value, view }] as const),
    ),
  );
}

const PLAIN = { name: 'A', width: 520, height: 900, stile: 60, rail: 75 };
const DOORS: Readonly<Record<string, Data>> = {
  plain: PLAIN,
  'rails given apart, alike': { ...PLAIN, topRail: 70, bottomRail: 70 },
  'four panels': { ...PLAIN, across: 2, up: 2, muntin: 50, midRail: 80 },
  'rows, one of them the rest': { ...PLAIN, height: 1900, rows: [1000, 'rest'], muntin: 60 },
  'rows, two of them the rest': { ...PLAIN, height: 1900, rows: ['rest', 400, 'rest'], muntin: 60 },
  'columns and rows that leave no rest': { ...PLAIN, columns: [150, 190], rows: [400, 290], muntin: 60 },
  'columns alike that leave no rest': { ...PLAIN, columns: [170, 170], muntin: 60 },
  'hung inset': { name: 'A', opening: { width: 524, height: 904 }, stile: 60, rail: 75 },
  'two leaves hung overlay': {
    name: 'A',
    opening: { width: 900, height: 900 },
    hung: 'overlay',
    overlay: 12,
    leaves: 2,
    between: 4,
    stile: 60,
    rail: 75,
    rows: [300, 'rest'],
    muntin: 60,
  },
  'an arch': { ...PLAIN, topRail: 60, head: { shape: 'arch', rise: 60 } },
  'a cathedral': { ...PLAIN, head: { shape: 'cathedral', rise: 60, crown: 120, ears: 80 } },
};

describe.each(Object.entries(DOORS))('%s', (_, door) => {
  const data = jobOf(door);
  const { job, report } = made(data);
  const figures = figuresOf(report);

  it('has figures to type over', () => {
    expect(figures.size).toBeGreaterThan(5);
    expect([...figures.keys()]).toContain('doors[1].width');
  });

  it.each([...figures.keys()])('%s becomes what is typed', (of) => {
    const { value, view } = figures.get(of)!;
    const { size } = findSize(data, job, report, of);
    expect(size).not.toBeNull();
    const wanted = value + 3;
    const changed = size!
      .changes(wanted, (mm) => Math.round(mm * 1e6) / 1e6, wanted)
      .reduce<Data>((so, [path, value]) => setAt(so, path, value), data);
    expect(figuresIn(view, made(changed).report).get(of)).toBeCloseTo(wanted, 4);
  });
});
