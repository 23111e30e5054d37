// Set-ups on shops that no example has, each figure and each reason against a second working from the definitions (tests/support/setup-oracle.ts):
// machines that cannot drop, cannot reverse, are too short or find no speed; panel and frame; one head at a time and both at once.

import {
  acceptJob,
  answerPlan,
  type Head,
  type Job,
  type Machine,
  type Plan,
  prepareJob,
  type SetUp,
} from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { raiser } from '../support/heads.ts';
import { planned, shopJob } from '../support/plans.ts';
import { Random } from '../support/random.ts';
import {
  type OracleCut,
  type OracleHead,
  type OracleMachine,
  oracleAgainst,
  oracleFigures,
  oracleStack,
} from '../support/setup-oracle.ts';
import { leastProcessorTime } from '../support/timing.ts';

/** A shop for two cuts of the panel, from opposite sides, and three of the frame. */
interface Drawn {
  readonly machines: Readonly<Record<string, OracleMachine>>;
  readonly heads: readonly [front: OracleHead, back: OracleHead, frame: OracleHead];
  readonly fromFace: readonly [number | undefined, number | undefined];
  /** What the knives of the panel were ground for. */
  readonly ground: readonly [Ground, Ground];
  readonly runs: readonly [Run, Run];
  readonly front: { readonly D: number; readonly rho: number };
  readonly back: { readonly D: number; readonly rho: number };
}
type Run = 'under' | 'over';
type Ground = { readonly run: Run; readonly rotation: 'clockwise' | 'counterclockwise' };

const T = 20;
const FRAME = { T: 22, setback: 7.5, groove: 6.4, deep: 11, sticking: { D: 5, rho: 6 }, back: { D: 4, rho: 5 } };
const BASE = shopJob();

function jobOf({ machines, heads, fromFace, ground, runs, front, back }: Drawn): Job {
  const rebate = (D: number, reach: number) =>
    ({ shape: 'rebate', reach, depth: D, land: 0, shoulder: 0, balance: 0.5 }) as const;
  const headOf = ({ d, body, h, most, least, bore, mechanical }: OracleHead): Head => ({
    ...raiser,
    cuttingDiameter: d,
    bodyDiameter: body,
    height: h,
    maxSpeed: most,
    ...(least !== undefined && { minSpeed: least }),
    ...(bore !== undefined && { bore }),
    feed: mechanical ? 'mechanical' : 'hand',
  });
  const machineOf = ({ nut, long, ...m }: OracleMachine): Machine => ({
    ...m,
    nutDiameter: nut,
    tilt: [0, 0],
    ...(long !== undefined && { spindleLength: long }),
  });
  const knife = (k: 0 | 1, profile: ReturnType<typeof rebate>) => ({
    profile,
    head: `h${k}`,
    measured: 'wood' as const,
    groundFor: ground[k],
    ...(fromFace[k] !== undefined && { fromFace: fromFace[k] }),
  });
  const profiles = [rebate(front.D, front.rho), rebate(back.D, back.rho)] as const;
  return acceptJob({
    ...BASE,
    panel: { thickness: T },
    frame: {
      thickness: FRAME.T,
      groove: { width: FRAME.groove, depth: FRAME.deep, setback: FRAME.setback },
      swellGap: 2,
      sticking: rebate(FRAME.sticking.D, FRAME.sticking.rho),
      stickingHead: 'h2',
      backEdge: { profile: rebate(FRAME.back.D, FRAME.back.rho), head: 'h2' },
    },
    cuts: [
      { name: 'front', side: 'front', profile: profiles[0], run: runs[0], head: 'h0', knife: 'k0' },
      { name: 'back', side: 'back', profile: profiles[1], run: runs[1], head: 'h1', knife: 'k1' },
    ],
    shop: {
      ...BASE.shop!,
      heads: Object.fromEntries(heads.map((head, k) => [`h${k}`, headOf(head)])),
      knives: { k0: knife(0, profiles[0]), k1: knife(1, profiles[1]) },
      machines: Object.fromEntries(Object.entries(machines).map(([name, m]) => [name, machineOf(m)])),
    },
  });
}

