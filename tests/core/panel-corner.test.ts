// Corners of panels under pointed heads against plane geometry: where two lines or two circles beside the sight edge meet, and how far that is.
import { type DoorReport, evaluate, readJob, templateOutline } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { Random } from '../support/random.ts';

const GROOVE = 11;

/** A door whose opening is 400 mm wide, under a head of any outline; what the frame has besides. */
function check(
  path: string,
  frame = '',
  unit: 'mm' | 'in' = 'mm',
  over = '',
): { door: DoorReport; codes: string[]; problems: ReturnType<typeof evaluate>['problems'] } {
  const { job, faults } = readJob(`fielded: 1
units: ${unit}
panel: { thickness: 20 mm }
frame: { thickness: 22 mm, groove: { width: 6.4 mm, depth: ${GROOVE} mm, setback: 7.5 mm }, swellGap: 2 mm${frame} }
cuts:
  - { name: raise, side: front, profile: { shape: bevel, reach: 30 mm, depth: 8 mm, land: 11 mm } }
  - { name: back, side: back, profile: { shape: rebate, reach: 12 mm, depth: 5.8 mm }, run: over }
doors: [{ name: A, width: 520 mm, height: 1200 mm, stile: 60 mm, rail: 75 mm${over}, head: { shape: outline, path: "${path}" } }]
`);
  if (job === null) throw new Error(faults.map(({ message }) => message).join('\n'));
  const { doors, problems } = evaluate(job);
  const own = problems.filter(({ code }) => code.startsWith('head-corner'));
  return { door: doors![0]!, problems: own, codes: own.map(({ code, sentence }) => sentence ?? code) };
}

/** Two lines up to an apex in the middle, x and y of a path in mm or in inches. */
const gable = (rise: number, scale = 1) => `M 0 ${rise / scale} L ${200 / scale} 0 L ${400 / scale} ${rise / scale}`;

describe('the panel’s corner under a pointed head', () => {
  it('lies i / sin α from the rail’s, 40 random gables, in mm and in inches, past the groove exactly where that is deeper', () => {
    const random = new Random(19);
    let past = 0;
    for (let n = 0; n < 40; n++) {
      const rise = random.between(20, 320);
      const endGap = random.between(0.5, 3);
      const inches = n % 3 === 0;
      const path = inches ? gable(rise, 25.4) : gable(rise);
      const { door, codes, problems } = check(path, `, endGap: ${endGap} mm`, inches ? 'in' : 'mm');
      // Half the angle between the two lines: the apex lies `rise` over the springing, 200 mm from either side.
      const reach = ((GROOVE - endGap) * Math.hypot(200, rise)) / 200;
      expect(door.head!.corner).toEqual({ into: 'rail', reach: expect.closeTo(reach, 6) });
      expect(codes).toEqual([reach > GROOVE ? 'head-corner-past-groove' : 'head-corner-by-hand']);
      expect(problems[0]!.figures).toMatchObject({ needed: expect.closeTo(reach + endGap, 6) });
      if (reach > GROOVE) {
        past++;
        // What it advises does go: with so much off, the corner goes in no further than the edges do.
        const off = Number(problems[0]!.figures!.off);
        expect(reach - off).toBeLessThanOrEqual(GROOVE - endGap + 1e-9);
        // In steps that a rule shows: tenths of a millimetre, or 64ths of an inch.
        const steps = inches ? (off / 25.4) * 64 : off * 10;
        expect(steps).toBeCloseTo(Math.round(steps), 6);
      }
    }
    expect(past).toBeGreaterThan(5);
    expect(past).toBeLessThan(35);
  });

  it('of two arcs lies where circles of r + i about their centres meet', () => {
    const r = 320;
    const { door, codes } = check(`M 0 220 A ${r} ${r} 0 0 1 200 0 A ${r} ${r} 0 0 1 400 220`);
    // The left arc's centre: r from (−200, 0) and from (0, 220), y up from the springing, to the right of both.
    const [mx, my, chord] = [-100, 110, Math.hypot(200, 220)];
    const away = Math.sqrt(r * r - (chord / 2) ** 2);
    const [cx, cy] = [mx + (away * 220) / chord, my - (away * 200) / chord];
    const apex = cy + Math.sqrt((r + 9) ** 2 - cx * cx);
    expect(door.head!.corner).toEqual({ into: 'rail', reach: expect.closeTo(apex - 220, 5) });
    expect(codes).toEqual([apex - 220 > GROOVE ? 'head-corner-past-groove' : 'head-corner-by-hand']);
  });

  it('stands past the rail’s end where the head rises to the stile: i(1 + sin ψ)/cos ψ', () => {
    for (const [fall, wanted] of [
      [30, []],
      [60, ['head-corner-past-groove.stile']],
      [150, ['head-corner-past-groove.stile']],
    ] as const) {
      const { door, codes } = check(`M 0 0 L 200 ${fall} L 400 0`);
      const steep = Math.atan(fall / 200);
      const reach = (9 * (1 + Math.sin(steep))) / Math.cos(steep);
      expect(door.head!.corner).toEqual({ into: 'stile', reach: expect.closeTo(reach, 6) });
      expect(codes).toEqual(wanted);
    }
    // Mitred rails do not lie in the stiles' grooves.
    expect(check('M 0 0 L 200 60 L 400 0', ', joint: { kind: mitre }').codes).toEqual([]);
  });

  it('is none where the head runs smoothly to level or falls to its sides', () => {
    const r = (200 ** 2 + 60 ** 2) / 120;
    expect(check(`M 0 60 A ${r} ${r} 0 0 1 400 60`).door.head!.corner).toBeUndefined();
    expect(check('M 0 60 C 120 60 120 0 200 0 C 280 0 280 60 400 60').codes).toEqual([]);
  });
});

it('a rail whose head ends higher on one side has a template that closes', () => {
  for (const path of ['M 0 60 L 400 0', 'M 0 0 L 200 60 L 400 0', 'M 0 20 L 200 60 L 400 0']) {
    const rail = templateOutline(check(path).door, 'rail', 30);
    rail.forEach((c, i) => {
      const next = rail[(i + 1) % rail.length]!;
      expect(Math.hypot(next.x0 - c.x1, next.y0 - c.y1), path).toBeLessThan(1e-9);
    });
  }
});
