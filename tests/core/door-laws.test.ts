// Laws of doors, cutting lists and what a quote counts, on random doors: everything counted again part by part, by plane arithmetic.
import { evaluate, type Job, makeCuttingList, readJob } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { type BlankItem, makeBlanks } from '../../packages/core/src/door/blanks.ts';
import { chooseGuide, ringShortfall } from '../../packages/core/src/door/guide.ts';
import { BOARD_FOOT } from '../../packages/core/src/door/timber.ts';
import { countJob } from '../../packages/core/src/quote/make-quote.ts';
import { line } from '../../packages/geometry/src/curve/curve.ts';
import { shopJob } from '../support/plans.ts';
import { Random } from '../support/random.ts';
import { SOUND } from './job-texts.ts';

const whole = (random: Random, least: number, most: number) => Math.round(random.between(least, most));

interface DrawnDoor {
  readonly name: string;
  readonly quantity: number;
  readonly leaves: number;
  readonly width: number;
  readonly height: number;
  readonly stile: number;
  readonly top: number;
  readonly bottom: number;
  readonly mid: number;
  readonly muntin: number;
  readonly across: number;
  readonly up: number;
  readonly grain: 'up' | 'across';
}

function drawDoor(random: Random, name: string): DrawnDoor {
  return {
    name,
    quantity: whole(random, 1, 5),
    leaves: 1,
    // Few heights, so that parts of one length differ in width.
    width: random.oneOf([800, 950, 1300]),
    height: random.oneOf([900, 1500]),
    stile: whole(random, 45, 90),
    top: whole(random, 45, 110),
    bottom: whole(random, 45, 160),
    mid: whole(random, 40, 90),
    muntin: whole(random, 40, 70),
    across: whole(random, 1, 3),
    up: whole(random, 1, 3),
    grain: random.oneOf(['up', 'across']),
  };
}

interface DrawnJob {
  readonly doors: readonly DrawnDoor[];
  readonly joint: { readonly kind: 'cope' | 'tenon' | 'mitre'; readonly length: number };
  readonly swellGap: number;
  readonly endGap: number;
  readonly rules: {
    readonly overLength: number;
    readonly overWidth: number;
    readonly stripWidth: number;
    readonly yield: number;
  };
}

function drawJob(random: Random): DrawnJob {
  return {
    doors: Array.from({ length: whole(random, 1, 3) }, (_, i) => drawDoor(random, `d${i}`)),
    joint: random.oneOf([
      { kind: 'cope', length: 11 },
      { kind: 'tenon', length: whole(random, 15, 40) },
      { kind: 'mitre', length: 11 },
    ] as const),
    swellGap: whole(random, 1, 4),
    endGap: whole(random, 0, 2),
    rules: {
      overLength: whole(random, 10, 40),
      overWidth: whole(random, 3, 12),
      stripWidth: whole(random, 80, 140),
      yield: whole(random, 50, 80),
    },
  };
}

/** The drawn job as a job file, with two cuts on the panel and the frame's own three where its joint is a cope. */
function jobOf({ doors, joint, swellGap, endGap, rules }: DrawnJob): Job {
  const listed = doors.map(
    (d) =>
      `  - { name: ${d.name}, quantity: ${d.quantity}, width: ${d.width}, height: ${d.height}, stile: ${d.stile}, rail: ${d.top}, topRail: ${d.top}, bottomRail: ${d.bottom}, midRail: ${d.mid}, muntin: ${d.muntin}, across: ${d.across}, up: ${d.up}, grain: ${d.grain} }`,
  );
  const shop = `fielded: 1
heads:
  raiser: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, bore: 30, rake: 15, maxSpeed: 7000 }
  small: { cuttingDiameter: 125, bodyDiameter: 72, height: 40, bore: 30, rake: 18, wedge: 42, maxSpeed: 9000 }
machines:
  spindle: { speeds: [3000, 4500, 6000, 7500], seat: [-70, 90], opening: 220, nutDiameter: 48, spindle: 30, spindleLength: 140, fenceGap: 260, reversing: true }
rules: { overLength: ${rules.overLength}, overWidth: ${rules.overWidth}, stripWidth: ${rules.stripWidth}, yield: ${rules.yield / 100} }
`;
  const text = `fielded: 1
title: Drawn
shop: shop.yaml
panel: { thickness: 20, species: black cherry }
frame:
  thickness: 22
  species: white oak
  groove: { width: 6.4, depth: 11, setback: 7.5 }
  swellGap: ${swellGap}
  endGap: ${endGap}
  joint: { kind: ${joint.kind}, length: ${joint.length} }
  sticking: { shape: ovolo, reach: 6, depth: 6, head: small }
  backEdge: { shape: cove, reach: 5, depth: 4, head: small }
cuts:
  - { name: raise, side: front, head: raiser, profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 } }
  - { name: relief, side: back, run: over, head: small, profile: { shape: cove, reach: 14, depth: 4.8, land: 9 } }
doors:
${listed.join('\n')}
`;
  const { job, faults } = readJob(text, { loadShop: () => shop });
  if (job === null) throw new Error(faults.map(({ message }) => message).join('\n'));
  return job;
}