/** The cuts as the second working sees them; `first` is the panel's cut that is made before the other, on its own. */
function cutsOf(
  { heads, fromFace, ground, front, back }: Drawn,
  made: (cut: 'front' | 'back') => boolean,
): OracleCut[] {
  const hand = ({ run, rotation }: Ground) =>
    ((run === 'under') === (rotation === 'counterclockwise') ? 1 : -1) as 1 | -1;
  const panel = (name: 'front' | 'back', k: 0 | 1, other: number): OracleCut => {
    const { D, rho } = k === 0 ? front : back;
    return {
      name,
      what: 'panel',
      T,
      D,
      rho,
      ...(fromFace[k] !== undefined && { u: fromFace[k] }),
      k: hand(ground[k]),
      head: heads[k],
      area: (depth) => depth * rho,
      before: { same: 0, other },
    };
  };
  const frame = (
    what: 'cope' | 'sticking' | 'back edge',
    D: number,
    rho: number,
    area: OracleCut['area'],
  ): OracleCut => ({
    name: what,
    what,
    T: FRAME.T,
    D,
    rho,
    k: 1,
    head: heads[2],
    area,
    before: { same: 0, other: 0 },
  });
  const { sticking, back: edge, deep, setback } = FRAME;
  // Set less deep, a cope is its own profile moved towards the face: the stretch next to the tenon stays.
  const tall = setback - sticking.D;
  const cope = (depth: number) => deep * Math.min(depth, tall) + (deep - sticking.rho) * Math.max(0, depth - tall);
  return [
    frame('cope', setback, deep, cope),
    frame('sticking', sticking.D, sticking.rho, (depth) => depth * sticking.rho),
    panel('front', 0, 0),
    panel('back', 1, made('front') ? front.D : 0),
    frame('back edge', edge.D, edge.rho, (depth) => depth * edge.rho),
  ];
}

function drawShop(random: Random): Drawn {
  const between = (least: number, most: number) => Math.round(random.between(least, most));
  const chance = (share: number) => random.unit() < share;
  const maybe = <V>(value: V) => (chance(0.6) ? value : undefined);
  const head = (): OracleHead => {
    const [least, bore] = [maybe(between(2000, 6000)), maybe(random.oneOf([30, 35]))];
    return {
      d: between(90, 180),
      body: between(50, 80),
      h: between(25, 60),
      most: between(5000, 10_000),
      mechanical: chance(0.15),
      ...(least !== undefined && { least }),
      ...(bore !== undefined && { bore }),
    };
  };
  const machine = (): OracleMachine => {
    const opening = between(120, 240);
    const slow = between(2000, 7000);
    const optional = {
      spindle: maybe(random.oneOf([30, 35])),
      long: maybe(between(30, 130)),
      power: maybe(random.between(0.3, 5)),
      fenceGap: maybe(between(60, 220)),
    };
    return {
      speeds: [slow, slow + 1500, slow + 3000],
      seat: [between(-80, 5), between(6, 90)],
      opening,
      rings: chance(0.5) ? [] : [opening - 20, opening - 60],
      nut: between(30, 70),
      reversing: chance(0.5),
      feeds: chance(0.3) ? [] : [between(3, 5), between(6, 8), 12],
      ...Object.fromEntries(Object.entries(optional).filter(([, value]) => value !== undefined)),
    };
  };
  const ground = (): Ground => ({
    run: random.oneOf(['under', 'over']),
    rotation: random.oneOf(['clockwise', 'counterclockwise']),
  });
  const rho = between(12, 38);
  const u = () => maybe(Math.round(random.between(-3, 3) * 10) / 10);
  return {
    machines: Object.fromEntries(Array.from({ length: between(1, 3) }, (_, k) => [`m${k}`, machine()])),
    heads: [head(), head(), head()],
    fromFace: [u(), u()],
    ground: [ground(), ground()],
    runs: [random.oneOf(['under', 'over']), random.oneOf(['under', 'over'])],
    front: { D: between(5, 9), rho },
    back: { D: between(3, 5), rho: between(10, 20) },
  };
}

/** Four shops that makers have, and what must be said of each. */
const ABLE: Drawn = {
  machines: {
    m0: {
      speeds: [3000, 4500, 6000],
      seat: [-70, 90],
      opening: 220,
      rings: [140, 170],
      nut: 48,
      reversing: true,
      feeds: [4, 6, 8],
      spindle: 30,
      long: 110,
      power: 4,
      fenceGap: 200,
    },
  },
  heads: [
    { d: 160, body: 70, h: 40, most: 7000, bore: 30 },
    { d: 125, body: 64, h: 40, most: 9000, bore: 30 },
    { d: 120, body: 66, h: 40, most: 9000, bore: 30 },
  ],
  fromFace: [1.5, 1.2],
  ground: [
    { run: 'under', rotation: 'counterclockwise' },
    { run: 'under', rotation: 'counterclockwise' },
  ],
  runs: ['under', 'over'],
  front: { D: 9, rho: 38 },
  back: { D: 4.8, rho: 14 },
};
const withMachine = (change: Partial<OracleMachine>): Drawn => ({
  ...ABLE,
  machines: { m0: { ...ABLE.machines.m0!, ...change } },
});

