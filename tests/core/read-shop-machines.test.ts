// What a shop file says of machines, heads, knives and rules for setting up, and what it is refused for.
import { expect, it } from 'vitest';
import { readShop } from '../../packages/core/src/reading/read.ts';

const SHOP = `
fielded: 1
knives:
  ogee: { shape: ogee, reach: 38, depth: 9, head: raiser, presented: on-edge, fromFace: -0.5, sideRelief: 3 }
heads:
  raiser: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, rake: 18, maxSpeed: 8000, minSpeed: 4500, bore: 30, jointed: true, slots: [under, over] }
machines:
  main: { speeds: [3000, 6000], seat: [-70, 90], opening: 220, nutDiameter: 48, rings: [170, 220], spindle: 30, spindleLength: 110, power: 4, fenceGap: 200, tilt: [-5, 45] }
rules: { kerf: 3.2, leastEndGrainWidth: 300, greatestBlankWidth: 600 }
`;

const faultsOf = (from: string, to: string) => {
  expect(SHOP).toContain(from);
  return readShop(SHOP.replace(from, to)).faults.map(({ code, message }) => `${code} ${message}`);
};

it('reads every key for setting up, lengths in mm and angles in radians', () => {
  const { shop, faults } = readShop(SHOP);
  expect(faults).toEqual([]);
  expect(shop?.heads.raiser).toMatchObject({ bore: 30, minSpeed: 4500, jointed: true, slots: ['under', 'over'] });
  expect(shop?.machines.main).toMatchObject({ rings: [170, 220], spindle: 30, spindleLength: 110, power: 4 });
  expect(shop?.machines.main?.tilt[1]).toBeCloseTo(Math.PI / 4, 12);
  expect(shop?.knives.ogee).toMatchObject({ fromFace: -0.5, presented: Math.PI / 2 });
  expect(shop?.rules).toMatchObject({ knifeMark: 1.27, fenceClearance: 3, cuttingEnergy: 40, lastPass: 1.6 });
});

it('keeps the defaults in millimetres in a file of inches, and closes a table without rings to its opening', () => {
  const { shop } = readShop(`fielded: 1
units: in
machines: { m: { speeds: [3000], seat: [-1, 3], opening: 7, nutDiameter: 2 } }
`);
  expect(shop?.rules).toMatchObject({ lastPass: 1.6, overLength: 25, leastTongue: 3 });
  expect(shop?.machines.m).toMatchObject({ rings: [177.8], tilt: [0, 0] });
});

it.each([
  [
    'a seat upside down',
    'seat: [-70, 90]',
    'seat: [90, -70]',
    'out-of-order machines.main.seat runs from 90 mm down to',
  ],
  [
    'a tilt the wrong way round',
    'tilt: [-5, 45]',
    'tilt: [45, -5]',
    'out-of-order machines.main.tilt runs from 45° down to -5°',
  ],
  [
    'a least speed above the greatest',
    'minSpeed: 4500',
    'minSpeed: 9000',
    'out-of-order heads.raiser.minSpeed runs from 9000 down to 8000',
  ],
  [
    'a ring larger than the opening',
    '[170, 220]',
    '[170, 250]',
    'ring-past-opening machines.main.rings[1]: a ring with a hole of 250 mm',
  ],
  ['no rings at all', 'rings: [170, 220]', 'rings: []', 'empty-value machines.main.rings is an empty list'],
  [
    'a speed with its unit',
    'speeds: [3000, 6000]',
    'speeds: [3000 rpm, 6000]',
    'wrong-type machines.main.speeds[0]: 3000 rpm is text, not a number. Write a speed above 0, at most 100000, as a figure alone: 3000.',
  ],
  [
    'a power with a decimal comma',
    'power: 4',
    'power: "4,5"',
    'wrong-type machines.main.power: 4,5 is text, not a number. Write a power above 0, at most 1000, as a figure alone: 4.5.',
  ],
  [
    'a power in another unit',
    'power: 4',
    'power: 5 hp',
    'wrong-type machines.main.power: 5 hp is text, not a number. Write a power above 0, at most 1000.',
  ],
  ['a machine without speeds', 'speeds: [3000, 6000], ', '', 'missing-key machines.main.speeds is missing'],
  ['an empty list of speeds', '[3000, 6000]', '[]', 'empty-value machines.main.speeds is an empty list'],
  [
    'a spindle thicker than its nut',
    'spindle: 30,',
    'spindle: 50,',
    'nut-within-spindle machines.main.nutDiameter: a nut 48 mm',
  ],
  ['a bore wider than the body', 'bore: 30', 'bore: 80', 'head-bore heads.raiser.bore: a bore of 80 mm'],
  [
    'a knife past its head',
    'fromFace: -0.5',
    'fromFace: 55',
    'from-face-past-head knives.ogee.fromFace: 55 mm from the face is past the other end',
  ],
  [
    'blanks narrower than the least width',
    'greatestBlankWidth: 600',
    'greatestBlankWidth: 200',
    'out-of-order rules: greatestBlankWidth',
  ],
  ['a yield of more than all', 'kerf: 3.2', 'yield: 1.2', 'out-of-range rules.yield: 1.2 is too big'],
  ['a slot for neither run', '[under, over]', '[beside]', 'unknown-choice heads.raiser.slots[0]'],
])('refuses %s, and says what to write', (_, from, to, said) => {
  const faults = faultsOf(from, to);
  expect(faults).toHaveLength(1);
  expect(faults[0]!.startsWith(said), faults[0]).toBe(true);
  expect(faults[0]).toMatch(/\. (Write|Add|Did you|Measure) /);
});
