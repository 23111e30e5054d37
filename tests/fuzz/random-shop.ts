import type { Random } from '../support/random.ts';

const perhaps = <T>(random: Random, share: number, value: () => T): T | undefined =>
  random.unit() < share ? value() : undefined;

const SPEEDS = [1500, 3000, 4500, 6000, 7500, 9000, 10_000];

/** Machines that cannot drop, reverse, open or turn fast enough at times; figures that nobody gave at others. */
export function randomMachine(random: Random): Record<string, unknown> {
  const opening = random.between(90, 260);
  const spindle = perhaps(random, 0.6, () => random.oneOf([30, 35, 40, 50]));
  return {
    speeds: SPEEDS.filter(() => random.unit() < 0.5).concat(random.unit() < 0.9 ? 6000 : 12_000),
    seat: random.oneOf([
      [-70, 90],
      [-25, 60],
      [0, 100],
      [-random.between(0, 80), random.between(0, 100)],
    ]),
    opening,
    rings: perhaps(random, 0.5, () => [opening * 0.6, opening * 0.8]),
    nutDiameter: spindle === undefined ? random.between(30, 60) : spindle + random.between(0, 20),
    reversing: random.unit() < 0.5,
    feeds: random.oneOf([[], [4, 8, 12], [2.5], [random.between(1, 30)]]),
    spindle,
    spindleLength: perhaps(random, 0.6, () => random.between(30, 180)),
    power: perhaps(random, 0.6, () => random.between(0.5, 8)),
    fenceGap: perhaps(random, 0.6, () => random.between(60, 200)),
    tallFence: perhaps(random, 0.5, () => random.unit() < 0.5),
    tilt: perhaps(random, 0.4, () =>
      random.oneOf([
        [0, 45],
        [-45, 45],
        [-5, 30],
      ]),
    ),
  };
}

export function randomHead(random: Random): Record<string, unknown> {
  const cuttingDiameter = random.oneOf([100, 120, 160, random.between(60, 240)]);
  const bodyDiameter = cuttingDiameter * random.between(0.3, 0.85);
  return {
    cuttingDiameter,
    bodyDiameter,
    height: random.between(20, 80),
    rake: random.between(0, 30),
    shear: perhaps(random, 0.3, () => random.between(-25, 25)),
    knives: random.oneOf([1, 2, 3, 4]),
    jointed: perhaps(random, 0.3, () => true),
    maxSpeed: random.between(4000, 12_000),
    minSpeed: perhaps(random, 0.2, () => random.between(1000, 4000)),
    bore: perhaps(random, 0.5, () => Math.min(random.oneOf([30, 35, 40, 50]), bodyDiameter * 0.9)),
    feed: perhaps(random, 0.4, () => random.oneOf(['hand', 'mechanical'])),
    slots: perhaps(random, 0.3, () => random.oneOf([['under'], ['over'], ['under', 'over']])),
  };
}

/** A raise or a back cut of a named shape, as a knife has it. */
function randomShape(random: Random, deepest: number): Record<string, unknown> {
  const depth = random.between(1, deepest);
  const land = random.unit() < 0.5 ? 0 : random.between(0, 12);
  return {
    shape: random.oneOf(['bevel', 'cove', 'ovolo', 'ogee']),
    reach: land + depth + random.between(0, 25),
    depth,
    land,
  };
}

export function randomKnife(
  random: Random,
  head: string,
  deepest: number,
  presented: unknown,
): Record<string, unknown> {
  return {
    ...randomShape(random, deepest),
    head,
    groundFor: perhaps(random, 0.7, () => ({
      run: random.oneOf(['under', 'over']),
      rotation: random.oneOf(['clockwise', 'counterclockwise']),
    })),
    fromFace: perhaps(random, 0.8, () => random.between(-3, 15)),
    presented: perhaps(random, 0.4, () => (random.unit() < 0.8 ? presented : random.oneOf(['flat', 'on-edge', 30]))),
  };
}