/** Both ways of working a plan out, side by side. */
function compare(drawn: Drawn): { plan: Plan; working: number; stacked: boolean } {
  const { plan } = planned(jobOf(drawn));
  const ran = (cut: string) => plan.setups.some((setUp) => setUp.cut === cut);
  const stacked = plan.stack?.works === true;
  const cuts = cutsOf(drawn, ran);
  const ways = cuts.map((cut) => plan.ways.filter((way) => way.cut === cut.name));
  let working = 0;
  cuts.forEach((cut, k) => {
    expect(ways[k]).toHaveLength(4 * Object.keys(drawn.machines).length);
    for (const { machine, run, rotation, against, works } of ways[k]!) {
      const wanted = oracleAgainst(cut, drawn.machines[machine]!, run, rotation);
      expect([...against].sort(), `${cut.name} ${machine} ${run} ${rotation}`).toEqual(wanted.sort());
      expect(works).toBe(wanted.length === 0);
      if (works) working += 1;
    }
    const setUp = plan.setups.find((each) => each.cut === cut.name);
    if (stacked && cut.what === 'panel') return;
    expect(setUp !== undefined, cut.name).toBe(ways[k]!.some(({ works }) => works));
    if (setUp !== undefined) compareFigures(setUp, cut, drawn.machines[setUp.machine]!);
  });
  compareStack(plan, drawn, cuts);
  return { plan, working, stacked };
}

function compareFigures(setUp: SetUp, cut: OracleCut, machine: OracleMachine): void {
  const wanted = oracleFigures(cut, machine, setUp.run);
  const near = (value: number) => expect.closeTo(value, 6);
  const nearOrNull = (value: number | null) => (value === null ? null : near(value));
  expect(setUp, cut.name).toMatchObject({
    cuttingPoint: near(wanted.cuttingPoint),
    seat: nearOrNull(wanted.seat),
    hole: wanted.hole.needed === null ? null : { needed: near(wanted.hole.needed), ring: wanted.hole.ring },
    fence: {
      toAxis: near(wanted.toAxis),
      standsOut: near(wanted.standsOut),
      gap: near(wanted.gap),
      bar: wanted.bar && { from: near(wanted.bar.from), to: near(wanted.bar.to) },
    },
    speed: wanted.speed,
    rim: near(wanted.rim),
    feedRate: near(wanted.feedRate),
    mark: { pitch: near(wanted.pitch), height: near(wanted.wave) },
    feedDirection: setUp.rotation === 'counterclockwise' ? 'right to left' : 'left to right',
  });
  // Passes are found to 0.02 mm² of area.
  expect(setUp.passes, `passes of ${cut.name}`).toHaveLength(Math.min(12, wanted.passes.length));
  if (wanted.passes.length > 12) return;
  setUp.passes.forEach((pass, k) => {
    expect(Math.abs(pass.area - wanted.passes[k]!.area)).toBeLessThan(0.05);
    expect(Math.abs(pass.depth - wanted.passes[k]!.depth)).toBeLessThan(0.02);
  });
  expect(Math.abs(setUp.power.likely - wanted.power.likely)).toBeLessThan(0.01 * wanted.power.likely + 0.5);
  expect(setUp.power.most).toBeCloseTo(4 * setUp.power.least, 9);
  expect(setUp.powerEnd.likely).toBeCloseTo(2 * setUp.power.likely, 9);
}

/** Both heads at once: they work where the second working finds a machine and a face down for them, and as it says. */
function compareStack({ stack }: Plan, drawn: Drawn, cuts: readonly OracleCut[]): void {
  const [front, back] = [cuts.find(({ name }) => name === 'front')!, cuts.find(({ name }) => name === 'back')!];
  const judged = Object.entries(drawn.machines).flatMap(([name, machine]) =>
    [
      [front, back],
      [back, front],
    ].map(([lower, upper]) => ({
      name,
      machine,
      lower: lower!,
      upper: upper!,
      ...oracleStack(lower!, upper!, machine),
    })),
  );
  const able = judged.filter(({ codes, spacer, lower, upper, machine }) => {
    const area = lower.area(lower.D) + upper.area(upper.D);
    return codes.size === 0 && spacer !== null && fitsMotor(area, lower, machine);
  });
  expect(stack!.works).toBe(able.length > 0);
  const same = judged.find(({ name, lower }) => name === stack!.machine && lower.name === stack!.lower)!;
  const known = stack!.against.filter((code) => code !== 'stack-passes');
  expect([...new Set(known)].sort()).toEqual([...same.codes].sort());
  expect(stack!.spacer).toEqual(same.spacer === null ? null : expect.closeTo(same.spacer, 9));
  expect(stack!.speed).toBe(same.speed);
}

