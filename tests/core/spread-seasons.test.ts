import { describe, expect, it } from 'vitest';
import type { Job, Season } from '../../packages/core/src/job/job.ts';
import { evaluate } from '../../packages/core/src/report/evaluate.ts';
import { createJoint } from '../../packages/core/src/spread/joint.ts';
import { MOVE } from '../../packages/core/src/spread/moves.ts';
import { equilibriumMoisture } from '../../packages/core/src/wood/moisture.ts';
import { completeDoor } from '../support/doors.ts';
import { FEW } from '../support/few-joints.ts';
import { cut, plainJob, profile, wedgeJob } from './joints-to-spread.ts';

const year: Season = { made: 8, driest: 6, dampest: 11, pinned: true };
const seasonOf = (other: Partial<Job> = {}, season: Partial<Season> = {}) =>
  evaluate(plainJob({ season: { ...year, ...season }, ...other })).season!;
const problemsOf = (other: Partial<Job> = {}, season: Partial<Season> = {}) =>
  evaluate(plainJob({ season: { ...year, ...season }, ...other })).problems;
const panel = (other: Partial<Job['panel']> = {}): Job['panel'] => ({ ...plainJob().panel, ...other });

it('a panel that shrinks right out of its groove shows its tongue bare, 9 mm, and no wood that is not there', () => {
  const { driest } = seasonOf({ panel: panel({ width: 3000 }) }, { driest: 0 });
  expect(driest.insertion).toBeLessThan(-9);
  expect(driest.bare).toBe(9);
});

describe('a flat-sawn cherry panel 400 mm wide, pinned, made at 8 %', () => {
  // Wood Handbook table 13-5, black cherry: 0.00248 tangential, 0.00126 radial; eq. 13-2.
  const season = seasonOf();

  it('takes its coefficients from the table, across and through', () => {
    expect(season.species).toBe('black cherry');
    expect(season.coefficients).toMatchObject({ across: 0.00248, thickness: 0.00126 });
    const quarter = seasonOf({ panel: panel({ sawn: 'quarter' }) });
    expect(quarter.coefficients).toMatchObject({ across: 0.00126, thickness: 0.00248 });
  });

  it('as made is as designed', () => {
    expect(season.made).toMatchObject({
      moisture: 8,
      formula: null,
      insertion: 9,
      bottomGap: 2,
      bare: 0,
      widthChange: 0,
    });
    expect(season.made.clearance).toBeCloseTo(0.2, 12);
  });

  it('at 6 % shrinks out of each groove by half its change, and the tongue gets thinner', () => {
    const half = (400 * 0.00248 * 2) / 2;
    expect(season.driest.widthChange).toBeCloseTo(-2 * half, 12);
    expect(season.driest.insertion).toBeCloseTo(9 - half, 12);
    expect(season.driest.bottomGap).toBeCloseTo(2 + half, 12);
    expect(season.driest.bare).toBeCloseTo(half, 12);
    // The tongue is 6.2 flat over what is in the groove.
    // The groove lies across the frame's thickness and shrinks with it: W·(1 + C·ΔM), eq. 13-2 for groove and tongue alike.
    expect(season.driest.clearance).toBeCloseTo((6.4 - 6.2) * (1 - 0.00126 * 2), 12);
    expect(season.driest.grooveChange).toBeCloseTo(-6.4 * 0.00126 * 2, 12);
    expect(season.driest.thicknessChange).toBeCloseTo(-20 * 0.00126 * 2, 12);
    expect(season.driest.formula).toBe('13-2');
  });

  it('at 11 % swells into each groove, and the back cove reaches it', () => {
    const half = (400 * 0.00248 * 3) / 2;
    expect(season.dampest.insertion).toBeCloseTo(9 + half, 12);
    expect(season.dampest.bottomGap).toBeCloseTo(2 - half, 12);
    expect(season.dampest.bare).toBe(0);
    // At 10.488 in (10.411 of the wood as cut) the cove has risen from its land, 9 mm in, by its arc.
    const x = (9 + half) / (1 + 0.00248 * 3) - 9;
    const radius = (5 ** 2 + 4.8 ** 2) / (2 * 4.8);
    const risen = radius - Math.sqrt(radius ** 2 - x ** 2);
    expect(season.dampest.clearance).toBeCloseTo((6.4 - (6.2 + risen)) * (1 + 0.00126 * 3), 12);
  });
});

