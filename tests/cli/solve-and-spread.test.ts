import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { evaluate, ONE_JOINT, type Report, readJob, type Solved } from '@fielded/core';
import { sceneToSvg, seasonScene, spreadScene } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { broken, SOUND } from '../core/job-texts.ts';
import { makeFolder, put, run, spawnCommand } from './command.ts';

const folder = makeFolder();
const SPREAD = 'spread: { thickness: 0.15, height: 0.1, fence: 0, grooveWidth: 0.1 }\n';
const SEASON = 'season: { made: 8, driest: 6, dampest: 11 }\n';
const wood = (text: string) => broken('thickness: 20', 'thickness: 20\n  species: black cherry\n  width: 400', text);
const spread = put(folder, 'spread.yaml', wood(SOUND) + SPREAD + SEASON);
/** Joints enough where what is simulated is not looked at. */
const FEW = ['--simulate', '200'];
const json = async (argv: readonly string[]) => JSON.parse((await run(argv)).out) as Report & { solved: Solved };

describe('fielded check with a spread and seasons', () => {
  it('prints them in the report', async () => {
    const report = await json(['check', spread, '--json']);
    expect(report.spread!.clearance.simulated).toMatchObject({ count: 100_000, seed: 1, distribution: 'normal' });
    expect(report.spread!.clearance.worst[0]).toBeCloseTo(-0.3, 9);
    expect(report.spread!.arrangements[0]!.runs).toEqual(['under', 'over']);
    expect(report.season!.driest.insertion).toBeCloseTo(9 - 0.992, 9);
  });

  it('says which face to keep down, in words', async () => {
    const under = put(folder, 'under.yaml', wood(SOUND).replace('run: over', 'run: under') + SPREAD);
    const { out } = await run(['check', under, ...FEW]);
    expect(out.replace(/\s+/g, ' ')).toContain(
      'Keep the panel face down for both cuts (raise under, back relief over). Stock thickness then no longer matters, and at the very worst the clearance differs by 0.6 mm instead of 0.9 mm.',
    );
    expect(out).toContain('  stock thickness                     0.15               0.15  42.9 %\n');
    expect(out.replace(/ {2,}/g, '  ')).toContain(
      [
        '  cuts run  least clearance  most clearance  ± from stock thickness',
        '  under, over  −0.30  0.30  0.00',
        '  over, under  −0.30  0.30  0.00',
        '  under, under (as now)  −0.45  0.45  0.15',
        '  over, over  −0.45  0.45  0.15',
        '',
      ].join('\n'),
    );
    const good = (await run(['check', spread, ...FEW])).out.replace(/\s+/g, ' ');
    expect(good).toContain(
      'Stock thickness does not matter to the clearance as the cuts are run. Keep the panel face down for both cuts',
    );
  });

  it('keeps to 80 columns', async () => {
    const { out } = await run(['check', spread]);
    expect(out.split('\n').filter((line) => line.length > 80)).toEqual([]);
  });

  it('simulates as many joints as asked, with the seed asked, evenly if asked', async () => {
    const report = await json(['check', spread, '--json', '--simulate', '5 000', '--seed', '7', '--uniform']);
    expect(report.spread!.clearance.simulated).toMatchObject({ count: 5_000, seed: 7, distribution: 'uniform' });
    const again = await json(['check', spread, '--json', '--simulate', '5000', '--seed', '7', '--uniform']);
    expect(again).toEqual(report);
  });

  it('shows a bar on a terminal and takes it away', async () => {
    const { err } = await run(['check', spread, '--simulate', '66000'], { errIsTerminal: true });
    expect(err).toContain(' 49 % of 66,000 joints, Ctrl-C to end here');
    expect(err.endsWith('\r\u001B[K')).toBe(true);
    expect((await run(['check', spread, '--simulate', '66000'])).err).toBe('');
  });

  it('ends a run at Ctrl-C with the joints made so far', async () => {
    const others = new Set(process.listeners('SIGINT'));
    const pending = run(['check', spread, '--json', '--simulate', '900000000']);
    // Not before the run listens: on a busy machine it begins late, and unheard it would go on for minutes. And to the run alone:
    // a browser that other tests of this process have open would end the process.
    const asked = setInterval(() => {
      const [interrupt] = process.listeners('SIGINT').filter((listener) => !others.has(listener));
      if (interrupt === undefined) return;
      clearInterval(asked);
      setTimeout(() => interrupt('SIGINT'), 10);
    }, 5);
    const { status, out } = await pending;
    expect(status).toBe(0);
    const { count, shares } = (JSON.parse(out) as Report).spread!.clearance.simulated;
    expect(count).toBeGreaterThan(1000);
    expect(count).toBeLessThan(100_000_000);
    expect(Object.values(shares).reduce((a, b) => a + b)).toBeCloseTo(1, 9);
  });

  it.each([
    [['--simulate', '0'], '--simulate needs a whole number from 1 to 1000000000, not 0.'],
    [['--simulate', 'many'], '--simulate needs a whole number from 1 to 1000000000, not many.'],
    [['--seed', '1.5'], '--seed needs a whole number from 0 to 4294967295, not 1.5.'],
  ])('%j', async (options, message) => {
    expect(await run(['check', spread, ...options])).toEqual({ status: 2, out: '', err: `fielded: ${message}\n` });
  });

  it('refuses a negative ± where it stands', async () => {
    const bad = put(folder, 'negative.yaml', SOUND + SPREAD.replace('0.15', '-0.15'));
    const { status, err } = await run(['check', bad]);
    expect(status).toBe(2);
    expect(err).toBe(`${bad}:18:22  spread.thickness: -0.15 is too small. Write a length from 0 to 10 m.\n`);
  });

  it.each([
    ['made: 8', 'made: 31', /:19:17 {2}season\.made: 31/],
    ['dampest: 11', 'dampest: { temperature: 20, humidity: 120 }', /season\.dampest.*humidity: 120/],
  ])('refuses a season with %s → %s', async (from, to, message) => {
    const bad = put(
      folder,
      'season.yaml',
      wood(SOUND).replace('\n  species: black cherry\n  width: 400', '') + SPREAD + SEASON.replace(from, to),
    );
    const { status, err } = await run(['check', bad]);
    expect(status).toBe(2);
    expect(err).toMatch(message);
  });
});

