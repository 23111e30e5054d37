// Both rotations of a shaped head: which half is cut with the grain by which knife, on what it runs, and what a ring fence falls short.
// Hands: turning a head over keeps its knives' hand (truth table of run and rotation in shaper makers' manuals), so that the same
// shoulder tears; the other half needs a knife of the other hand, as the two heads of a double spindle moulder are (common practice).
import { answerPlan, evaluate, prepareJob, readJob, sayCurve, sayStep } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { chooseGuide } from '../../packages/core/src/door/guide.ts';
import { tornShoulder } from '../../packages/core/src/door/shaped-head-report.ts';
import { planned, shopJob } from '../support/plans.ts';

interface Changes {
  readonly machine?: string;
  readonly own?: string;
  readonly left?: string;
  readonly leftHead?: string;
  readonly raiser?: string;
  readonly head?: string;
  readonly cut?: string;
}

const LEFT = 'groundFor: { run: under, rotation: clockwise }';

function jobOf(changes: Changes = {}) {
  const {
    machine = 'reversing: true',
    own = '',
    left = LEFT,
    leftHead = 'raiser',
    raiser = '',
    head,
    cut = '',
  } = changes;
  const shop = `fielded: 1
knives:
  ogee: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5, head: raiser, fromFace: 3, groundFor: { run: under, rotation: counterclockwise }${own} }
  ${left === '' ? '' : `ogee-left: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5, head: ${leftHead}, fromFace: 3, ${left} }`}
heads: { raiser: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, rake: 15, maxSpeed: 7000 ${raiser} }, other: { cuttingDiameter: 150, bodyDiameter: 70, height: 40, rake: 25, maxSpeed: 7000 } }
machines: { main: { speeds: [3000, 6000], seat: [-70, 90], opening: 220, nutDiameter: 48, feeds: [4, 8], ${machine} } }
`;
  const read = readJob(
    `fielded: 1
shop: shop.yaml
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 11.2, depth: 11, setback: 9 }, swellGap: 2 }
cuts: [{ name: raise, side: front, knife: ogee ${cut} }]
doors: [{ name: A, width: 520, height: 900, stile: 60, rail: 75, head: ${head ?? '{ shape: cathedral, rise: 60, crown: 120, ears: 80 }'} }]
`,
    { loadShop: () => shop },
  );
  if (read.job === null) throw new Error(read.faults.map(({ message }) => message).join('\n'));
  return read.job;
}

const planOf = (changes: Changes = {}) => answerPlan(prepareJob(jobOf(changes)))!;