it('a spread of moisture asks for the wood and its width, where no season asks already', () => {
  const limits = { thickness: 0.1, height: 0.1, fence: 0.1, grooveWidth: 0.1, film: 0 };
  const codes = (moisture: number, other: Partial<Job> = {}) => {
    const { species: _, width: __, ...bare } = panel();
    return evaluate(plainJob({ panel: bare, spread: { ...limits, moisture }, ...other }), FEW).problems.map(
      ({ code }) => code,
    );
  };
  expect(codes(2)).toEqual(expect.arrayContaining(['species-missing', 'width-missing']));
  for (const code of ['species-missing', 'width-missing']) {
    expect(codes(0)).not.toContain(code);
    // Said once, by the season.
    expect(codes(2, { season: year }).filter((each) => each === code)).toHaveLength(1);
  }
});

it('pinned along one edge, the other takes all of it', () => {
  const held = seasonOf({}, { pinned: 'edge' });
  expect(held.driest.bare).toBeCloseTo(400 * 0.00248 * 2, 12);
  expect(held.dampest.bottomGap).toBeCloseTo(2 - 400 * 0.00248 * 3, 12);
});

describe('a free panel', () => {
  const free = seasonOf({}, { pinned: false });

  it('400 mm of cherry from 8 to 11 % swells 2.976 mm in 4 mm of gaps and does not push', () => {
    expect(free.dampest.widthChange).toBeCloseTo(2.976, 9);
    expect(free.dampest.bottomGap).toBeCloseTo(2 - 2.976 / 2, 9);
    expect(problemsOf({}, { pinned: false }).map(({ code }) => code)).not.toContain('bottoms-out');
  });

  it('goes in least on the side that it has slid away from: insertion less gap less shrinkage', () => {
    const shrinkage = 400 * 0.00248 * 2;
    expect(free.driest.insertion).toBeCloseTo(9 - 2 - shrinkage, 12);
    expect(free.driest.bare).toBeCloseTo(2 + shrinkage, 12);
  });

  it('pushes where it swells more than both gaps together', () => {
    const wide = seasonOf({ panel: panel({ width: 600 }) }, { pinned: false });
    expect(wide.dampest.bottomGap).toBeCloseTo(2 - (600 * 0.00248 * 3) / 2, 9);
    expect(wide.dampest.bottomGap).toBeLessThan(0);
  });
});

it('the frame may be of another wood, sawn another way', () => {
  const frame = { ...plainJob().frame, species: 'red oak', sawn: 'quarter' } as const;
  // Quarter-sawn stock has its rings along the thickness: tangential through it, 0.00369 for red oak.
  const { dampest } = seasonOf({ frame });
  expect(dampest.grooveChange).toBeCloseTo(6.4 * 0.00369 * 3, 12);
});

it('names the door whose panel is the widest', () => {
  const { width: _, ...noWidth } = panel();
  const sizes = { stile: 60, rail: 60, height: 700 };
  const doors = [
    completeDoor({ name: 'narrow', width: 300, ...sizes }),
    completeDoor({ name: 'wide', width: 500, ...sizes }),
  ];
  expect(seasonOf({ panel: noWidth, doors }).door).toBe('wide');
});

it('the room to swell is what the gap leaves, or what the tongue still goes in, if that is less', () => {
  // A wedge that goes in 10 mm of 11: its gap of 2 mm is good for 1.
  const { made } = evaluate(wedgeJob({ season: year, panel: panel({ width: 1 }) })).season!;
  const { deepestInsertion } = evaluate(wedgeJob()).fit;
  expect(deepestInsertion).toBeLessThan(11);
  expect(made.room).toBeCloseTo(deepestInsertion! - 9, 9);
});