/** Whether a motor has 0.8 of its power for an area on end grain at the feed that the marks allow. */
function fitsMotor(area: number, cut: OracleCut, machine: OracleMachine): boolean {
  if (machine.power === undefined) return true;
  const { feedRate } = oracleFigures(cut, machine, 'under');
  return (2 * 40 * area * feedRate) / 60 <= 0.8 * machine.power * 1000;
}

describe('shops that no example has', () => {
  it.each([
    ['a small machine that cannot drop', { seat: [-10, 60] as const, opening: 170 }, ['seat-too-low']],
    ['one that cannot reverse', { reversing: false }, ['not-reversing']],
    ['one spindle too short', { long: 38 }, ['spindle-too-short']],
    ['marks below every speed', { speeds: [7500, 9500] }, ['no-allowed-speed']],
  ])('%s', (_, change, codes) => {
    const { plan } = compare(withMachine(change));
    const said = new Set(plan.ways.flatMap(({ against }) => against));
    for (const code of codes) expect([...said]).toContain(code);
    for (const way of plan.ways)
      expect(way.problems.filter(({ severity }) => severity === 'error').length).toBeGreaterThanOrEqual(
        way.works ? 0 : 1,
      );
  });

  it('drawn at random: every figure and every reason agrees with the second working', () => {
    const random = new Random(2031);
    let [working, stacks] = [0, 0];
    for (let n = 0; n < 24; n++) {
      const found = compare(drawShop(random));
      working += found.working;
      stacks += Number(found.stacked);
    }
    expect(working).toBeGreaterThan(24);
    expect(stacks).toBeLessThan(24);
  });

  it('with both heads at once wherever they work', () => {
    const stacking: Drawn = {
      ...ABLE,
      machines: { m0: { ...ABLE.machines.m0!, speeds: [4500, 6000, 7000], long: 130, power: 6 } },
      heads: [ABLE.heads[0], { ...ABLE.heads[1], d: 112 }, ABLE.heads[2]],
      ground: [ABLE.ground[0], { run: 'over', rotation: 'counterclockwise' }],
    };
    expect(compare(stacking).stacked).toBe(true);
    for (const change of [{ long: 80 }, { speeds: [6000] }, { power: 1 }, { seat: [-20, 90] as const }])
      expect(compare({ ...stacking, machines: { m0: { ...stacking.machines.m0!, ...change } } }).stacked).toBe(false);
  });

  it('relaxing a limit never takes a way away, nor both heads at once', () => {
    const random = new Random(77);
    const keys = (plan: Plan) =>
      plan.ways
        .filter(({ works }) => works)
        .map(({ cut, machine, run, rotation }) => `${cut} ${machine} ${run} ${rotation}`);
    let stacks = 0;
    for (let n = 0; n < 7; n++) {
      const drawn = n % 2 === 0 ? stackable(random) : drawShop(random);
      const before = planned(jobOf(drawn)).plan;
      stacks += Number(before.stack!.works);
      for (const relax of RELAX) {
        const machines = Object.fromEntries(Object.entries(drawn.machines).map(([name, m]) => [name, relax(m)]));
        const after = planned(jobOf({ ...drawn, machines })).plan;
        expect(keys(after)).toEqual(expect.arrayContaining(keys(before)));
        if (before.stack!.works) expect(after.stack!.works).toBe(true);
      }
    }
    expect(stacks).toBeGreaterThan(1);
  });
});