/** Openings of a door: each one's size. */
function openingsOf({ width, height, stile, top, bottom, mid, muntin, across, up }: DrawnDoor) {
  const wide = (width - 2 * stile - (across - 1) * muntin) / across;
  const tall = (height - top - bottom - (up - 1) * mid) / up;
  return Array.from({ length: across * up }, () => ({ width: wide, height: tall }));
}

/** A door's parts one by one, with what the frame's own cuts run of each: length × width, its ends coped, its inner edges. */
function partsOf(d: DrawnDoor, { joint }: DrawnJob) {
  const [opening] = openingsOf(d);
  const inner = d.width - 2 * d.stile + 2 * joint.length;
  const rail = joint.kind === 'mitre' ? d.width : inner;
  const part = (name: string, length: number, width: number, ends: number, inside: number) => {
    return { name, length, width, ends, inside };
  };
  return [
    part('stile', d.height, d.stile, 0, 1),
    part('stile', d.height, d.stile, 0, 1),
    part('top rail', rail, d.top, 2, 1),
    part('bottom rail', rail, d.bottom, 2, 1),
    ...Array.from({ length: d.up - 1 }, () => part('mid rail', inner, d.mid, 2, 2)),
    ...Array.from({ length: d.up * (d.across - 1) }, () =>
      part('muntin', opening!.height + 2 * joint.length, d.muntin, 2, 2),
    ),
  ];
}

/** A door's panels one by one: across and along the grain as they lie in the frame. */
function panelsOf(d: DrawnDoor, { swellGap, endGap }: DrawnJob) {
  const [sides, ends] = d.grain === 'up' ? [swellGap, endGap] : [endGap, swellGap];
  return openingsOf(d).map(({ width, height }) => ({
    width: width + 2 * (11 - sides),
    height: height + 2 * (11 - ends),
  }));
}

const total = (sizes: readonly number[]) => sizes.reduce((sum, size) => sum + size, 0);