it('the room to swell is that of the tongue as it has swelled, in a groove that has moved by its own wood', () => {
  // A tongue x in from its tip is 6 + 0.4·x thick as made, and the groove 10 wide; damp wood is thicker, and longer across.
  const room = (frame: Partial<Job['frame']>) => {
    const whole = { ...wedgeJob().frame, ...frame };
    const { dampest } = evaluate(wedgeJob({ season: year, panel: panel({ width: 100 }), frame: whole })).season!;
    const [thick, wide] = [1 + 0.00126 * 3, 1 + 0.00248 * 3];
    const groove = 10 + dampest.grooveChange;
    const deepest = ((groove / thick - 6) / 0.4) * wide;
    expect(dampest.room).toBeCloseTo(Math.min(2, deepest - 9) - (100 * 0.00248 * 3) / 2, 7);
    return dampest.room;
  };
  // A frame that does not move leaves less of it than one of the panel's own wood.
  const still = { name: 'still', tangential: 1e-9, radial: 1e-9 };
  const own = room({});
  expect(room({ species: 'still', wood: still })).toBeLessThan(own - 0.05);
});

it('reads the air instead of the moisture', () => {
  const season = seasonOf({}, { made: { temperature: 20, humidity: 50 } });
  expect(season.made.moisture).toBe(equilibriumMoisture(20, 50));
});

it('a wedge loses clearance as it is pushed in, by its slope', () => {
  const job = wedgeJob({ season: year });
  const { made, dampest } = evaluate(job).season!;
  const in0 = 9;
  const thickness = (insertion: number) => 20 - (14 - 0.4 * insertion);
  expect(made.clearance).toBeCloseTo(10 - thickness(in0), 12);
  const in1 = dampest.insertion / (1 + 0.00248 * 3);
  expect(dampest.clearance).toBeCloseTo((10 - thickness(in1)) * (1 + 0.00126 * 3), 12);
});

it('takes the width from the widest panel of the doors where none is given', () => {
  const { width: _, ...noWidth } = panel();
  const door = { name: 'A', quantity: 1, width: 396, height: 716, stile: 60, rail: 60, across: 1, up: 1, muntin: 60 };
  const doors = [door, { ...door, name: 'B', width: 800, across: 2 }].map(completeDoor);
  // A: 276 between the stiles; B: (800 − 120 − 60)/2 = 310; each edge goes 9 mm in.
  expect(seasonOf({ panel: noWidth, doors }).width).toBe(310 + 18);
});

