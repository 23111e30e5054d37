import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { broken, SOUND } from '../core/job-texts.ts';
import { makeFolder, put, run, spawnCommand } from './command.ts';

const folder = makeFolder();
/** An escape sequence that sets a colour. */
const COLOUR = new RegExp(`${'\u001B'}\\[\\d+m`, 'g');
const sound = put(folder, 'sound.yaml', SOUND);

describe('fielded check JOB', () => {
  it('prints a sheet to pin up', async () => {
    const { status, out, err } = await run(['check', sound]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out.replace(sound, 'sound.yaml')).toBe(`Test
════
sound.yaml, lengths in mm

  Panel              20.00 mm thick
  Frame              22.00 mm thick
  Groove             6.40 mm wide, 11.00 mm deep, set back 7.50 mm
  Swell gap          2.00 mm

Cuts, in running order
  cut          side   shape  run    depth  reach   land  shoulder  takes mm²
  raise        front  ogee   under   9.00  38.00  11.00      1.50     240.75
  back relief  back   cove   over    4.60  14.00   9.00      0.00      59.08

Tongue
  Should go in       9.00 mm
  At the tip         6.40 mm
  At the mouth       6.40 mm
  Thinnest           6.40 mm
  Thickest           6.40 mm
  Groove needed      6.40 mm

Fit
  Clearance          0.00 mm
  Goes in at most    9.00 mm
  Gap at the bottom  2.00 mm
  Margin showing     29.00 mm
  Front face         1.5 mm proud
  Back face          3.5 mm recessed

Verdict
  » tight   – running not checked
  The tongue is tight: it goes in its full 9 mm with nothing to spare.
  Not checked, since the job or the shop does not say: cuts[0].head,
  cuts[1].head.

Problems
  ! warning  The tongue is tight: it goes in with nothing to spare and cannot
             slide. Take the back relief 0.2 mm deeper.
             (cuts, tight)

A test piece decides: cut one in the same stock before the panels.
`);
  });

  it('names the finish that takes part of the clearance', async () => {
    const filmed = put(folder, 'filmed.yaml', SOUND.replace(/thickness: 20/, 'thickness: 20\n  film: 0.05'));
    const { out } = await run(['check', filmed]);
    expect(out).toContain('  Finish             0.05 mm on each face of the tongue');
    // 6.4 of groove less 6.4 of tongue less two films.
    expect(out).toContain('  Clearance          −0.10 mm');
  });

  it('says how the rails meet the stiles, and what is worked on the back', async () => {
    const { out } = await run(['check', 'examples/coped-frame/job.yaml']);
    expect(out).toContain('  Cope               stub tenon 11.00 mm long; closes on the sticking\n');
    expect(out).toContain('  Back edge          5.00 mm wide, 4.00 mm deep\n');
  });

  it('keeps every line within 80 columns, and colours only where asked', async () => {
    const long = put(folder, 'long.yaml', broken('title: Test', `title: ${'A long title of doors '.repeat(8)}`));
    const { out } = await run(['check', long]);
    for (const line of out.split('\n').filter((line) => !line.includes(folder)))
      expect(line.length).toBeLessThanOrEqual(80);
    expect(out).not.toContain('\u001B');
    const painted = await run(['check', sound], { colour: true });
    expect(painted.out).toContain('\u001B[1mVerdict\u001B[22m');
    expect(painted.out.replaceAll(COLOUR, '')).toBe((await run(['check', sound])).out);
  });

  it('shows inches in a file of inches', async () => {
    const job = put(
      folder,
      'inch.yaml',
      'fielded: 1\nunits: in\npanel: { thickness: 3/4 }\nframe: { thickness: 13/16, groove: { width: 1/4, depth: 3/8, setback: 9/32 }, swellGap: 1/16 }\ncuts: [{ name: back, side: back, profile: { shape: rebate, reach: 7/16, depth: 0.507 } }]\n',
    );
    const { out } = await run(['check', job]);
    expect(out).toContain('  Groove             1/4 in wide, 3/8 in deep, set back 9/32 in\n');
    expect(out).toContain(
      '  cut   side  shape   run     depth  reach  land  shoulder  takes in²\n  back  back  rebate  under  0.5070   7/16     0         0     0.2218\n',
    );
    expect(out).toContain('  At the tip         ≈1/4 in (0.243 in)\n');
  });

  it('exits with 1 where a job has an error: here two cuts that meet', async () => {
    const job = put(folder, 'meet.yaml', broken('depth: 4.6', 'depth: 11.5').replace('reach: 14', 'reach: 34'));
    const { status, out, err } = await run(['check', job]);
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toContain('  ⊗ no tongue   – running not checked\n  The cuts meet and leave no tongue.\n');
    expect(out.replaceAll(/\s+/g, ' ')).toContain(
      '✗ error The cuts meet: they leave no wood within 13.79 mm of the edge. Take the back relief 6.7 mm shallower. (cuts, no-tongue)',
    );
  });

  it('prints the report as JSON, whole and at full precision, through a pipe', async () => {
    const { status, out, err } = await spawnCommand(['check', sound, '--json'], ' | cat');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const report = JSON.parse(out);
    expect(report).toMatchObject({ fielded: 1, title: 'Test', fit: { verdict: 'tight' }, tongue: { insertion: 9 } });
    expect(report.section.cuts[1].removedArea).toBeCloseTo(59.07998, 4);
    expect(report).not.toHaveProperty('file');
  });

  it('does not mind a reader that goes away', async () => {
    const { err } = await spawnCommand(['check', sound, sound, sound, '--json'], ' | head -c 10');
    expect(err).toBe('');
  });
});

