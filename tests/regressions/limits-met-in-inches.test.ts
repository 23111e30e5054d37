// Fractions of an inch that come to a limit exactly miss it by 1e-13 mm in binary arithmetic, one way or the other: they meet it all the same.
import { evaluate, makeCuttingList, readJob } from '@fielded/core';
import { expect, it } from 'vitest';

interface Asked {
  readonly doors: readonly object[];
  readonly rules?: object;
  readonly gap?: number;
  readonly profile?: object;
}

const EIGHTHS = Array.from({ length: 16 }, (_, k) => 20.125 + k / 4);

function reportOf({ doors, rules = {}, gap = 1 / 16, profile }: Asked) {
  const data = {
    fielded: 1,
    units: 'in',
    shop: 'shop.yaml',
    panel: { thickness: 3 / 4, species: 'black cherry' },
    frame: { thickness: 7 / 8, groove: { width: 1 / 4, depth: 7 / 16, setback: 9 / 32 }, swellGap: gap },
    season: { made: 8, driest: 8, dampest: 10 },
    cuts: [{ name: 'raise', side: 'front', profile: profile ?? { shape: 'rebate', reach: 1, depth: 1 / 4 } }],
    doors,
  };
  const shop = { fielded: 1, units: 'in', rules };
  const { job, faults } = readJob(JSON.stringify(data), { loadShop: () => JSON.stringify(shop) });
  expect(faults).toEqual([]);
  return evaluate(job!);
}

const codesOf = (asked: Asked) => reportOf(asked).problems.map(({ code }) => code);

it('panels of one length in odd eighths, which lie between two hundredths of a millimetre, ride in one blank and make one row', () => {
  const split = EIGHTHS.filter((height) => {
    const doors = [
      { name: 'a', width: 9, height, stile: 2.25, rail: 2.125, quantity: 2 },
      { name: 'b', width: 9, height: height + 0.5, stile: 2.25, rail: 2.375 },
    ];
    const { blanks, leftOver, ...report } = reportOf({ doors });
    const { panels, parts } = makeCuttingList([{ ...report, title: 'a job' }]);
    const stiles = parts.filter(({ part }) => part === 'stile');
    return blanks!.length !== 1 || leftOver!.length > 0 || panels.length !== 1 || stiles.length !== 2;
  });
  expect(split).toEqual([]);
});

it('a panel just as wide as the least that is run on its end grain is not narrow', () => {
  const narrow = EIGHTHS.filter((width) => {
    const door = { name: 'a', width: width - 3 / 4 + 4.25, height: 30, stile: 2.125, rail: 2 };
    return codesOf({ doors: [door], rules: { leastEndGrainWidth: width, greatestBlankWidth: 40 } }).includes(
      'too-narrow-for-end-grain',
    );
  });
  expect(narrow).toEqual([]);
});

it('a tongue that goes in as far as asked, and one as thick as asked, are enough', () => {
  const sixteenths = [1, 2, 3, 4, 5, 6].map((k) => k / 16);
  const doors = [{ name: 'a', width: 20, height: 30, stile: 2, rail: 2 }];
  const little = sixteenths.filter((gap) =>
    codesOf({ doors, gap, rules: { leastEngagement: 7 / 16 - gap } }).includes('little-engagement'),
  );
  const feather = [9, 17, 23, 31, 33, 37, 41, 43].filter((k) =>
    codesOf({
      doors,
      profile: { shape: 'rebate', reach: 1, depth: k / 64 },
      rules: { leastTongue: (48 - k) / 64 },
    }).includes('feather-edge'),
  );
  expect([little, feather]).toEqual([[], []]);
});

it('raises that take the whole panel leave no field of 1e-14 mm', () => {
  const fields = EIGHTHS.flatMap((width) => {
    const reach = (width - 3.5) / 2;
    const doors = [{ name: 'a', width, height: 60, stile: 2.125, rail: 2 }];
    return reportOf({ doors, profile: { shape: 'rebate', reach, depth: 1 / 4 } }).doors![0]!.panels[0]!.field ?? [];
  });
  expect(fields).toEqual([]);
});