describe('doors, their cutting list and their quote', () => {
  const random = new Random(81);
  const cases = Array.from({ length: 24 }, () => {
    const drawn = drawJob(random);
    const job = jobOf(drawn);
    return { drawn, job, ...countJob(job) };
  });

  it('have the parts and panels that the elevation has', () => {
    for (const { drawn, report } of cases) {
      drawn.doors.forEach((d, i) => {
        const door = report.doors![i]!;
        const listed = (name: string) => door.parts.filter(({ part }) => part === name);
        for (const name of ['stile', 'top rail', 'bottom rail', 'mid rail', 'muntin']) {
          const parts = partsOf(d, drawn).filter((part) => part.name === name);
          expect(total(listed(name).map(({ quantity }) => quantity))).toBe(parts.length * d.quantity);
          for (const { length, width, thickness } of listed(name)) {
            expect(length).toBeCloseTo(parts[0]!.length, 9);
            expect(width).toBeCloseTo(parts[0]!.width, 9);
            expect(thickness).toBe(22);
          }
        }
        const panels = panelsOf(d, drawn);
        expect(total(door.panels.map(({ quantity }) => quantity))).toBe(panels.length * d.quantity);
        // All openings of a drawn door are equal, and equal panels are listed once.
        expect(door.panels).toHaveLength(1);
        for (const { width, height, field, volume, weight } of door.panels) {
          expect(width).toBeCloseTo(panels[0]!.width, 9);
          expect(height).toBeCloseTo(panels[0]!.height, 9);
          // The raise of 38 lies all round; where both leave nothing there is no field.
          const [fieldWidth, fieldHeight] = [width - 76, height - 76];
          if (Math.min(fieldWidth, fieldHeight) > 0)
            expect(field).toEqual({ width: expect.closeTo(fieldWidth, 9), height: expect.closeTo(fieldHeight, 9) });
          else expect(field).toBeNull();
          expect(volume).toBeLessThan(width * height * 20);
          // Cherry is some 560 kg/m³ (between 500 and 640 in any table).
          expect(weight! / (volume / 1e9)).toBeGreaterThan(500);
          expect(weight! / (volume / 1e9)).toBeLessThan(640);
        }
      });
    }
  });

  it('count the edges that are run, the doors and their faces', () => {
    for (const { drawn, report, quantities } of cases) {
      let [panelEdges, copes, insides, backs, face] = [0, 0, 0, 0, 0];
      for (const d of drawn.doors) {
        const all = d.quantity;
        panelEdges += all * total(panelsOf(d, drawn).map(({ width, height }) => 2 * (width + height)));
        copes += all * total(partsOf(d, drawn).map(({ ends, width }) => ends * width));
        insides += all * total(partsOf(d, drawn).map(({ inside, length }) => inside * length));
        backs += all * total(openingsOf(d).map(({ width, height }) => 2 * (width + height)));
        face += all * 2 * d.width * d.height;
      }
      const kinds = new Set(report.knives!.map(({ cut }) => cut));
      expect(kinds.has('cope')).toBe(drawn.joint.kind === 'cope');
      const frame = (kinds.has('cope') ? copes : 0) + insides + backs;
      expect(quantities.metres).toBeCloseTo((2 * panelEdges + frame) / 1000, 6);
      expect(quantities.doors).toBe(total(drawn.doors.map(({ quantity }) => quantity)));
      expect(quantities.face).toBeCloseTo(face / 1e6, 9);
    }
  });

  it('order timber that is rough by the allowances, divided by the yield', () => {
    for (const { drawn, report } of cases) {
      const { overLength, overWidth, stripWidth, yield: share } = drawn.rules;
      const rough = (length: number, width: number, thickness: number) =>
        ((length + overLength) * (width + overWidth) * thickness) / 1e9;
      const frame = total(
        drawn.doors.map((d) => d.quantity * total(partsOf(d, drawn).map((part) => rough(part.length, part.width, 22)))),
      );
      const oak = report.timber!.find(({ thickness }) => thickness === 22)!;
      expect(oak.wood).toBe('white oak');
      expect(oak.rough).toBeCloseTo(frame, 9);
      expect(oak.order).toBeCloseTo((frame * 100) / share, 9);
      expect(oak.boardFeet.order * BOARD_FOOT).toBeCloseTo(oak.order, 9);
      // Panels are bought as they are glued up: blanks, and what rides in none.
      const blanks = report.blanks!;
      const riding = (door: string) =>
        total(blanks.map(({ quantity, panels }) => quantity * panels.filter((each) => each.door === door).length));
      const panels = total(
        drawn.doors.map((d) => {
          const [{ width, height }] = panelsOf(d, drawn) as [{ width: number; height: number }];
          const [across, length] = d.grain === 'up' ? [width, height] : [height, width];
          return (d.quantity * d.across * d.up - riding(d.name)) * rough(length, across, 20);
        }),
      );
      const glued = total(blanks.map(({ quantity, length, width }) => quantity * rough(length, width, 20)));
      const cherry = report.timber!.find(({ thickness }) => thickness === 20)!;
      expect(cherry.rough).toBeCloseTo(panels + glued, 9);
      for (const { strips, stripWidth: each, width } of [...oak.pieces, ...cherry.pieces]) {
        expect(strips * each).toBeCloseTo(width, 9);
        // As few strips as are no wider than the shop's.
        expect(each).toBeLessThanOrEqual(stripWidth + 1e-9);
        expect(strips === 1 || width / (strips - 1) > stripWidth).toBe(true);
      }
      for (const { width, panels: inBlank, rips } of blanks) {
        // Side by side with a kerf of 3.2 and 1 mm to clean on both sides of it, ripped in the middle of each kerf.
        const widths = inBlank.map((panel) => panel.width);
        expect(width).toBeCloseTo(total(widths) + (widths.length - 1) * 5.2, 9);
        rips.forEach((rip, k) => {
          expect(rip).toBeCloseTo(total(widths.slice(0, k + 1)) + k * 5.2 + 2.6, 9);
        });
      }
    }
  });

  it('are listed as often as they are made, the longest first, for one job and for two together', () => {
    for (let i = 1; i < cases.length; i++) {
      const jobs = [cases[i - 1]!.report, cases[i]!.report];
      const list = makeCuttingList(jobs);
      const doors = jobs.flatMap((report) => report.doors!);
      const order = ['stile', 'top rail', 'bottom rail', 'mid rail', 'muntin'];
      const keys = list.parts.map(({ part, length, width, thickness }) =>
        [order.indexOf(part), -length, -width, thickness].map((figure) => figure.toFixed(2)),
      );
      const rank = (key: readonly string[]) => key.map(Number);
      keys.slice(1).forEach((key, k) => {
        const first = rank(keys[k]!).findIndex((figure, at) => figure !== rank(key)[at]);
        expect(first).toBeGreaterThanOrEqual(0);
        expect(rank(keys[k]!)[first]).toBeLessThan(rank(key)[first]!);
      });
      for (const piece of [...list.parts, ...list.panels])
        expect(total(piece.for.map(({ quantity }) => quantity))).toBe(piece.quantity);
      const made = (pieces: readonly { quantity: number }[]) => total(pieces.map(({ quantity }) => quantity));
      expect(made(list.parts)).toBe(made(doors.flatMap(({ parts }) => parts)));
      expect(made(list.panels)).toBe(made(doors.flatMap(({ panels }) => panels)));
      expect(list.doors).toBe(made(doors));
      for (const figure of ['finished', 'rough', 'order'] as const) {
        const sum = (all: typeof list.timber) => total(all.map((timber) => timber[figure]));
        const feet = (all: typeof list.timber) => total(all.map(({ boardFeet }) => boardFeet[figure]));
        const apart = jobs.flatMap(({ timber }) => timber!);
        expect(sum(list.timber)).toBeCloseTo(sum(apart), 9);
        expect(feet(list.timber)).toBeCloseTo(feet(apart), 9);
      }
    }
  });
});

