// Sizes of doors against worked examples: a routing magazine and trade forums (read), and plane arithmetic by hand.
import { describe, expect, it } from 'vitest';
import {
  type Door,
  doorInsertion,
  layOpenings,
  leafSize,
  panelSize,
  shareOut,
} from '../../packages/core/src/door/door.ts';
import { cornerOverlap, fallingOverlap, volumeTaken } from '../../packages/core/src/door/panel-volume.ts';
import { listParts } from '../../packages/core/src/door/parts.ts';
import { BOARD_FOOT, listTimber } from '../../packages/core/src/door/timber.ts';
import { fillOpenings } from '../../packages/core/src/job/fill-openings.ts';
import type { Frame } from '../../packages/core/src/joint/frame.ts';
import { Random } from '../support/random.ts';

const FRAME: Frame = {
  thickness: 22,
  groove: { width: 6.4, depth: 11, setback: 7.5 },
  swellGap: 2,
  endGap: 1,
  joint: { kind: 'cope', length: 11 },
};

function door(given: Partial<Door>): Door {
  const whole = { name: 'A', width: 400, height: 700, stile: 60, rail: 60, ...given };
  return { ...whole, ...fillOpenings(whole) };
}

function panelsOf(one: Door, frame = FRAME) {
  const insertion = doorInsertion({ frame }, one);
  return layOpenings(one).map((opening) => panelSize(opening, insertion));
}

describe('panels of a door', () => {
  it('have separate gaps across and along the grain', () => {
    expect(panelsOf(door({}))).toEqual([{ width: 298, height: 600 }]);
    // The grain across, as in a drawer front: the gaps change places.
    expect(panelsOf(door({ grain: 'across' }))).toEqual([{ width: 300, height: 598 }]);
  });

  it('are what a routing magazine works out: rail with tenons less 2 and 2, height likewise (issue 3, p. 11)', () => {
    const frame = { ...FRAME, groove: { ...FRAME.groove, depth: 10 }, swellGap: 2, endGap: 1 };
    expect(panelsOf(door({}), frame)).toEqual([{ width: 296, height: 598 }]);
  });

  it('take unequal rails, given openings and the rest', () => {
    const one = door({
      topRail: 80,
      bottomRail: 100,
      midRail: 50,
      muntin: 40,
      columns: [100, 'rest'],
      rows: ['rest', 200, 'rest'],
    });
    const openings = layOpenings(one);
    // Across: 400 − 120 − 40 = 240, of which 100 is given. Up: 700 − 180 − 100 = 420, of which 200 is given.
    expect(openings.map(({ width, height }) => [width, height])).toEqual([
      [100, 110],
      [140, 110],
      [100, 200],
      [140, 200],
      [100, 110],
      [140, 110],
    ]);
    expect(openings.at(-1)).toMatchObject({ x: 200, y: 490, column: 1, row: 2 });
  });

  it('share a drawer stack out in parts: 700 with three gaps of 3 and 3 on top, 1:1:2:2', () => {
    const whole = 700 - 4 * 3;
    expect([1, 1, 2, 2].map((part) => (whole * part) / 6)).toEqual([
      expect.closeTo(114.667, 3),
      expect.closeTo(114.667, 3),
      expect.closeTo(229.333, 3),
      expect.closeTo(229.333, 3),
    ]);
    expect(shareOut(700 - 3, 3, ['rest', 'rest', 229, 229])[0]).toBeCloseTo((697 - 9 - 458) / 2, 12);
  });
});

describe('a leaf in its opening', () => {
  const hungIn = { width: 900, height: 700, gap: 2, overlay: 12, between: 3 };

  it('is what the trade works out', () => {
    expect(leafSize({ ...hungIn, hung: 'inset' }, 2).width).toBe(446.5);
    expect(leafSize({ ...hungIn, hung: 'overlay' }, 2).width).toBe(460.5);
    // Trade forum: 304 wide, 2 a side, 4 between makes 148 each.
    expect(leafSize({ ...hungIn, hung: 'inset', width: 304, between: 4 }, 2).width).toBe(148);
    // Trade forum: inset at 3/32 in, one door is O − 3/16, a pair together O − 9/32.
    const inch = 25.4;
    const gap = (3 / 32) * inch;
    const inset = { ...hungIn, hung: 'inset', gap, between: gap } as const;
    expect(leafSize(inset, 1).width).toBeCloseTo(900 - (3 / 16) * inch, 12);
    expect(2 * leafSize(inset, 2).width).toBeCloseTo(900 - (9 / 32) * inch, 12);
  });
});