it('a groove that ends at the back of its frame is read, in tenths and in 64ths', () => {
  const refused = [10, 25.4 / 64].flatMap((unit) =>
    EIGHTHS.flatMap((_, k) => {
      const [setback, width] = unit === 10 ? [(37 + k) / 10, 2.6] : [(39 + k) / 64, 28 / 64];
      const thickness = unit === 10 ? (63 + k) / 10 : (67 + k) / 64;
      const data = {
        fielded: 1,
        units: unit === 10 ? 'mm' : 'in',
        panel: { thickness },
        frame: { thickness, groove: { width, depth: width, setback }, swellGap: 0 },
        cuts: [{ side: 'front', profile: { shape: 'rebate', reach: 1, depth: width } }],
      };
      return readJob(JSON.stringify(data)).faults;
    }),
  );
  expect(refused).toEqual([]);
});

it('half a circle may stand over an opening, and a cathedral with no flats beside it', () => {
  const left = EIGHTHS.flatMap((width) =>
    [
      { shape: 'arch', rise: width / 2 },
      { shape: 'cathedral', rise: width / 2, crown: width / 4 + 1 / 16, ears: width / 4 - 1 / 16 },
    ].map((head) => {
      const { doors } = reportOf({ doors: [{ name: 'a', width: width + 4, height: 60, stile: 2, rail: 2, head }] });
      const { panelEdge, field } = doors![0]!.head!.paths;
      return `${panelEdge} ${field}`;
    }),
  );
  expect(left.filter((paths) => /NaN|null/.test(paths))).toEqual([]);
});

/** A rebate that ends just where the panel's edge goes in to, in a head whose body it just touches: 64ths that leave nothing to spare. */
function reportAtItsEnd(k: number) {
  const [depth, gap] = [(28 + k) / 64, (3 + (k % 5)) / 64];
  const data = {
    fielded: 1,
    units: 'in',
    shop: 'shop.yaml',
    panel: { thickness: 3 / 4 },
    frame: { thickness: 7 / 8, groove: { width: 1 / 4, depth, setback: 9 / 32 }, swellGap: gap, endGap: gap - 1 / 64 },
    cuts: [
      { side: 'front', profile: { shape: 'rebate', reach: depth - gap, depth: 1 / 4 }, head: 'h' },
      { side: 'back', profile: { shape: 'rebate', reach: 1, depth: 17 / 64 } },
    ],
    doors: [{ name: 'a', width: 20, height: 30, stile: 2, rail: 2 }],
  };
  const body = 5 - 2 * (depth - gap);
  const head = { cuttingDiameter: 5, bodyDiameter: body, height: 2, rake: 0, wedge: 80, maxSpeed: 8000 };
  const shop = { fielded: 1, units: 'in', heads: { h: head } };
  const { job } = readJob(JSON.stringify(data), { loadShop: () => JSON.stringify(shop) });
  return evaluate(job!);
}

it('a cut that ends at the sight edge shows nothing, ends that go in further stop, and a body that is touched is met', () => {
  const said = Array.from({ length: 8 }, (_, k) => {
    const { problems, knives } = reportAtItsEnd(k);
    const codes = [...problems, ...knives!.flatMap(({ warnings }) => warnings)].map(({ code }) => code);
    return ['raise-hidden', 'ends-stop-short', 'edge-meets-body', 'little-clearance'].filter((code) =>
      (codes as string[]).includes(code),
    );
  });
  // 90° less no rake and a wedge of 80° are the 10° that the shop asks for.
  expect(said).toEqual(said.map(() => ['raise-hidden', 'ends-stop-short', 'edge-meets-body']));
});

it('a knife whose land the fence sets back to nothing has no wall of no length, with a clearance that is no number', () => {
  const walls = Array.from({ length: 8 }, (_, k) => {
    const land = (k + 5) / 100;
    const data = {
      fielded: 1,
      units: 'in',
      shop: 'shop.yaml',
      panel: { thickness: 0.94 },
      frame: { thickness: 0.94, groove: { width: 0.32, depth: 0.42, setback: 0.26 }, swellGap: 0 },
      cuts: [{ side: 'front', knife: 'k', reach: 0.44 }],
    };
    const knives = { k: { shape: 'ogee', reach: 0.44 + land, depth: 0.3, land, shoulder: 0.04, head: 'h' } };
    const head = { cuttingDiameter: 7.48, bodyDiameter: 4.4, height: 0.48, rake: 15, wedge: 60, maxSpeed: 7000 };
    const shop = { fielded: 1, units: 'in', heads: { h: head }, knives };
    const { job } = readJob(JSON.stringify(data), { loadShop: () => JSON.stringify(shop) });
    return evaluate(job!).knives![0]!.walls;
  });
  expect(walls.flat().filter(({ sideClearance }) => !Number.isFinite(sideClearance))).toEqual([]);
  expect(walls.every(({ length }) => length === 2)).toBe(true);
});