describe('fielded draw of a spread and of seasons', () => {
  // Joints are drawn in the one, and not in the other.
  it.each([
    ['spread', spreadScene, {}],
    ['season', seasonScene, { simulation: ONE_JOINT }],
  ] as const)('%s', async (view, scene, options) => {
    const report = evaluate(readJob(readFileSync(spread, 'utf8')).job!, options);
    const { out, status } = await run(['draw', spread, '--view', view]);
    // Not compared by the matcher: a page of SVG in a failure helps nobody.
    expect(out === sceneToSvg(scene(report), { theme: 'print' })).toBe(true);
    expect(status).toBe(0);
  });

  it.each([
    [
      'spread',
      'This job has no spread to draw. Add spread: { thickness: 0.15, height: 0.1 } to it, and see what fielded check says of it.',
    ],
    [
      'season',
      'This job has no seasons to draw. Add season: { made: 8, driest: 6, dampest: 11 } to it, and see what fielded check says of it.',
    ],
  ])('says what %s needs', async (view, message) => {
    const plain = put(folder, 'plain.yaml', SOUND);
    expect(await run(['draw', plain, '--view', view])).toEqual({ status: 2, out: '', err: `fielded: ${message}\n` });
  });
});

describe('fielded solve', () => {
  const ask = (job: string, figure: string, by: string, ...more: string[]) => [
    'solve',
    job,
    '--for',
    figure,
    '--by',
    by,
    ...more,
  ];
  const job = put(folder, 'job.yaml', SOUND);

  it('prints the answer beside the report as JSON', async () => {
    const { solved, fit } = await json(ask(job, 'clearance=0.2', 'back relief.depth', '--json'));
    expect(fit.clearance).toBe(0);
    expect(solved).toMatchObject({ for: 'clearance', value: 0.2, by: 'back relief.depth' });
    expect(solved.setting).toBeCloseTo(4.8, 12);
    expect(solved.change).toBeCloseTo(0.2, 12);
    expect(solved.move).toBe('lower the spindle by 0.2 mm');
  });

  it('says it in words', async () => {
    const { status, out } = await run(ask(job, 'clearance = 0.2 mm', 'back relief.depth'));
    expect(status).toBe(0);
    expect(out.split('\n').slice(0, 5)).toEqual([
      'back relief.depth for clearance = 0.20 mm',
      '  Set it to          4.80 mm',
      '  Nearest 1/64 in    3/16 in (4.76 mm): clearance is then 0.16 mm',
      '  Move               lower the spindle by 0.2 mm',
      '',
    ]);
    expect(out).toContain('  verdict                   tight → sliding\n');
  });

  it('says why there is none, and exits with 1', async () => {
    const { status, out } = await run(ask(job, 'deepestInsertion=14', 'back relief.depth'));
    expect(status).toBe(1);
    expect(out.replace(/\s+/g, ' ')).toContain(
      'bring the deepest insertion to 14 mm: the nearest is 11 mm, at 5.03 mm.',
    );
  });

  it('writes the setting into the file and leaves the rest of it alone', async () => {
    const commented = broken('side: back', 'side: back   # sizes the tongue');
    const path = put(folder, 'write.yaml', commented);
    const { out } = await run(ask(path, 'clearance=0.2', 'back relief.depth', '--write'));
    expect(out).toContain(`Written to ${path}.`);
    expect(readFileSync(path, 'utf8')).toBe(`${commented}    depth: 4.8\n`);
    expect((await json(['check', path, '--json'])).fit.clearance).toBeCloseTo(0.2, 9);
    expect((await run(ask(path, 'clearance=0.1', 'back relief.depth', '--write'))).status).toBe(0);
    expect(readFileSync(path, 'utf8')).toBe(`${commented}    depth: 4.7\n`);
  });

  it('writes nothing where there is no answer or nothing changes', async () => {
    const path = put(folder, 'same.yaml', SOUND);
    expect((await run(ask(path, 'deepestInsertion=14', 'back relief.depth', '--write'))).status).toBe(1);
    expect((await run(ask(path, 'clearance=0', 'back relief.depth', '--write'))).out).not.toContain('Written');
    expect(readFileSync(path, 'utf8')).toBe(SOUND);
  });

  it('brings the face flush with both cuts, writes them round, and the file reads back so', async () => {
    const path = put(folder, 'flush.yaml', SOUND);
    const { status, out } = await run(['solve', path, '--for', 'face=flush', '--write']);
    expect({ status, first: out.split('\n')[0] }).toEqual({
      status: 0,
      first: 'raise.depth and back relief.depth for face = 0.00 mm',
    });
    const { fit, statements } = await json(['check', path, '--json']);
    expect(fit.frontFace!.least + fit.frontFace!.most).toBeCloseTo(0, 9);
    expect(fit.clearance).toBeCloseTo(0.2, 9);
    expect(statements.fits).toBe(true);
    expect(readFileSync(path, 'utf8')).toMatch(/depth: 7\.6\n/);
  });

  it('changes two sizes, as little as will do', async () => {
    const sizes = ['--by', 'raise.depth', '--by', 'back relief.depth'];
    const { solved } = await json(['solve', job, '--for', 'clearance=0.2', ...sizes, '--json']);
    expect(solved).toMatchObject({ by: ['raise.depth', 'back relief.depth'], reason: null });
    const thrice = await run(['solve', job, '--for', 'clearance=0.2', ...sizes, '--by', 'panel.thickness']);
    expect(thrice.err).toContain('--by is given more than 2 times. Give it 2 times at most.');
  });

  it('leaves the mark with which some editors start a file', async () => {
    const path = put(folder, 'marked.yaml', `\uFEFF${SOUND}`);
    expect((await run(ask(path, 'bottomGap=3', 'frame.swellGap', '--write'))).status).toBe(0);
    expect(readFileSync(path, 'utf8')).toBe(`\uFEFF${SOUND.replace('swellGap: 2', 'swellGap: 3')}`);
  });

  it('says what it cannot write', async () => {
    const shared = SOUND.replace('swellGap: 2', 'swellGap: &gap 2').replace('thickness: 22', 'thickness: 22');
    const path = put(folder, 'shared.yaml', shared);
    const { status, out, err } = await run(ask(path, 'bottomGap=3', 'frame.swellGap', '--write'));
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(
      'frame.swellGap stands in a part of the file that other places share (an alias): change it by hand.',
    );
    expect(readFileSync(path, 'utf8')).toBe(shared);
  });

  it.each([
    [['solve'], 'solve needs one job file. See fielded help solve.'],
    [
      ['solve', 'a.yaml', '--for', 'clearance=1'],
      'solve needs --for FIGURE=VALUE and --by SIZE. See fielded help solve.',
    ],
    [ask(job, 'clearance', 'raise.depth'), '--for clearance has no value. Write it as --for clearance=0.2.'],
    [ask(job, 'clearance=some', 'raise.depth'), /^--for clearance=some: the value is .+\. Write .+\.$/],
    [
      ask(job, 'clearence=0.2', 'raise.depth'),
      'clearence is not a figure of this job: did you mean clearance? See fielded help solve.',
    ],
    [
      ask(job, 'clearance=0.2', 'rase.depth'),
      'rase.depth is not a size to set of this job: did you mean raise.depth? See fielded help solve.',
    ],
  ])('%j', async (argv, message) => {
    const { status, out, err } = await run(argv);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    const said = err.replace(/^fielded: /, '').trim();
    if (typeof message === 'string') expect(said).toBe(message);
    else expect(said).toMatch(message);
  });

  it('runs as a process of its own', async () => {
    const { status, out } = await spawnCommand(ask(join(folder, 'job.yaml'), 'clearance=0.2', 'back relief.depth'));
    expect(status).toBe(0);
    expect(out).toContain('lower the spindle by 0.2 mm');
  });
});