describe('frame and panels put together again', () => {
  it('give the door and its gaps back, on 500 random doors', () => {
    const random = new Random(3);
    for (let i = 0; i < 500; i++) {
      const columns = Array.from({ length: 1 + Math.floor(random.unit() * 4) }, () => 'rest' as const);
      const rows = Array.from({ length: 1 + Math.floor(random.unit() * 4) }, () => 'rest' as const);
      const one = door({
        width: random.between(700, 1500),
        height: random.between(700, 2400),
        stile: random.between(40, 90),
        rail: random.between(40, 90),
        topRail: random.between(40, 120),
        muntin: random.between(30, 60),
        midRail: random.between(30, 90),
        columns,
        rows,
        grain: random.oneOf(['up', 'across']),
      });
      const frame = { ...FRAME, swellGap: random.between(0, 4), endGap: random.between(0, 3) };
      const parts = listParts(one, frame.joint!, frame.thickness);
      const width = (name: string) => parts.find(({ part }) => part === name)!.width;
      const panels = panelsOf(one, frame);
      const across = panels.slice(0, columns.length);
      const gaps = one.grain === 'up' ? [frame.swellGap, frame.endGap] : [frame.endGap, frame.swellGap];
      const sight = (size: number, gap: number) => size - 2 * (frame.groove.depth - gap);
      const wide = across.reduce((sum, panel) => sum + sight(panel.width, gaps[0]!), 0);
      const muntins = columns.length > 1 ? (columns.length - 1) * width('muntin') : 0;
      expect(2 * width('stile') + wide + muntins).toBeCloseTo(one.width, 9);
      const tall = panels
        .filter((_, k) => k % columns.length === 0)
        .reduce((sum, panel) => sum + sight(panel.height, gaps[1]!), 0);
      const mids = rows.length > 1 ? (rows.length - 1) * width('mid rail') : 0;
      expect(width('top rail') + width('bottom rail') + tall + mids).toBeCloseTo(one.height, 9);
      expect(parts.find(({ part }) => part === 'top rail')!.length).toBeCloseTo(one.width - 2 * one.stile + 22, 9);
    }
  });

  it('with mitred corners rails are as long as the door is wide', () => {
    const parts = listParts(door({ rows: ['rest', 'rest'], midRail: 50 }), { kind: 'mitre', length: 11 }, 22);
    expect(parts.map(({ part, length }) => [part, length])).toEqual([
      ['stile', 700],
      ['top rail', 400],
      ['bottom rail', 400],
      ['mid rail', 302],
    ]);
  });
});

describe('the volume that the cuts take all round', () => {
  it('is that of a grid of 0.25 mm, for the ogee example: 404,845 mm³', () => {
    expect(volumeTaken(298, 600, 240.75, fallingOverlap(240.75, 14.299985337))).toBeCloseTo(404845.228, 2);
  });

  it('of a rebate is D(2r(w + h) − 4r²)', () => {
    const [w, h, r, d] = [298, 600, 12, 5];
    expect(volumeTaken(w, h, r * d, fallingOverlap(r * d, r / 2))).toBeCloseTo(d * (2 * r * (w + h) - 4 * r * r), 9);
  });

  it('agrees with a grid where a cut takes more further in', () => {
    // A bead: 3 mm deep at the edge, 6 mm deep between 8 and 14 mm in.
    const depth = (a: number) => (a < 8 ? 3 : a < 14 ? 6 : 0);
    const [w, h] = [80, 60];
    const step = 0.05;
    let taken = 0;
    for (let x = step / 2; x < w; x += step) {
      for (let y = step / 2; y < h; y += step) {
        taken += Math.max(depth(Math.min(x, w - x)), depth(Math.min(y, h - y))) * step * step;
      }
    }
    const volume = volumeTaken(w, h, 3 * 8 + 6 * 6, cornerOverlap(depth, 14));
    expect(Math.abs(volume - taken) / taken).toBeLessThan(2e-3);
  });
});

describe('timber', () => {
  const RULES = { overLength: 25, overWidth: 25, stripWidth: 90, yield: 2 / 3 };

  it('is ordered in board feet of 144 in³: 1 × 9 × 96 in is 6 BF, 1.5 × 9 × 96 in is 9 BF (NHLA examples)', () => {
    for (const [thickness, feet] of [
      [1, 6],
      [1.5, 9],
    ] as const) {
      const volume = (thickness * 9 * 96 * 25.4 ** 3) / 1e9;
      expect(volume / BOARD_FOOT).toBeCloseTo(feet, 9);
    }
  });

  it('of 12 blanks 285 × 600 × 25.4 mm with an inch or so over is 25.026 BF rough, 37.539 at two thirds of yield', () => {
    const piece = { what: 'blank', wood: 'oak', quantity: 12, length: 600, width: 285, thickness: 25.4 };
    const [timber] = listTimber([piece], RULES);
    expect(timber!.rough).toBeCloseTo(0.059055, 9);
    expect(timber!.boardFeet.rough).toBeCloseTo(25.026092, 5);
    expect(timber!.boardFeet.order).toBeCloseTo(37.539138, 5);
    // 310 wide from strips of at most 90: four of 77.5.
    expect(timber!.pieces[0]).toMatchObject({ strips: 4, stripWidth: 77.5, length: 625, width: 310 });
  });
});