describe('blanks of hundreds of panels', () => {
  const panels = (widths: readonly number[]): BlankItem[] =>
    widths.map((width, i) => ({ door: `d${i}`, width, length: 600 }));
  const rules = { leastEndGrainWidth: 560, greatestBlankWidth: 600, kerf: 3.2, edgeAllowance: 1 };
  const count = (all: readonly { readonly quantity: number }[]) => total(all.map(({ quantity }) => quantity));

  it('join what their lots leave over', () => {
    // Seven of 78 mm make 577.2; six are too narrow and eight too wide.
    const all = makeBlanks(panels(Array.from({ length: 490 }, () => 78)), rules);
    expect([count(all.blanks), count(all.leftOver)]).toEqual([70, 0]);
    const more = makeBlanks(panels(Array.from({ length: 491 }, () => 78)), rules);
    expect(count(more.leftOver)).toBeGreaterThan(0);
  });

  it('share wide and narrow ones out among the lots', () => {
    // One of 250 and one of 60 make 315.2, and nothing makes as many blanks as 250 of these; lots of one width make some 175.
    const pairs = Array.from({ length: 500 }, (_, i) => (i % 2 === 0 ? 250 : 60));
    const { blanks, leftOver } = makeBlanks(panels(pairs), { ...rules, leastEndGrainWidth: 300 });
    expect(count(leftOver)).toBe(0);
    expect(count(blanks)).toBeGreaterThanOrEqual(245);
  });
});