describe('what the seasons spoil is said, with what to do', () => {
  const find = (code: string, other?: Partial<Job>, season?: Partial<Season>) =>
    problemsOf(other, season).find((problem) => problem.code === code);

  it('bottoms out', () => {
    expect(find('bottoms-out', {}, { pinned: 'edge' })).toMatchObject({
      severity: 'warning',
      code: 'bottoms-out',
      at: 'season.dampest',
      message:
        'At the dampest (11 %) the panel swells until it bottoms out at its free edge: it is 0.98 mm too wide, and pushes the frame apart. Leave a swell gap of 3 mm.',
    });
    expect(find('bottoms-out')).toBeUndefined();
    // Pinned at its centre it is too wide at both edges.
    expect(find('bottoms-out', { panel: panel({ width: 800 }) })?.message).toMatch(
      /it is 0\.98 mm too wide at each edge, 1\.95 mm over all/,
    );
  });

  it('leaves the groove', () => {
    expect(find('leaves-groove', { panel: panel({ width: 3000 }) }, { pinned: 'edge' })).toMatchObject({
      severity: 'warning',
      code: 'leaves-groove',
      at: 'season.driest',
      message:
        'At the driest (6 %) the panel shrinks out of its groove. No one size of the joint was found that puts this right and spoils nothing: a narrower panel, quarter-sawn stock or a steadier wood moves less.',
    });
  });

  it('little engagement', () => {
    expect(find('little-engagement', { panel: panel({ width: 1200 }) }, { pinned: 'edge' })).toMatchObject({
      severity: 'warning',
      code: 'little-engagement',
      at: 'season.driest',
      message:
        'At the driest (6 %) only 3.05 mm of the tongue is in the groove, less than the 4 mm that holds it. Make the groove 12 mm deep.',
    });
  });

  it('swells tight', () => {
    const cuts = [cut('raise', 'front', profile('rebate', 30, 9)), cut('back', 'back', profile('rebate', 20, 4.66))];
    // 0.06 to spare at 8 %; a tongue of 6.34 swells by 6.34·0.00126·3 = 0.024, a frame that hardly moves leaves it there.
    const wood = { name: 'still wood', tangential: 1e-6, radial: 1e-6 };
    const frame = { ...plainJob().frame, species: wood.name, wood };
    expect(find('swells-tight', { cuts, frame })).toMatchObject({
      severity: 'warning',
      code: 'swells-tight',
      at: 'season.dampest',
      message:
        'At the dampest (11 %) the tongue swells tight in the groove, with 0.04 mm to spare: the panel can no longer move and will split or push the frame apart. Take the back 0.1 mm deeper.',
    });
  });

  describe('a tongue that is tight as made', () => {
    const wood = { name: 'still wood', tangential: 1e-6, radial: 1e-6 };
    const frame = { ...plainJob().frame, species: wood.name, wood };
    // A rebate of 9 in front and one of `depth` behind leave a tongue of 11 - depth; it swells by 0.024, its groove does not.
    const cuts = (depth: number) => [
      cut('raise', 'front', profile('rebate', 30, 9)),
      cut('back', 'back', profile('rebate', 20, depth)),
    ];

    it('and jams in the damp is told of that once, with advice that frees it at every season', () => {
      const { season, problems } = evaluate({
        ...plainJob(),
        cuts: cuts(4.61),
        frame,
        season: { made: 8, driest: 6, dampest: 11 },
      });
      const [tight, swells] = ['tight', 'swells-tight'].map((code) => problems.filter((each) => each.code === code));
      expect(season!.dampest.clearance).toBeCloseTo(0.01 + 6.4 * 3e-6 - 6.39 * 0.00126 * 3, 6);
      expect(swells!.map(({ message }) => message)).toEqual([
        'At the dampest (11 %) the tongue, tight as made, is 0.01 mm too thick for the groove: the panel can no longer move and will split or push the frame apart.',
      ]);
      expect(tight).toHaveLength(1);
      expect(tight![0]!.message).toMatch(/needs 0\.05 mm to slide\. Take the back 0\.19 mm deeper\.$/);
      const freed = evaluate({ ...plainJob(), cuts: cuts(4.8), frame, season: { made: 8, driest: 6, dampest: 11 } });
      expect(freed.problems.map(({ code }) => code)).not.toContain('swells-tight');
    });

    it('and still goes in is told of it as made alone', () => {
      const { problems } = evaluate({
        ...plainJob(),
        cuts: cuts(4.64),
        frame,
        season: { made: 8, driest: 6, dampest: 11 },
      });
      expect(problems.map(({ code }) => code)).toContain('tight');
      expect(problems.map(({ code }) => code)).not.toContain('swells-tight');
    });
  });

  it('a straight tongue that swells too thick is not said to wedge further in', () => {
    const wood = { name: 'still wood', tangential: 1e-6, radial: 1e-6 };
    const frame = { ...plainJob().frame, species: wood.name, wood };
    const cuts = [cut('raise', 'front', profile('rebate', 30, 9)), cut('back', 'back', profile('rebate', 20, 4.66))];
    const found = find('swells-tight', { cuts, frame }, { dampest: 18 });
    expect(found?.message).toMatch(
      /^At the dampest \(18 %\) the tongue swells tight in the groove, 0\.0\d mm too thick: /,
    );
  });

  it('finish before glue-up', () => {
    expect(find('finish-before-glue-up')).toMatchObject({
      severity: 'caution',
      code: 'finish-before-glue-up',
      at: 'season.driest',
      message: 'Finish the panel before glue-up: at the driest 0.99 mm of bare wood would show along each long edge.',
    });
    expect(find('finish-before-glue-up', {}, { driest: 8, dampest: 8 })).toBeUndefined();
  });

  it('outside the coefficients, and computed by the other formula', () => {
    const season = seasonOf({}, { dampest: 18 });
    expect(season.dampest.formula).toBe('13-3');
    expect(season.dampest.widthChange).toBeCloseTo((400 * 10) / (3000 / 7.1 - 30 + 8), 12);
    expect(find('outside-coefficients', {}, { dampest: 18 })).toMatchObject({
      severity: 'caution',
      code: 'outside-coefficients',
      at: 'season.dampest',
      message:
        'Some of this moisture lies outside 6 to 14 %, where the dimensional change coefficients hold: the change is computed by eq. 13-3 of the Wood Handbook instead, from green to oven-dry shrinkage.',
    });
  });
});

