import { evaluate, type Problem, readJob, readShop, reportShopKnives, sampleBoard } from '@fielded/core';
import { describe, expect, it } from 'vitest';

/** A shop of one head, with some of its figures replaced. */
function shopText(changes: Record<string, string | number> = {}, more = ''): string {
  const head: Record<string, string | number> = {
    cuttingDiameter: 160,
    bodyDiameter: 70,
    height: 40,
    rake: 18,
    wedge: 40,
    maxSpeed: 8000,
    ...changes,
  };
  const figures = Object.entries(head).map(([key, value]) => `${key}: ${value}`);
  return `fielded: 1\nheads: { raiser: { ${figures.join(', ')} } }\n${more}`;
}

function headFaults(changes: Record<string, string | number>): string[] {
  return readShop(shopText(changes)).faults.map(({ code, at, message }) => `${code} ${at}: ${message}`);
}

const bevel = (reach: number, depth = 9) => `profile: { shape: bevel, reach: ${reach}, depth: ${depth} }`;

function jobText(cut: string): string {
  return `fielded: 1
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts: [ { name: raise, side: front, ${cut} } ]`;
}

const KNIFE_CODES = [
  'face-never-reaches',
  'limiter-never-reaches',
  'limiter-gap',
  'edge-meets-body',
  'edge-meets-nut',
  'knife-wider-than-head',
  'back-rubs',
  'little-clearance',
  'heel-rubs',
  'no-side-clearance',
];

/** What is wrong with the knife of a cut; what is wrong with its fit is left to other tests. */
function knifeProblems(cut: string, shop: string): readonly Problem[] {
  const { job, faults } = readJob(jobText(cut), { shop: { text: shop, name: 'shop.yaml' } });
  expect(faults).toMatchObject([]);
  return evaluate(job!).problems.filter((p) => KNIFE_CODES.includes(p.code));
}

function readingFaults(cut: string, shop: string): string[] {
  return readJob(jobText(cut), { shop: { text: shop, name: 'shop.yaml' } }).faults.map((f) => f.message);
}

describe('a head that cannot be', () => {
  it.each([
    [
      { bodyDiameter: 160 },
      'head-body heads.raiser.bodyDiameter: heads.raiser.bodyDiameter: the body is 160 mm across and the cutting circle 160 mm: no knife would stand out of it. Write a body smaller than the cutting circle.',
    ],
    [
      { knives: 0 },
      'out-of-range heads.raiser.knives: heads.raiser.knives: 0 is too small. Write a whole number from 1 to 20.',
    ],
    [
      { rake: 60, wedge: 20 },
      "head-rake heads.raiser.rake: heads.raiser.rake: 60° of rake is past what a cutter's face can have. Write less than 60°.",
    ],
    [
      { rake: 50, wedge: 40 },
      'head-wedge heads.raiser.wedge: heads.raiser.wedge: a wedge of 40° and 50° of rake make 90°, and leave nothing of 90° for clearance behind the edge. Write a wedge less than 40°, or less rake.',
    ],
    [
      { wedge: 0 },
      'head-wedge heads.raiser.wedge: heads.raiser.wedge: a wedge of 0° leaves no steel behind the edge. Write more than 0°, such as 45°.',
    ],
    [
      { shear: 45 },
      'head-shear heads.raiser.shear: heads.raiser.shear: 45° of shear lays the knife more along its cut than across it. Write less than 45° either way.',
    ],
    [
      { shear: -50 },
      'head-shear heads.raiser.shear: heads.raiser.shear: −50° of shear lays the knife more along its cut than across it. Write less than 45° either way.',
    ],
  ])('%j', (changes, message) => {
    expect(headFaults(changes)).toMatchObject([message]);
  });

  it('is told all its faults at once', () => {
    expect(headFaults({ bodyDiameter: 200, rake: 61, shear: 50 })).toHaveLength(4);
  });

  it('just inside the limits is let pass', () => {
    expect(headFaults({ bodyDiameter: 159, rake: 59, wedge: 30, shear: 44 })).toMatchObject([]);
  });
});

