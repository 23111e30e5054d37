// Laws of drawings to scale: a line stands where the report's figure puts it, and no others are drawn.
import type { SetUp } from '@fielded/core';
import { type Curve, type Loop, line, loopsBox } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { drawBoardBlank } from '../../packages/render/src/cutting/pictures.ts';
import { drawBigFigures } from '../../packages/render/src/plan/big-figures.ts';
import { drawFenceSection, drawSpacer, drawTableSection } from '../../packages/render/src/plan/machine-in-section.ts';
import { drawPlanView } from '../../packages/render/src/plan/plan-picture.ts';
import { standingTool } from '../../packages/render/src/plan/standing-tool.ts';
import type { Item, PathItem, TextItem } from '../../packages/render/src/scene.ts';
import { makeAxis, makeTightAxis } from '../../packages/render/src/views/chart.ts';
import { drawVerdictBands } from '../../packages/render/src/views/verdict-bands.ts';
import { planned, shopJob } from '../support/plans.ts';
import { Random } from '../support/random.ts';

const VOICE = { units: 'mm' } as const;
const SCALE = 0.8;
const TABLE = 100;

const setUps: readonly SetUp[] = [
  shopJob(),
  shopJob({ run: 'over', reversing: true }),
  // Nobody says how deep the knives sit: where the heads stand is assumed.
  shopJob({ ogee: 'measured: wood', cove: 'measured: wood' }),
  shopJob({
    cuts: '[{ name: raise, side: front, knife: ogee, presented: on-edge }, { name: slope, side: back, knife: cove, presented: 12 }]',
    machines: '{ m: { speeds: [6000], seat: [-90, 90], opening: 220, nutDiameter: 40, tilt: [0, 45], spindle: 31 } }',
  }),
].flatMap((job) => planned(job).plan.setups);

const loopsOf = (items: readonly Item[], key: string): readonly Loop[] =>
  items.flatMap((item) => (item.kind === 'path' && item.key === key ? (item as PathItem).loops : []));
const wordsOf = (items: readonly Item[]) =>
  items.flatMap((item) => (item.kind === 'text' ? [(item as TextItem).text.replaceAll('\u00a0', ' ')] : []));
const pointsOf = (loops: readonly { readonly curves: readonly Curve[] }[]) =>
  loops.flatMap(({ curves }) => curves.flatMap(({ x0, y0, x1, y1 }) => [[x0, y0] as const, [x1, y1] as const]));
const boxOf = (points: readonly (readonly [number, number])[]) => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
};
const near = (figures: readonly number[]) => figures.map((figure) => expect.closeTo(figure, 9));

