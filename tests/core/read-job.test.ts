import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJob, readShop } from '../../packages/core/src/reading/read.ts';
import { processorTime } from '../support/timing.ts';
import { trials } from '../support/trials.ts';
import { broken, SOUND } from './job-texts.ts';

const SHOP = `fielded: 1
units: mm
knives:
  cove-13: { shape: cove, reach: 14, depth: 4.6, land: 9, head: small, groundFor: { run: under, rotation: counterclockwise } }
heads:
  raiser: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, rake: 18, maxSpeed: 8000 }
machines:
  main: { speeds: [3000, 4500], seat: [-70, 90], opening: 220, nutDiameter: 48, reversing: true, feeds: [4, 8] }
rules: { kerf: 1/8 in }
rates: { hour: 60 }
`;

describe('readJob', () => {
  it('reads a file of inches into millimetres, and lengths with their own unit as they say', () => {
    const { job } = readJob(`fielded: 1
units: in
panel: { thickness: 3/4, measured: 19 mm }
frame: { thickness: 13/16", groove: { width: ¼, depth: "3/8", setback: .28125 }, swellGap: 1-1/2 mm }
cuts:
  - side: back
    profile: { shape: outline, path: "M 0 0.25 H 0.5 V 0" }
    presented: 45°
`);
    expect(job?.panel).toEqual({ thickness: 19.05, measured: 19, sawn: 'flat' });
    expect(job?.frame).toEqual({
      thickness: 20.6375,
      groove: { width: 6.35, depth: 9.525, setback: 7.14375 },
      swellGap: 1.5,
    });
    expect(job?.cuts[0]).toMatchObject({ name: 'cut 1', reach: 12.7, depth: 6.35, tilt: Math.PI / 4 });
  });

  it('reads JSON, tabs and all', () => {
    const json = `{\n\t"fielded": 1,\n\t"panel": { "thickness": 20 },\n\t"frame": { "thickness": 22, "groove": { "width": 6.4, "depth": 11, "setback": 7.5 }, "swellGap": 2 },\n\t"cuts": [{ "side": "front", "profile": { "shape": "bevel", "reach": 30, "depth": 9 } }]\n}\n`;
    expect(readJob(json).faults).toEqual([]);
  });

  it('lets one cut repeat another through an anchor', () => {
    const twice = broken('profile: { shape: cove, reach: 14, depth: 4.6, land: 9 }', 'profile: *p').replace(
      'profile: {',
      'profile: &p {',
    );
    const { job, faults } = readJob(twice);
    expect(faults).toEqual([]);
    expect(job?.cuts[1]?.profile).toEqual(job?.cuts[0]?.profile);
  });

  it('reads seasons, spread and doors', () => {
    const { job } =
      readJob(`${SOUND}season: { made: 8 %, driest: 6, dampest: { temperature: 68 °F, humidity: 80 }, pinned: false }
spread: { thickness: 0.15, film: 1/64 in }
doors: [{ width: 396, height: 716, stile: 60, rail: 60 }]
`);
    expect(job?.season).toEqual({ made: 8, driest: 6, dampest: { temperature: 20, humidity: 80 }, pinned: false });
    expect(job?.spread).toEqual({ thickness: 0.15, height: 0, fence: 0, grooveWidth: 0, film: 0.396875 });
    expect(job?.doors).toEqual([
      {
        ...{ name: 'door 1', quantity: 1, width: 396, height: 716, stile: 60, rail: 60, across: 1, up: 1, muntin: 0 },
        ...{ grain: 'up', topRail: 60, bottomRail: 60, midRail: 0, columns: ['rest'], rows: ['rest'], leaves: 1 },
      },
    ]);
  });

  it('lists all faults of a file at once, in its order, whatever kind they are', () => {
    const { job, faults } = readJob(`fielded: 1
titel: x
panel: { thickness: 0, thickness: 3 }
frame:
  thickness: 20 kg
  groove: { width: 8, depth: 25, setback: 1/0 }
cuts:
  - { side: frnt, profile: { shape: cove, reach: 5, depth: 6, land: 7 }, run: over, presented: on-edge }
`);
    expect(job).toBeNull();
    expect(faults.map(({ line, column, code, at }) => `${line}:${column} ${code} ${at}`)).toEqual([
      '2:1 unknown-key titel',
      '3:21 out-of-range panel.thickness',
      '3:24 duplicate-key panel.thickness',
      '4:1 missing-key frame.swellGap',
      '5:14 not-a-length frame.thickness',
      '6:43 not-a-length frame.groove.setback',
      '8:13 unknown-choice cuts[0].side',
      '8:69 land-past-reach cuts[0].profile.land',
      '8:79 over-on-edge cuts[0].run',
    ]);
  });

  it('says what was read and what would be accepted as data too', () => {
    const [fault] = readJob(broken('run: under', 'run: udner')).faults;
    const figures = { at: 'cuts[0].run', value: 'udner', near: 'under', options: 'under, over' };
    expect(fault).toEqual({
      severity: 'error',
      code: 'unknown-choice',
      at: 'cuts[0].run',
      file: '',
      line: 13,
      column: 10,
      received: 'udner',
      expected: 'Did you mean under? Write one of under, over',
      message: 'cuts[0].run: udner is not known. Did you mean under? Write one of under, over.',
      sentence: 'fault.unknown-choice',
      figures,
      further: [{ sentence: 'fault.unknown-choice.near.do', figures }],
    });
  });
});