describe('what a curve runs on', () => {
  it('is the bearing nearest to the cut’s own, the smaller of two as near, whatever their order', () => {
    const cutter = { cuttingRadius: 80, reach: 38 };
    for (const bearings of [
      [80, 88, 100],
      [100, 88, 80],
      [88, 80],
    ])
      expect(chooseGuide(cutter, null, { bearings }).bearing).toMatchObject({ needed: 84, available: 80, outside: 2 });
  });

  it('falls short on a ring by what the cutter’s circle does not reach, seen from the ring’s middle', () => {
    const random = new Random(82);
    for (let i = 0; i < 50; i++) {
      const [cutter, reach] = [random.between(50, 110), random.between(5, 40)];
      const ring = cutter - reach + random.between(1, 40);
      // The axis stands off the ring's middle so that the knives reach by the whole `reach` at the mark.
      const axis = ring + reach - cutter;
      const reachesTo = (angle: number) => {
        const far = Array.from({ length: 2001 }, (_, k) => {
          const turn = angle + (k / 1000 - 1) * 0.3;
          return (axis + cutter * Math.cos(turn)) * Math.cos(angle) + cutter * Math.sin(turn) * Math.sin(angle);
        });
        return Math.max(...far) - ring;
      };
      const angle = random.between(0, 0.6);
      expect(ringShortfall(ring, cutter, reach, angle)).toBeCloseTo(reach - reachesTo(angle), 5);
      const { within } = chooseGuide({ cuttingRadius: cutter, reach }, null, { ringFences: [2 * ring] }).ring!;
      const turn = (within!.angle * Math.PI) / 180;
      expect(reach - reachesTo(turn)).toBeCloseTo(within!.short, 5);
      expect(within!.along).toBeCloseTo(ring * turn, 9);
    }
  });
});

it('a door’s shaped head goes with its panel into the list, and none with the others', () => {
  const { job, faults } = readJob(
    SOUND +
      'doors: [{ name: A, width: 500, height: 900, stile: 60, rail: 60, head: { shape: arch, rise: 50 } }, { name: B, width: 450, height: 800, stile: 60, rail: 60 }]',
  );
  expect(faults).toEqual([]);
  const { panels } = makeCuttingList([evaluate(job!)]);
  expect(panels.map(({ door }) => door?.name)).toEqual(['A', undefined]);
});

it('a curve is guided on each machine that lists bearings or ring fences, and on no other', () => {
  const machine = { ...shopJob().shop!.machines.main! };
  const { bearings: _, ringFences: __, ...bare } = machine;
  const machines = {
    none: bare,
    bearings: { ...bare, bearings: [84] },
    rings: { ...bare, ringFences: [200] },
    both: { ...bare, bearings: [84], ringFences: [200] },
  };
  const job = shopJob({
    doors: '[{ name: A, width: 500, height: 900, stile: 60, rail: 60, head: { shape: arch, rise: 50 } }]',
  });
  const { guides } = evaluate({ ...job, shop: { ...job.shop!, machines } }).doors![0]!.head!;
  expect([...new Set(guides.map(({ machine }) => machine))]).toEqual(['bearings', 'rings', 'both']);
});

it('a panel cut deeper further in has the volume of a grid over it: in the corners the deeper of both edges’ cuts counts', () => {
  const random = new Random(83);
  for (let i = 0; i < 3; i++) {
    const job = shopJob({ doors: '[{ name: A, width: 360, height: 420, stile: 60, rail: 60 }]' });
    const [edge, most, at] = [random.between(1, 4), random.between(6, 9), random.between(6, 24)];
    const chain = [line(0, edge, at, most), line(at, most, 38, 0)];
    const profile = { shape: 'outline', reach: 38, depth: most, chain } as const;
    const cut = { ...job.cuts[0]!, profile, depth: most, reach: 38, tilt: Math.PI / 2 } as Job['cuts'][number];
    const { width, height, volume } = evaluate({ ...job, cuts: [cut] }).doors![0]!.panels[0]!;
    const taken = (a: number) =>
      a < at ? edge + ((most - edge) * a) / at : Math.max(0, (most * (38 - a)) / (38 - at));
    const [n, m] = [400, 480];
    let sum = 0;
    for (let k = 0; k < n; k++)
      for (let l = 0; l < m; l++) {
        // A quarter of the panel, from one corner to the middle.
        const [x, y] = [((k + 0.5) / n) * (width / 2), ((l + 0.5) / m) * (height / 2)];
        sum += 20 - Math.max(taken(x), taken(y));
      }
    expect(volume / ((sum * width * height) / (n * m))).toBeCloseTo(1, 4);
  }
});