describe.each(setUps.map((setUp, k) => [`${k}: ${setUp.cut}`, setUp] as const))('set-up %s', (_, setUp) => {
  const { tool, fence, run, presented } = setUp;
  const tilt = presented === 90 ? 0 : ((presented * Math.PI) / 180) * (run === 'under' ? 1 : -1);
  /** Heights along the spindle and distances from its axis, mm of wood: the paper turned back about where the axis meets the table. */
  const inWood = (points: readonly (readonly [number, number])[]) =>
    points.map(([x, y]) => {
      const [right, up] = [x / SCALE + fence.toAxis, (TABLE - y) / SCALE];
      // Under the stock a tilted spindle leans away from it: to the left as it goes up.
      return [up * Math.cos(tilt) - right * Math.sin(tilt), right * Math.cos(tilt) + up * Math.sin(tilt)] as const;
    });
  const swept = [line(2, TABLE - 1, 7, TABLE - 6)];
  const from = presented === 90 || run === 'under' ? setUp.cuttingPoint - tool.height : setUp.cuttingPoint;
  const seat = setUp.seat ?? from;

  it.each(['alone', 'lower', 'upper'] as const)(
    'has its head, nut and spindle at their heights and widths: %s',
    (stands) => {
      const { items, knives, opening } = standingTool(setUp, swept, TABLE, SCALE, VOICE, stands);
      const box = (key: string) => boxOf(inWood(pointsOf(loopsOf(items, key))));
      expect(box('head')).toEqual(near([seat, seat + tool.height, -tool.bodyDiameter / 2, tool.bodyDiameter / 2]));
      const thick = tool.spindle ?? 30;
      if (stands === 'upper') expect(loopsOf(items, 'spindle')).toEqual([]);
      else {
        const [foot, top, ...sides] = box('spindle');
        expect([foot! < Math.min(seat, 0), top, ...sides]).toEqual([true, ...near([seat, -thick / 2, thick / 2])]);
      }
      const nut = loopsOf(items, 'nut');
      expect(nut).toHaveLength(stands === 'lower' ? 0 : 1);
      if (stands !== 'lower') {
        const [foot, top, ...sides] = box('nut');
        expect([foot, top! > foot!, ...sides]).toEqual([
          expect.closeTo(seat + tool.height, 9),
          true,
          ...near([-tool.nutDiameter / 2, tool.nutDiameter / 2]),
        ]);
      }
      // The knives reach from the head's body out to the cut's edge, square to the axis.
      const [foot, out] = [knives[0]!.curves[0]!, knives[0]!.curves[2]!];
      const along = (x: number, y: number) => inWood([[x, y]])[0]!;
      expect([foot.x1, foot.y1, out.x0, out.y0]).toEqual([2, TABLE - 1, 7, TABLE - 6]);
      expect(along(foot.x0, foot.y0)).toEqual(near([along(2, TABLE - 1)[0], tool.bodyDiameter / 2]));
      expect(along(out.x1, out.y1)).toEqual(near([along(7, TABLE - 6)[0], tool.bodyDiameter / 2]));
      // The table is open about the axis as far as the ring is, or what goes through needs.
      const ring = setUp.hole?.ring ?? setUp.hole?.needed;
      const half = ring === undefined ? (thick / 2) * SCALE + 3 : (ring * SCALE) / 2;
      expect([opening.left, opening.right]).toEqual(near([-fence.toAxis * SCALE - half, -fence.toAxis * SCALE + half]));
    },
  );

  it('has its table beside the hole, below its level, and its bar where wood stands', () => {
    const tool = standingTool(setUp, swept, TABLE, SCALE, VOICE);
    const [x0, x1] = [tool.opening.left - 30, tool.opening.right + 20];
    const halves = loopsOf(drawTableSection(setUp, tool, TABLE, x0, x1, VOICE), 'table');
    expect(halves.map((half) => boxOf(pointsOf([half])))).toEqual([
      near([x0 - 2, tool.opening.left, TABLE, TABLE + 5]),
      near([tool.opening.right, x1, TABLE, TABLE + 5]),
    ]);
    // No half is drawn that would be next to nothing.
    const narrow = drawTableSection(setUp, tool, TABLE, tool.opening.left + 1.5, tool.opening.right + 0.5, VOICE);
    expect(loopsOf(narrow, 'table')).toHaveLength(0);
    const bar = loopsOf(drawFenceSection(setUp, TABLE, SCALE, 20, VOICE), 'bar');
    const { from, to } = fence.bar ?? { from: null, to: null };
    expect(bar.map((each) => boxOf(pointsOf([each])).slice(2))).toEqual(
      from === null ? [] : [near([to === null ? 18 : TABLE - to * SCALE, TABLE - from * SCALE])],
    );
  });
});

it.each(setUps.map((setUp, k) => [`${k}: ${setUp.cut}`, setUp] as const))(
  'seen from above, %s: circles about the axis, and a fence of two like halves that leave its gap',
  (_, setUp) => {
    const { items, scale } = drawPlanView(setUp, VOICE, { width: 150, height: 150 } as never);
    const { tool, fence } = setUp;
    for (const [key, diameter] of [
      ['circle', tool.cuttingDiameter],
      ['body', tool.bodyDiameter],
      ['nut', tool.nutDiameter],
    ] as const) {
      const { x0, x1, y0, y1 } = loopsBox(loopsOf(items, key))!;
      const half = (diameter * scale) / 2;
      expect([x0, x1, y0, y1]).toEqual(near([-half, half, -half, half]));
    }
    const [left, right] = loopsOf(items, 'fence').map((half) => pointsOf([half]));
    expect(left!.map(([x, y]) => [-x, y])).toEqual(right!.map(([x, y]) => [x, y]));
    // Faces on the fence's line, the rest behind it: towards the axis, which is the origin.
    const [from, , top, bottom] = boxOf(right!) as [number, number, number, number];
    expect([from, bottom]).toEqual(near([(fence.gap * scale) / 2, fence.toAxis * scale]));
    expect(bottom - top).toBeCloseTo(4, 9);
    const [x0, x1, y0] = boxOf(pointsOf(loopsOf(items, 'stock'))) as [number, number, number];
    expect([x0 + x1, y0]).toEqual(near([0, fence.toAxis * scale]));
  },
);

it('a spacer fills what two heads leave between them, as wide as the nut', () => {
  const [lower, other] = [setUps[0]!, setUps[1]!];
  const upper = { ...other, seat: 44 };
  const [spacer] = drawSpacer({ setUp: lower, upper, spacer: 3.5 } as never, TABLE, SCALE);
  const axis = -lower.fence.toAxis * SCALE;
  const half = (lower.tool.nutDiameter * SCALE) / 2;
  expect(boxOf(pointsOf(loopsOf([spacer!], 'spacer')))).toEqual(
    near([axis - half, axis + half, TABLE - 44 * SCALE, TABLE - 40.5 * SCALE]),
  );
});