describe('the shop file', () => {
  const named = broken(
    '    profile: { shape: cove, reach: 14, depth: 4.6, land: 9 }\n',
    '    knife: cove-13\n',
  ).replace('run: under', 'run: under\n    head: raiser');
  const withShop = named.replace('title: Test', 'shop: ./shop.yaml');

  it('brings knives, heads, machines and rules', () => {
    const { job, faults } = readJob(withShop, { loadShop: (path) => (path === './shop.yaml' ? SHOP : '') });
    expect(faults).toEqual([]);
    expect(job?.cuts[1]).toMatchObject({ knife: 'cove-13', depth: 4.6, profile: { shape: 'cove', land: 9 } });
    expect(job?.cuts[0]?.head).toBe('raiser');
    expect(job?.cuts[1]).not.toHaveProperty('head');
    expect(job?.shop?.rules).toMatchObject({ kerf: 3.175 });
  });

  it('given by the caller is used whatever the job names', () => {
    const { faults } = readJob(withShop, {
      shop: { text: SHOP, name: 'other.yaml' },
      loadShop: () => ({ refused: 'not asked for', instead: '' }),
    });
    expect(faults).toEqual([]);
  });

  it('that cannot be had is one fault, not one for each name in it', () => {
    const { faults } = readJob(withShop, {
      loadShop: () => ({ refused: 'there is no such file', instead: 'Check the name and the folder' }),
    });
    expect(faults.map((fault) => fault.message)).toEqual([
      'shop: ./shop.yaml: there is no such file. Check the name and the folder.',
    ]);
  });

  it('has its own faults listed under its own name', () => {
    const { faults } = readJob(withShop, { loadShop: () => SHOP.replace('rake: 18', 'rake: steep') });
    expect(faults.map(({ file, line, column, message }) => `${file}:${line}:${column} ${message}`)).toEqual([
      './shop.yaml:6:71 heads.raiser.rake: steep is not an angle. Write degrees, such as 18 or 18°.',
    ]);
  });

  it('read again, and read between others, is the same each time, its faults too', () => {
    const faulty = SHOP.replace('rake: 18', 'rake: steep').replace('[-70, 90]', '[90, -70]');
    const texts = [SHOP, SHOP, faulty, faulty, SHOP, faulty, SHOP.replace('bodyDiameter: 70', 'bodyDiameter: 72')];
    const read = texts.map((text) => readShop(text, 'shop.yaml'));
    expect(read.map(({ faults }) => faults.length)).toEqual([0, 0, 2, 2, 0, 2, 0]);
    expect([read[1], read[4]]).toEqual([read[0], read[0]]);
    expect([read[3], read[5]]).toEqual([read[2], read[2]]);
    expect(read.map(({ shop }) => shop?.heads.raiser?.bodyDiameter)).toEqual([
      70,
      70,
      undefined,
      undefined,
      70,
      undefined,
      72,
    ]);
  });

  it('names the nearest knife and head it does have', () => {
    const slips = withShop.replace('cove-13', 'cove-31').replace('head: raiser', 'head: rasier');
    const { faults } = readJob(slips, { loadShop: () => SHOP });
    expect(faults.map((fault) => fault.message)).toEqual([
      'cuts[0].head: rasier is not in the shop file. Did you mean raiser? The shop file has raiser.',
      'cuts[1].knife: cove-31 is not in the shop file. Did you mean cove-13? The shop file has cove-13.',
    ]);
  });

  it('refuses seats and speeds the wrong way round', () => {
    const { faults } = readShop(SHOP.replace('[-70, 90]', '[90, -70]'));
    expect(faults.map((fault) => fault.message)).toEqual([
      'machines.main.seat runs from 90 mm down to −70 mm. Write the least first, then the greatest.',
    ]);
  });
});