describe('a name that the shop does not know', () => {
  it('is told with the nearest it knows', () => {
    expect(readingFaults(`${bevel(38)}, head: raisr`, shopText())).toMatchObject([
      'cuts[0].head: raisr is not in the shop file. Did you mean raiser? The shop file has raiser.',
    ]);
    const knives = 'knives: { ogee-38: { shape: ogee, reach: 38, depth: 9 } }';
    expect(readingFaults('knife: ogee-39', shopText({}, knives))).toMatchObject([
      'cuts[0].knife: ogee-39 is not in the shop file. Did you mean ogee-38? The shop file has ogee-38.',
    ]);
  });

  it('is asked for where the knife was measured off the steel', () => {
    const knives = 'knives: { old: { shape: cove, reach: 22, depth: 8, measured: knife } }';
    expect(readingFaults('knife: old', shopText({}, knives))).toMatchObject([
      'cuts[0].knife: old was measured off the steel, and what it cuts depends on its head. Name a head of the shop file: here, or at the knife.',
    ]);
    expect(readingFaults('knife: old, head: raiser', shopText({}, knives))).toMatchObject([]);
  });

  it('does not help steel that is longer than the face', () => {
    const knives = 'knives: { old: { shape: rebate, reach: 77, depth: 8, measured: knife, head: raiser } }';
    // √(80² − (80·sin 18°)²) less a thousandth of 80.
    expect(readingFaults('knife: old', shopText({}, knives))).toMatchObject([
      'cuts[0].knife: old was measured 77 mm long from its tip, and after 76 mm the face of the head raiser leads away from the axis again. Check its outline, or name the head it is really kept in.',
    ]);
    const { shop } = readShop(shopText({}, knives));
    expect(sampleBoard(shop!)).toMatchObject([]);
    expect(reportShopKnives(shop!)).toMatchObject({
      reports: [],
      problems: [
        {
          severity: 'error',
          code: 'steel-past-foot',
          at: 'knives.old',
          message:
            'The knife old was measured 77 mm long from its tip, and after 76 mm the face of the head raiser leads away from the axis again. Check its outline, or name the head it is really kept in.',
        },
      ],
    });
  });
});

describe('a profile that the head cannot cut', () => {
  it('a radius the face never reaches: the greatest reach that works, which does', () => {
    const shop = shopText({ rake: 30, wedge: 5 });
    expect(knifeProblems(`${bevel(60)}, head: raiser`, shop)).toMatchObject([
      {
        severity: 'error',
        code: 'face-never-reaches',
        at: 'cuts[0].head',
        message:
          'The face of the knives in the head "raiser" never reaches in to a radius of 20 mm for the raise: 30° of cutting angle on a cutting radius of 80 mm sets it 40 mm off the axis. The greatest reach that works is 39.9 mm: take less reach, less cutting angle or a larger head.',
      },
    ]);
    const codes = (reach: number) => knifeProblems(`${bevel(reach)}, head: raiser`, shop).map((p) => p.code);
    expect(codes(39.9)).not.toContain('face-never-reaches');
    expect(codes(40)).toContain('face-never-reaches');
  });

  it('an edge that meets the body or the nut', () => {
    expect(knifeProblems(`${bevel(46)}, head: raiser`, shopText({ rake: 10 }))).toMatchObject([
      {
        severity: 'error',
        code: 'edge-meets-body',
        at: 'cuts[0].head',
        message:
          'The panel meets the body of the head "raiser" at the raise: it passes 34 mm from the axis, and the body stands out to 35 mm. A head with a larger cutting circle or a smaller body clears it. Give the raise a reach of 44 mm.',
      },
    ]);
    const machines = 'machines: { spindle: { speeds: [3000], seat: [-70, 90], opening: 220, nutDiameter: 62 } }';
    expect(
      knifeProblems(`${bevel(50)}, head: raiser`, shopText({ rake: 8, bodyDiameter: 50 }, machines)),
    ).toMatchObject([
      {
        severity: 'warning',
        code: 'edge-meets-nut',
        at: 'cuts[0].head',
        message:
          'On the machine "spindle" the panel meets the spindle nut at the raise: it passes 30 mm from the axis, and the nut stands out to 31 mm. Another machine or a sunk nut clears it. Give the raise a reach of 48 mm.',
      },
    ]);
  });

  it('an edge that meets the body only because the fence is set back', () => {
    const codes = (cut: string) => knifeProblems(`${cut}, head: raiser`, shopText({ rake: 10 })).map((p) => p.code);
    expect(codes(bevel(44))).toMatchObject([]);
    // The 2 mm that the fence is set back are a flat square to the spindle, which the order says to relieve.
    expect(codes(`${bevel(44)}, reach: 46`)).toEqual(['edge-meets-body']);
  });

  it('a knife wider than the head', () => {
    expect(knifeProblems(`${bevel(30)}, head: raiser`, shopText({ height: 8 }))).toMatchObject([
      {
        severity: 'error',
        code: 'knife-wider-than-head',
        at: 'cuts[0].head',
        message:
          'The knife for the raise takes 10 mm along the spindle, and the head "raiser" is 8 mm high. Take a higher head, or cut the profile in two.',
      },
    ]);
  });

  it('knives further beyond their limiters than hand feed allows; not with a power feed', () => {
    expect(knifeProblems(`${bevel(30)}, head: raiser`, shopText({ limiterGap: 1.2 }))).toMatchObject([
      {
        severity: 'error',
        code: 'limiter-gap',
        at: 'cuts[0].head',
        message:
          'The knives of the head "raiser" stand 1.2 mm out beyond their limiters, and it is for hand feed: EN 847-1 allows 1.1 mm there. Fit limiters that come closer; only a tool marked MEC, with a power feed, may have more. The mark on the tool and your local rules go before this.',
      },
    ]);
    expect(knifeProblems(`${bevel(30)}, head: raiser`, shopText({ limiterGap: 1.1 }))).toMatchObject([]);
    expect(
      knifeProblems(`${bevel(30)}, head: raiser`, shopText({ limiterGap: 1.2, feed: 'mechanical' })),
    ).toMatchObject([]);
  });

  it('a limiter that would lie nearer the axis than the face', () => {
    expect(knifeProblems(`${bevel(39.5)}, head: raiser`, shopText({ rake: 30, wedge: 5 })).at(-1)).toMatchObject({
      severity: 'warning',
      code: 'limiter-never-reaches',
      at: 'cuts[0].head',
      message:
        'No limiter can be drawn for the raise: set back 1.1 mm it would lie nearer the axis than the face of the head "raiser". Take less reach, less cutting angle or a larger head.',
    });
  });
});