it.each([
  [{ needed: 84, available: null, outside: null }, ['Bearing wanted', '84', "on the panel's own edge"]],
  [{ needed: 84, available: 84, outside: 0 }, ['Bearing', '84', "on the panel's own edge"]],
  [{ needed: 84, available: 90, outside: 3 }, ['Bearing', '90', 'template 3 outside the edge']],
  [{ needed: 84, available: 80, outside: -2 }, ['Bearing', '80', 'template 2 inside the edge']],
] as const)('the bearing of a curve is the one there is, else the one needed: %j', (bearing, words) => {
  const setUp = { ...setUps[0]!, curve: { alone: true, guide: { bearing } } } as unknown as SetUp;
  const said = wordsOf(drawBigFigures({ setUp } as never, VOICE, 0, 0, 300));
  const at = said.findIndex((word) => word.startsWith('Bearing'));
  expect(said.slice(at, at + 3)).toEqual(words);
});

it('a blank is ripped where its list says, and each panel is named between its rips', () => {
  const blank = {
    length: 700,
    width: 300,
    panels: [80, 100, 110].map((width, k) => ({ door: `D${k}`, width })),
    rips: [82, 187],
  };
  const { items } = drawBoardBlank(blank as never, VOICE, 0.2);
  const [left, right, top] = boxOf(pointsOf(loopsOf(items, 'outline'))) as [number, number, number];
  expect(right - left).toBeCloseTo(140, 9);
  const rips = loopsOf(items, 'rips').map((rip) => boxOf(pointsOf([rip])));
  expect(rips).toEqual([16.4, 37.4].map((at) => near([left, right, top + at, top + at])));
  const named = items.flatMap((item) => (item.kind === 'text' ? [item] : []));
  const edges = [0, 16.4, 37.4, 60];
  for (const [k, item] of named.filter(({ text }) => /^D\d/.test(text)).entries()) {
    expect(item.text).toContain(`D${k}`);
    expect(item.x - left).toBeCloseTo(70, 9);
    expect(item.y - top - item.height / 2).toBeCloseTo((edges[k]! + edges[k + 1]!) / 2, 9);
  }
});

describe('the axis of a chart', () => {
  it('says its ticks in as few digits as tell what they are', () => {
    const random = new Random(77);
    for (let i = 0; i < 60; i++) {
      const from = random.between(-3, 3);
      const values = [from, from + 10 ** random.between(-3, 2)];
      for (const make of [makeAxis, makeTightAxis]) {
        const { ticks, say } = make(values, 0, 100, 6);
        const said = ticks.map((tick) => say(tick, VOICE).replace('−', '-'));
        expect(said.map(Number)).toEqual(near(ticks));
        const digits = Math.max(...said.map((words) => words.split('.')[1]?.length ?? 0));
        // One digit less would be wrong of one of them.
        if (digits > 0)
          expect(ticks.some((tick) => Math.abs(Number(tick.toFixed(digits - 1)) - tick) > 1e-9)).toBe(true);
      }
    }
  });

  it.each([true, false])('has a line at each limit that lies inside it, and at no other, upright %s', (upright) => {
    for (const values of [
      [-0.3, 0.7],
      [0.1, 0.3],
      [0.1, 0.7],
      [-0.3, -0.1],
      [0.01, 0.04],
    ]) {
      const axis = makeTightAxis(values, 0, 100, 6);
      const { items } = drawVerdictBands(axis, { snug: 0.05, loose: 0.5 }, VOICE, [0, 40], upright) as {
        items: Item[];
      } & Item;
      const [least, most] = values as [number, number];
      for (const limit of [0, 0.05, 0.5]) {
        const isInside = limit > least && limit < most;
        const place = ((limit - least) / (most - least)) * 100;
        const lines = loopsOf(items, `limit ${limit}`);
        expect(lines.map((each) => boxOf(pointsOf([each])))).toEqual(
          isInside ? [near(upright ? [place, place, 0, 40] : [0, 40, place, place])] : [],
        );
      }
      const inside = (limit: number) => Math.min(most, Math.max(least, limit));
      const [from, to] = [0.05, 0.5].map((limit) => ((inside(limit) - least) / (most - least)) * 100) as [
        number,
        number,
      ];
      const slides = boxOf(pointsOf(loopsOf(items, 'slides')));
      expect(slides).toEqual(near(upright ? [from, to, 0, 40] : [0, 40, from, to]));
    }
  });
});