describe('hostile texts', () => {
  const only = (text: string) => {
    const { faults } = readJob(text);
    return faults.map(({ line, column, message }) => `${line}:${column} ${message}`);
  };

  it('refuses an alias bomb without blowing up', () => {
    const levels = Array.from({ length: 30 }, (_, i) => `a${i + 1}: &a${i + 1} [${`*a${i}, `.repeat(9)}*a${i}]`);
    let faults: readonly { readonly message: string }[] = [];
    const took = processorTime(() => {
      ({ faults } = readJob(`a0: &a0 [1, 2]\n${levels.join('\n')}\n`));
    });
    expect(faults.map((fault) => fault.message)).toEqual([
      'The file holds more than 200000 values, counting what aliases repeat. Write out what is needed, without aliases inside aliases.',
    ]);
    expect(took).toBeLessThan(3000);
  });

  it.each([
    ['brackets', '['.repeat(100_000)],
    ['dashes', '- '.repeat(100_000)],
    ['braces', '{a: '.repeat(100_000)],
    ['indents', Array.from({ length: 300 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
  ])('refuses deep nesting by %s', (_, text) => {
    expect(only(text)).toEqual([
      expect.stringMatching(
        /^\d+:\d+ Lists and groups stand more than 40 deep inside each other\. Write the file as in the examples: the deepest they go is six\.$/,
      ),
    ]);
  });

  it('refuses a text that is too long, that is no text, that is empty', () => {
    expect(only('#'.repeat(1_000_001))).toEqual([
      '0:0 The file has 1000001 characters. Files of up to a million are read.',
    ]);
    expect(only('fielded: 1\0')).toEqual(['0:0 The file is not text. Write it as plain text (UTF-8).']);
    for (const text of ['', ' \n\n', '# only a comment\n'])
      expect(only(text)).toEqual(['0:0 The file is empty. Start from one of the examples, or from docs/job-file.md.']);
    for (const text of ['just words', '- 1\n- 2'])
      expect(only(text)[0]).toMatch(
        /^1:1 The file is (text|a list), not a group of keys\. Start it with fielded: 1, as in the examples\.$/,
      );
  });

  it('refuses an alias that holds itself', () => {
    expect(only(broken('thickness: 20', 'thickness: &t [*t]'))).toEqual([
      '4:17 panel.thickness: […] is a list, not a thickness. Write a thickness above 0, at most 10 m, such as 19 mm or 3/4 in.',
      '4:18 *t repeats something that holds it. Write the value out.',
    ]);
  });

  it('bounds cuts and doors', () => {
    const cut = '  - { side: back, profile: { shape: bevel, reach: 9, depth: 3 } }\n';
    const many = `${SOUND.slice(0, SOUND.indexOf('cuts:'))}cuts:\n${cut.repeat(13)}`;
    expect(only(many)).toEqual(['10:3 cuts holds more than 12. Split the job into several files.']);
  });

  it('never throws, whatever stands in the file, and gives a job or faults', () => {
    const scraps = [
      '{',
      '}',
      '[',
      ']',
      ':',
      ' ',
      '\n',
      '- ',
      '*a',
      '&a ',
      '"',
      "'",
      '!',
      '#',
      '%',
      '|',
      '>',
      '\t',
      '0',
      '.nan',
      '__proto__',
      '<<',
      '?',
      'M 0 9',
      '\u0000',
      '💥',
    ];
    const mutate = fc.tuple(fc.nat(SOUND.length), fc.nat(20), fc.array(fc.constantFrom(...scraps), { maxLength: 4 }));
    fc.assert(
      fc.property(mutate, ([at, cut, put]) => {
        const { job, faults } = readJob(SOUND.slice(0, at) + put.join('') + SOUND.slice(at + cut));
        expect((job === null) === faults.length > 0).toBe(true);
        for (const fault of faults) expect(fault.message).toMatch(/^\S.*\.$/su);
        expect(JSON.stringify(job)).not.toMatch(/NaN|undefined|null,/);
      }),
      // Of 40 small faults of reading all 1500 notice 4, the last of them at the 76th; and words without a full stop at the first.
      { numRuns: trials(200, 1500), seed: 7 },
    );
  });
});