describe('a knife that rubs', () => {
  const behindTheEdge = (shop: string) =>
    knifeProblems(`${bevel(38)}, head: raiser`, shop).filter((p) => p.code !== 'no-side-clearance');

  it('has little clearance, or none', () => {
    expect(behindTheEdge(shopText({ wedge: 45 }))).toMatchObject([
      {
        severity: 'warning',
        code: 'little-clearance',
        at: 'cuts[0].head',
        message:
          "The knife for the raise has little clearance: 8.9°, 42.13 mm back from the tip line and 9 mm along it, under the shop's least of 10°. Grind the sharpness angle smaller than 45°, or take less cutting angle or less reach.",
      },
    ]);
    expect(behindTheEdge(shopText({ rake: 24, wedge: 45 }))).toMatchObject([
      {
        severity: 'error',
        code: 'back-rubs',
        at: 'cuts[0].head',
        message:
          'The back of the knife for the raise rubs: its clearance falls to −5.8°, 46.53 mm back from the tip line and 9 mm along it. Grind the sharpness angle smaller than 45°, or take less cutting angle or less reach.',
      },
    ]);
  });

  it('has a heel outside its own cutting circle', () => {
    expect(behindTheEdge(shopText({ knifeThickness: 16 }))).toMatchObject([
      {
        severity: 'warning',
        code: 'heel-rubs',
        at: 'cuts[0].head',
        message: expect.stringMatching(
          /^The heel of the knife for the raise rubs: steel 16 mm thick with a sharpness angle of 40° stands [\d.]+ mm outside its own cutting circle, 42\.13 mm back from the tip line and 9 mm along it\. Relieve the heel, or use thinner steel\.$/,
        ),
      },
    ]);
  });

  it('has walls too square to the spindle: relief is asked for, with the wall, and nobody is warned', () => {
    const rebate = 'profile: { shape: rebate, reach: 20, depth: 8 }, head: raiser';
    expect(knifeProblems(rebate, shopText())).toEqual([]);
    const { job } = readJob(jobText(rebate), { shop: { text: shopText(), name: 'shop.yaml' } });
    const { sideRelief, walls } = evaluate(job!).knives![0]!;
    expect(sideRelief).toMatchObject({ least: expect.closeTo(3, 9), ground: null });
    expect(walls).toMatchObject([{ from: { a: 0, b: 8 }, to: { a: 20, b: 8 }, straight: true, undercut: false }]);
  });

  it('has an undercut wall: a quirk that leans over, run flat', () => {
    // α = 31.52° at a radius of 78 mm.
    const quirk = 'profile: { shape: outline, path: "M 0 9 L 12 4 L 14 5 V 0" }, head: raiser';
    expect(knifeProblems(quirk, shopText()).map((p) => p.message)).toMatchObject([
      "The knife for the raise has less side clearance than the shop's 3°. From 12 mm to 14 mm from the edge, 4 mm to 5 mm down, it is undercut, and the sweep takes that away. Slope that by 4.9°.",
    ]);
  });

  it('asks for relief where curves run square to the spindle, which every hollow and round does', () => {
    const ogee = 'profile: { shape: ogee, reach: 30, depth: 9, shoulder: 1 }, head: raiser';
    expect(knifeProblems(ogee, shopText())).toEqual([]);
    const { job } = readJob(jobText(ogee), { shop: { text: shopText(), name: 'shop.yaml' } });
    expect(evaluate(job!).knives![0]!.walls.some((wall) => !wall.straight)).toBe(true);
  });
});