describe('fielded check of several', () => {
  const many = join(folder, 'many');
  mkdirSync(join(many, 'inner'), { recursive: true });
  mkdirSync(join(many, '.hidden'));
  put(many, 'a.yaml', broken('depth: 4.6', 'depth: 4.8'));
  put(many, 'b.yml', broken('shape: ogee', 'shape: oggee'));
  put(many, 'shop.yaml', 'fielded: 1\nheads: {}\n');
  put(many, 'package.json', '{ "name": "x" }');
  put(many, 'notes.txt', SOUND);
  put(join(many, '.hidden'), 'd.yaml', SOUND);
  put(
    join(many, 'inner'),
    'c.json',
    '{ "fielded": 1, "panel": { "thickness": 18 }, "frame": { "thickness": 22, "groove": { "width": 6, "depth": 12, "setback": 8 }, "swellGap": 2 }, "cuts": [{ "name": "bevel", "side": "front", "profile": { "shape": "bevel", "reach": 45, "depth": 12.6, "shoulder": 2 } }] }',
  );

  it('searches a folder for jobs, tables them, and exits with the greatest status', async () => {
    const { status, out, err } = await run(['check', many]);
    expect(status).toBe(2);
    expect(err.replaceAll(many, 'many')).toBe(
      'many/b.yml:12:23  cuts[0].profile.shape: oggee is not known. Did you mean ogee? Write one of rebate, bevel, cove, ovolo, ogee, outline.\n',
    );
    expect(
      out.replaceAll(many, 'many').replaceAll(/ {2,}/g, '  '),
    ).toBe(`job  verdict  running  clearance  goes in at most  problems
many/a.yaml  ✓ sliding  – running not checked  0.20 mm  10.40 mm  none
many/b.yml  ⊘ not read
many/inner/c.json  ⊣ stops short  – running not checked  −1.76 mm  2.55 mm  1 error

many/inner/c.json
  ✗ error  The tongue goes in only 2.55 mm, 7.45 mm short: it wedges in the
  groove's mouth. Take the bevel 1.96 mm deeper.
  (cuts, stops-short)

3 jobs, 1 not read
`);
  });

  it('prints a list of reports that name their files', async () => {
    const { status, out } = await run(['check', join(many, 'a.yaml'), join(many, 'inner'), '--json']);
    expect(status).toBe(1);
    const reports = JSON.parse(out);
    expect(reports.map((report: { file: string }) => report.file)).toEqual([
      join(many, 'a.yaml'),
      join(many, 'inner', 'c.json'),
    ]);
    expect(reports[0].fit.verdict).toBe('sliding');
  });

  it('shows a bar on a terminal while there are many, and clears it', async () => {
    const { err } = await run(['check', sound, sound, sound, sound], { errIsTerminal: true, columns: 60 });
    const frames = err.split('\r\u001B[K');
    expect(frames[1]).toMatch(/^░{24} 0\/4 /);
    expect(frames[3]).toMatch(/^█{12}░{12} 2\/4 /);
    expect(frames.at(-1)).toBe('');
    for (const frame of frames) expect(frame.length).toBeLessThan(60);
    expect((await run(['check', sound, sound], { errIsTerminal: true })).err).toBe('');
  });

  it('says when a folder holds no job', async () => {
    const empty = join(folder, 'empty');
    mkdirSync(empty);
    expect(await run(['check', empty])).toMatchObject({
      status: 2,
      err: `${empty}  There is no job file in this folder. Name a folder with jobs in it.\n`,
    });
  });
});