describe('bad input is a problem with its place, never an exception', () => {
  const only = (other: Partial<Job>, season: Partial<Season> = {}) => {
    const job = plainJob({ season: { ...year, ...season }, ...other });
    const { season: answer, problems } = evaluate(job);
    expect(answer).toBeUndefined();
    expect(problems).toHaveLength(1);
    return problems[0];
  };

  it('unknown species, the nearest named', () => {
    expect(only({ panel: panel({ species: 'black chery' }) })).toMatchObject({
      severity: 'error',
      code: 'unknown-species',
      at: 'panel.species',
      message:
        "black chery is not in the table of woods. Did you mean black cherry? Choose by how it moves, not by its name, or give the wood's own figures under species: name, tangential, radial, density.",
    });
  });

  it('no species', () => {
    const { species: _, ...bare } = panel();
    expect(only({ panel: bare })).toMatchObject({
      severity: 'warning',
      code: 'species-missing',
      at: 'panel.species',
      message: 'How much the panel moves depends on its wood: name it, such as black cherry.',
    });
  });

  it('no width', () => {
    const { width: _, ...narrow } = panel();
    expect(only({ panel: narrow })).toMatchObject({
      severity: 'warning',
      code: 'width-missing',
      at: 'panel.width',
      message: 'How far the panel moves depends on its width across the grain: give that width, or the doors.',
    });
  });

  it.each([-1, 31])('moisture of %d % is refused at the door', (dampest) => {
    const call = () => only({}, { dampest });
    expect(call).toThrow(new RangeError(`season.dampest must be 0 to 30 % of moisture, got ${dampest}`));
  });

  it('humidity above 100 % is refused at the door', () => {
    const call = () => only({}, { dampest: { temperature: 20, humidity: 101 } });
    expect(call).toThrow(new RangeError('season.dampest.humidity must be 0 to 100 %, got 101'));
  });

  it('air colder than the table', () => {
    expect(only({}, { driest: { temperature: -10, humidity: 60 } })).toMatchObject({
      severity: 'error',
      code: 'temperature-out-of-range',
      at: 'season.driest.temperature',
      message:
        "At the driest the air is at −10 °C: the Wood Handbook's table of moisture covers −1 to 132 °C. Give the moisture content itself.",
    });
  });
});

it('moisture as a source of spread swells the tongue and drives the wedge in', () => {
  const spread = { thickness: 0, height: 0, fence: 0, grooveWidth: 0, film: 0, moisture: 2 };
  const { sources, nominal } = evaluate(wedgeJob({ spread }), FEW).spread!.clearance;
  // Per point: 0.00126 of a tongue of 9.6, the groove of 10 as much with it, and 400·0.00248/2 further in (less what the wood itself swells), 0.4 mm a mm.
  const tongue = 9.6;
  const slope = -(0.00126 * (tongue - 10) + 0.4 * (400 * 0.00124 - 9 * 0.00248));
  expect(nominal).toBeCloseTo(0.4, 12);
  expect(sources[0]!.name).toBe('moisture');
  expect(sources[0]!.slope).toBeCloseTo(slope, 4);
});

it('a job without seasons or spread has neither in its report', () => {
  expect(evaluate(plainJob())).not.toHaveProperty('season');
  expect(evaluate(plainJob())).not.toHaveProperty('spread');
});

describe('moisture acts only inside the groove', () => {
  const swelling = { thickness: 0, width: 0, insertion: 3, groove: 0, edge: 0.5 };
  const measured = (moisture: number, insertion?: number) => {
    const joint = createJoint(wedgeJob(), undefined, swelling);
    const moves = new Float64Array(joint.moveCount);
    moves[MOVE.moisture] = moisture;
    const figures = { clearance: 0, frontMost: 0, frontLeast: 0, bottomGap: 0 };
    joint.measure(moves, figures, insertion);
    return figures.clearance;
  };

  it('the bottom stops a panel that swells past it', () => {
    // The wedge is 0.4 mm thicker for each mm in; 9 in the groove as made, 11 deep.
    expect(measured(0) - measured(0.5)).toBeCloseTo(0.4 * 1.5, 9);
    expect(measured(0) - measured(2)).toBeCloseTo(0.4 * 2, 9);
  });

  it('a tip that is only set to the groove is no further in when it is damp', () => {
    expect(measured(2, 0)).toBeCloseTo(measured(0, 0), 12);
  });
});
