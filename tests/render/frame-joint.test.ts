// The joint of stile and rail, and the back's arris: what the drawings say is what the report says, and the wood closes.
import { readFileSync } from 'node:fs';
import { evaluateJoint, type Job, type Report, readJob } from '@fielded/core';
import { type Item, type PathItem, scene, sheets, viewsOf } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { arcAngle, pointAlong } from '../../packages/geometry/src/curve/along.ts';

const read = (name: string) => readFileSync(new URL(`../../examples/coped-frame/${name}`, import.meta.url), 'utf8');
const job = readJob(read('job.yaml'), { loadShop: () => read('shop.yaml') }).job!;
const report = evaluateJoint(job);

function flatten(items: readonly Item[], within = ''): { item: Item; key: string }[] {
  return items.flatMap((item) => {
    const key = `${within}/${item.key}`;
    return item.kind === 'group' ? [{ item, key }, ...flatten(item.items, key)] : [{ item, key }];
  });
}

const dimensionsOf = (given: Report, view: 'corner' | 'joint' | 'section' | 'detail') =>
  flatten(scene(given, { view }).items).flatMap(({ item }) =>
    item.kind === 'group' && item.of !== undefined ? [{ of: item.of, value: item.value }] : [],
  );

/** Where loops cross a level, paper mm, in order. */
function crossings(loops: PathItem['loops'], y: number): number[] {
  const found: number[] = [];
  for (const { curves } of loops)
    for (const c of curves) {
      const points = Array.from({ length: 201 }, (_, i) => pointAlong(c, i / 200, arcAngle(c)));
      points.slice(1).forEach((to, i) => {
        const from = points[i]!;
        if (from.y > y !== to.y > y) found.push(from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y));
      });
    }
  return found.sort((one, other) => one - other);
}

describe('the joint of stile and rail', () => {
  const items = flatten(scene(report, { view: 'corner', scale: 2 }).items);
  const woodOf = (part: string) =>
    items.find(({ key, item }) => key.endsWith(`/${part}/wood`) && item.kind === 'path')!.item as PathItem;
  const [stile, rail] = [woodOf('stile'), woodOf('rail')];
  const top = Math.min(...stile.loops.flatMap(({ curves }) => curves.map(({ y0 }) => y0)));

  it('closes: at every level the rail begins where the stile ends, down to the groove and behind it', () => {
    for (const depth of [0.3, 0.7, 1, 2, 3, 4, 5, 5.4, 6, 7.4, 14.2, 18, 21.9]) {
      const y = top + 2 * depth;
      const ends = crossings(stile.loops, y).at(-1)!;
      const begins = crossings(rail.loops, y)[0]!;
      expect(Math.abs(begins - ends), `${depth} below the face`).toBeLessThan(0.02);
    }
  });

  it('has the tenon in the groove, as long as the joint says', () => {
    const y = top + 2 * (7.5 + 3.2);
    const [begins, ends] = [crossings(rail.loops, y)[0]!, crossings(stile.loops, y).at(-1)!];
    // The groove's bottom is 11 in; so is the tenon's tip.
    expect(Math.abs(begins - ends)).toBeLessThan(0.02);
  });

  it('is dimensioned with the report’s own figures, each once', () => {
    const shown = dimensionsOf(report, 'corner');
    const figures = Object.fromEntries(shown.map(({ of, value }) => [of, value]));
    expect(figures).toMatchObject({
      'frame.groove.setback': 7.5,
      'frame.groove.width': 6.4,
      'frame.groove.depth': 11,
      'frame.thickness': 22,
      'frame.cope.tenon.length': 11,
      'frame.cope.sticking.reach': 7,
      'frame.cope.sticking.depth': 5.5,
    });
    expect(new Set(shown.map(({ of }) => of)).size).toBe(shown.length);
  });

  it('shows the panel’s tongue behind the rail, dashed', () => {
    expect(
      items.some(({ item, key }) => key.endsWith('panel behind') && item.kind === 'path' && item.role === 'hidden'),
    ).toBe(true);
  });

  it('is offered where the rails are coped, and stands on the sheets', () => {
    const without = (changes: Partial<Job['frame']>) => evaluateJoint({ ...job, frame: { ...job.frame, ...changes } });
    expect(viewsOf(report)).toContain('corner');
    expect(viewsOf(without({ joint: { kind: 'mitre', length: 11 } }))).not.toContain('corner');
    const named = sheets(report, { view: 'sheet', paper: 'a4' }).map(({ title }) => title);
    expect(named.join()).toContain('Stile and rail');
    expect(() => scene(without({ joint: { kind: 'mitre', length: 11 } }), { view: 'corner' })).toThrow(RangeError);
  });
});

describe('the profile on the back’s inside arris', () => {
  it('is drawn on the frame and dimensioned once, in the joint', () => {
    const of = (view: 'joint' | 'section' | 'detail' | 'corner') =>
      dimensionsOf(report, view).filter((each) => each.of.startsWith('frame.backEdge'));
    expect(of('joint').sort((one, other) => one.value! - other.value!)).toEqual([
      { of: 'frame.backEdge.depth', value: 4 },
      { of: 'frame.backEdge.reach', value: 5 },
    ]);
    expect([...of('section'), ...of('detail'), ...of('corner')]).toEqual([]);
  });

  it('takes the back’s arris off the drawn wood', () => {
    const wood = flatten(scene(report, { view: 'joint', scale: 2 }).items).find(({ key }) =>
      key.endsWith('/frame/wood'),
    )!.item as PathItem;
    const ys = wood.loops.flatMap(({ curves }) => curves.map(({ y0 }) => y0));
    const back = Math.max(...ys);
    const rightAt = (above: number) => crossings(wood.loops, back - 2 * above).at(-1)!;
    // A cove of 5 by 4: at the back's face the wood ends 5 short of the sight edge, 4 up it is whole.
    expect(rightAt(4.2) - rightAt(0.001)).toBeCloseTo(10, 1);
  });
});