describe('the second rotation', () => {
  it('is a set-up of its own with the knife of the other hand, for the other half', () => {
    const { plan, problems } = planOf();
    expect(
      plan.setups.map(({ cut, knife, run, rotation, curve }) => [cut, knife, run, rotation, curve?.shoulder]),
    ).toEqual([
      ['raise', 'ogee', 'under', 'counterclockwise', 'right'],
      ['raise', 'ogee-left', 'under', 'clockwise', 'left'],
    ]);
    const [first, second] = plan.setups;
    // Each runs the half that its rotation does not tear.
    for (const { side, run, rotation, curve } of [first!, second!])
      expect(tornShoulder({ side, run }, rotation)).not.toBe(curve!.shoulder);
    expect(second).toMatchObject({ feedDirection: 'left to right', turnedOver: false, feedBy: 'hand' });
    expect(first!.curve!.alone).toBe(false);
    expect(second!.curve!.alone).toBe(true);
    expect(second!.fence.bar).toBeNull();
    expect(problems.map(({ code }) => code)).not.toContain('one-rotation');
    expect(plan.setUpCount).toBe(2);
    expect(plan.correction).toHaveLength(2);
  });

  it('stands in the order of work after the straight sides and the first half', () => {
    const { plan } = planOf();
    const steps = plan.steps.map(({ kind, setUp, shoulder }) => [kind, setUp, shoulder]);
    const heads = steps.filter(([kind]) => kind === 'run-heads');
    expect(heads).toEqual([
      ['run-heads', 0, 'right'],
      ['run-heads', 1, 'left'],
    ]);
    const words = plan.steps.map((step) => sayStep(step, plan, { units: 'mm' }));
    const second = words.findIndex((said) => said.includes('left half'));
    expect(second).toBeGreaterThan(words.findIndex((said) => said.includes('right half')));
    expect(words.slice(0, second).join(' ')).toContain('ogee-left');
    expect(words.join(' ')).not.toContain('turned over and the other rotation');
  });

  it('is run above the stock, head turned over, where the machine turns one way only', () => {
    const { plan } = planOf({ machine: 'reversing: false' });
    expect(plan.setups[1]).toMatchObject({
      run: 'over',
      rotation: 'counterclockwise',
      turnedOver: true,
      knife: 'ogee-left',
    });
    expect(plan.setups[1]!.curve!.shoulder).toBe('left');
  });

  it.each([
    ['no other knife', { left: '' }],
    ['another knife of the same hand', { left: 'groundFor: { run: over, rotation: clockwise }' }],
    ['a knife whose hand nobody said', { left: 'kept: rack' }],
  ])('is not planned with %s: it says which shoulder tears and which knife would do', (_, changes) => {
    const { plan, problems } = planOf(changes);
    expect(plan.setups).toHaveLength(1);
    expect(plan.setups[0]!.curve).toMatchObject({ shoulder: 'both', tears: 'left' });
    const [said] = problems.filter(({ code }) => code === 'one-rotation');
    expect(said!.message).toMatch(/left shoulder/);
    expect(said!.message).toMatch(/ground to run under the stock clockwise/);
    // The knife it names makes the second set-up.
    expect(planOf().plan.setups).toHaveLength(2);
  });

  it('takes an outline off the steel for the same section in the same head alone', () => {
    const steel = { own: ', measured: knife', left: `${LEFT}, measured: knife` };
    expect(planOf(steel).plan.setups.map(({ knife }) => knife)).toEqual(['ogee', 'ogee-left']);
    expect(planOf({ ...steel, leftHead: 'other' }).plan.setups).toHaveLength(1);
    // The section that a knife leaves is the same in any head; steel and section are not.
    expect(planOf({ leftHead: 'other' }).plan.setups).toHaveLength(2);
    expect(planOf({ left: `${LEFT}, measured: knife` }).plan.setups).toHaveLength(1);
  });

  it('leaves a head run all round before the long edges, which take away what breaks out at its end', () => {
    const kinds = planOf({ left: '' }).plan.steps.map(({ kind }) => kind);
    expect(kinds.indexOf('run-heads')).toBeGreaterThan(kinds.indexOf('run-ends'));
    expect(kinds.indexOf('run-heads')).toBeLessThan(kinds.indexOf('run-edges'));
    const halves = planOf().plan.steps.map(({ kind }) => kind);
    expect(halves.indexOf('run-heads')).toBeGreaterThan(halves.indexOf('run-edges'));
  });

  it('is not planned for a door without a shaped head', () => {
    const job = jobOf();
    const plain = { ...job, doors: job.doors.map(({ head: _, ...door }) => door) };
    const { plan, problems } = answerPlan(prepareJob(plain))!;
    expect(plan.setups).toHaveLength(1);
    expect(plan.setups[0]).not.toHaveProperty('curve');
    expect(problems.map(({ code }) => code)).not.toContain('one-rotation');
  });

  it('is refused for a tool that is marked for mechanical feed, since curves are fed by hand', () => {
    const { plan, problems } = planOf({ raiser: ', feed: mechanical' });
    expect(plan.setups).toHaveLength(1);
    expect(problems.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toEqual([
      'curve-fed-by-hand',
    ]);
  });
});

describe('what a curved edge runs on', () => {
  it('is the bearing of R − ρ, another with a template, or a ring fence that falls short beside its mark', () => {
    // R 80, ρ 38: 84 in diameter. Ring of 90 radius: e 48, short 0.182 654, 0.729 228, 2.894 754 mm at 5°, 10° and 20°.
    const cutter = { cuttingRadius: 80, reach: 38 };
    expect(chooseGuide(cutter, null, { bearings: [70, 84, 100] }).bearing).toEqual({
      needed: 84,
      available: 84,
      outside: 0,
    });
    expect(chooseGuide(cutter, null, { bearings: [70, 110] }).bearing).toEqual({
      needed: 84,
      available: 70,
      outside: 7,
    });
    expect(chooseGuide(cutter, null, { bearings: [90] }).bearing.outside).toBeCloseTo(-3, 12);
    expect(chooseGuide(cutter, null, {}).bearing).toEqual({ needed: 84, available: null, outside: null });
    const { ring } = chooseGuide(cutter, null, { ringFences: [240, 180, 60] });
    expect(ring!.diameter).toBe(180);
    expect(ring!.setOff).toBeCloseTo(48, 12);
    expect(ring!.short.map(({ angle, short }) => [angle, short.toFixed(6)])).toEqual([
      [5, '0.182654'],
      [10, '0.729228'],
      [20, '2.894754'],
    ]);
    // Independent: the chord's end on the ring, its distance from the axis 48 mm in front of the ring's centre.
    const within = ring!.within!;
    const theta = (within.angle * Math.PI) / 180;
    expect(80 - (90 - 48 * Math.cos(theta))).toBeCloseTo(38 - within.short, 9);
    expect(within.along).toBeCloseTo(90 * theta, 9);
    // A hollow of 71 lets no ring of 90 in.
    expect(chooseGuide(cutter, 71, { ringFences: [180] }).ring).toBeNull();
    expect(chooseGuide(cutter, 91, { ringFences: [180] }).ring).not.toBeNull();
  });

  it('is in the set-up, in the report of the door and in words', () => {
    const machine = 'reversing: true, bearings: [84], ringFences: [180]';
    const job = jobOf({ machine, head: '{ shape: arch, rise: 60 }' });
    const { plan, problems } = answerPlan(prepareJob(job))!;
    const { curve } = plan.setups[0]!;
    expect(curve!.guide.bearing).toEqual({ needed: 84, available: 84, outside: 0 });
    expect(curve!.guide.ring!.diameter).toBe(180);
    expect(plan.setups[0]!.notChecked).not.toContain('machines.main.bearings');
    expect(problems.map(({ code }) => code)).not.toContain('ring-falls-short');
    const [door] = evaluate(job).doors!;
    expect(door!.head!.guides).toEqual([{ cut: 'raise', machine: 'main', ...curve!.guide }]);
    const said = sayCurve(plan.setups[0]!, { units: 'mm' }).join(' ');
    expect(said).toContain('Bearing of 84 mm, on the panel itself');
    expect(said).toContain('0.18 mm');
    expect(said).toContain('2.89 mm');
  });

  it.each([
    ['only a ring fence: its shortfall is a warning', 'ringFences: [180]', 'ring-falls-short', '0.73 mm at 10°'],
    ['nothing that serves', 'bearings: [], ringFences: [60]', 'no-guide', '84 mm'],
  ])('%s', (_, keys, code, words) => {
    const { problems } = planOf({ machine: keys, head: '{ shape: arch, rise: 60 }' });
    expect(problems.find((each) => each.code === code)?.message).toContain(words);
  });

  it('is listed as not checked where the shop does not say', () => {
    expect(planOf().plan.setups[0]!.notChecked).toContain('machines.main.bearings');
  });

  it('follows a template where the bearing is another', () => {
    const { plan } = planOf({ machine: 'bearings: [70]' });
    expect(sayCurve(plan.setups[0]!, { units: 'mm' }).join(' ')).toContain('template 7 mm outside');
  });
});

describe('both heads at once on a shaped head', () => {
  const DOORS =
    '[{ name: A, width: 520, height: 900, stile: 60, rail: 75, head: { shape: cathedral, rise: 60, crown: 120, ears: 80 } }]';
  const MACHINES =
    '{ main: { speeds: [7000], seat: [-70, 90], opening: 220, nutDiameter: 48, spindleLength: 110, power: 5.5, reversing: true, bearings: [84] } }';
  const COVE = 'fromFace: 1.2, groundFor: { run: over, rotation: counterclockwise }';
  const stacked = (others: readonly ('ogee' | 'cove')[]) => {
    const given = shopJob({ cove: COVE, run: 'over', machines: MACHINES, doors: DOORS });
    const { knives, heads } = given.shop!;
    const shop = {
      ...given.shop!,
      heads: { ...heads, small: { ...heads.small!, cuttingDiameter: 112 } },
      knives: {
        ...knives,
        ...Object.fromEntries(
          others.map((name) => {
            const { run } = knives[name]!.groundFor!;
            return [`${name}-left`, { ...knives[name]!, groundFor: { run, rotation: 'clockwise' as const } }];
          }),
        ),
      },
    };
    return planned({ ...given, shop });
  };
  const headsOf = ({ plan }: ReturnType<typeof stacked>) =>
    plan.steps.filter(({ kind }) => kind === 'run-heads').map(({ cuts, shoulder }) => [cuts.join('+'), shoulder]);

  it('runs one half of it with both, and the other with each knife of the other hand', () => {
    const done = stacked(['ogee', 'cove']);
    expect(done.plan.stack!.works).toBe(true);
    expect(headsOf(done)).toEqual([
      ['raise+cove', 'right'],
      ['raise', 'left'],
      ['cove', 'left'],
    ]);
    // One bearing serves both: the heads are chosen so that the same fence does.
    expect(done.plan.setups.slice(0, 2).map(({ curve }) => curve!.guide.bearing.needed)).toEqual([84, 84]);
  });

  it('runs all of it with both where only one of them can turn back', () => {
    const done = stacked(['ogee']);
    expect(headsOf(done)).toEqual([['raise+cove', 'both']]);
    expect(done.problems.filter(({ code }) => code === 'one-rotation')).toHaveLength(2);
  });
});