describe('on edge and with a tilted spindle', () => {
  const base = jobOf(withMachine({ seat: [-90, 120], nut: 20, long: 200 }));
  const shop = base.shop!;
  const able = { ...shop.machines.m0!, tallFence: true, tilt: [-0.8, 0.8] as const };
  const bevel = { shape: 'bevel', reach: 30, depth: 8, land: 0, shoulder: 0, balance: 0.5 } as const;
  const setUpOf = (tilt: number, run: Run) => {
    const knives = {
      k0: { ...shop.knives.k0!, profile: bevel, groundFor: { run, rotation: 'counterclockwise' as const } },
    };
    const cut = { ...base.cuts[0]!, profile: bevel, depth: 8, reach: 30, tilt, run };
    const { plan } = planned({ ...base, cuts: [cut], shop: { ...shop, knives, machines: { m0: able } } });
    return plan.setups.find(({ cut: name }) => name === 'front')!;
  };

  it('on edge depth and reach change places: the fence sets the one, the spindle the other', () => {
    expect(setUpOf(Math.PI / 2, 'under')).toMatchObject({
      cuttingPoint: 30,
      seat: 30 + 1.5 - 40,
      fence: {
        toAxis: 80 - 8,
        standsOut: 8,
        gap: expect.closeTo(2 * Math.sqrt(8 * (160 - 8)) + 6, 9),
        bar: { from: 30, to: null },
      },
    });
  });

  it.each([
    ['under', 0.2],
    ['under', 0.6],
    ['over', 0.3],
  ] as const)(
    '%s the stock, tilted %d rad: the cutting circle, the seat and the gap, by points of the cut',
    (run, tilt) => {
      const { fence, seat } = setUpOf(tilt, run);
      // In the plane across the feed: x in from the fence, z up from the table. Under the stock the spindle's top leans away from it.
      const lean = run === 'under' ? -Math.sin(tilt) : Math.sin(tilt);
      const along = ([x, z]: readonly [number, number]) => (x + fence.toAxis) * lean + z * Math.cos(tilt);
      const off = ([x, z]: readonly [number, number]) => Math.abs((x + fence.toAxis) * Math.cos(tilt) - z * lean);
      // A bevel from 8 deep at the edge to nothing 30 in.
      const points = Array.from({ length: 3001 }, (_, i) => {
        const a = (30 * i) / 3000;
        const b = 8 - (8 * a) / 30;
        return [a, run === 'under' ? b : T - b] as const;
      });
      expect(Math.max(...points.map(off))).toBeCloseTo(80, 3);
      const station = along([0, run === 'under' ? 8 : T - 8]);
      expect(seat).toBeCloseTo(run === 'under' ? station + 1.5 - 40 : station - 1.5, 6);
      // Where the turning knives pass the fence's line, x = 0: as far each way as their radius at that height leaves.
      const radii = points.map((p) => ({ u: along(p), r: off(p) })).sort((p, q) => p.u - q.u);
      const widest = radii.map(({ u, r }) => {
        // The place on the fence's line at the same station of the spindle.
        const z = (u - fence.toAxis * lean) / Math.cos(tilt);
        return 2 * Math.sqrt(Math.max(0, r * r - off([0, z]) ** 2));
      });
      expect(fence.gap - 6).toBeCloseTo(Math.max(...widest), 1);
    },
  );
});

it('plans four cuts on four machines in a shop of ten heads within 5 ms', () => {
  const job = jobOf(ABLE);
  const shop = job.shop!;
  const times = (count: number, of: object) =>
    Object.fromEntries(Array.from({ length: count }, (_, k) => [`n${k}`, { ...of }]));
  const cuts = [3, 4, 5, 6].map((depth, k) => {
    const { knife: _, ...cut } = job.cuts[k % 2]!;
    return { ...cut, name: `c${k}`, head: `n${k}`, depth };
  });
  const machines = times(4, shop.machines.m0!) as typeof shop.machines;
  const heads = times(10, shop.heads.h0!) as typeof shop.heads;
  const prepared = prepareJob({ ...job, cuts, shop: { ...shop, machines, heads: { ...heads, h2: shop.heads.h2! } } });
  expect(leastProcessorTime(() => answerPlan(prepared), 5, 100)).toBeLessThan(5);
});

/** A shop whose two heads go together, its machine's limits drawn. */
function stackable(random: Random): Drawn {
  const machine = {
    ...ABLE.machines.m0!,
    speeds: [6900, 7000],
    long: random.between(84, 130),
    power: random.between(4, 9),
  };
  return {
    ...ABLE,
    machines: { m0: machine },
    heads: [ABLE.heads[0], { ...ABLE.heads[1], d: 112 }, ABLE.heads[2]],
    ground: [ABLE.ground[0], { run: 'over', rotation: 'counterclockwise' }],
  };
}

/** Ways of giving a machine more room. */
const RELAX: readonly ((m: OracleMachine) => OracleMachine)[] = [
  (m) => ({ ...m, seat: [m.seat[0] - 30, m.seat[1] + 30] }),
  (m) => ({ ...m, opening: m.opening + 60 }),
  (m) => ({ ...m, nut: 20 }),
  (m) => ({ ...m, reversing: true }),
  ({ long: _, ...m }) => m,
  ({ fenceGap: _, ...m }) => m,
  ({ power: _, ...m }) => m,
  ({ spindle: _, ...m }) => m,
  (m) => ({ ...m, speeds: [...m.speeds, 4000, 5500] }),
];
