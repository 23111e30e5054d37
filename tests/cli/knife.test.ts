import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { evaluate, readJob, readShop, reportShopKnives, sampleBoard } from '@fielded/core';
import { readDxf, readPoints, writeDxf } from '@fielded/exchange';
import { readReportPath } from '@fielded/geometry';
import { boardPage, drawBoard, drawKnife } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { makeFolder, put, run, withoutMark } from './command.ts';

const SHOP = 'examples/shop/shop.yaml';
const JOB = 'examples/shop/job.yaml';
const folder = makeFolder();
const shopText = readFileSync(SHOP, 'utf8');
const { shop } = readShop(shopText);
const knives = reportShopKnives(shop!).reports;
const named = (name: string) => knives.find((knife) => knife.cut === name)!;
const NAMES = 'ogee-38, bevel-36, hollow-34, cove-14, rebate-10, ovolo-10, thumb-14 and old-hollow';

describe('fielded knife', () => {
  it('draws the knife and the limiter of every knife of the example shop', async () => {
    for (const { cut: name } of knives) {
      for (const part of ['knife', 'limiter'] as const) {
        const target = join(folder, 'drawn', `${name}-${part}.svg`);
        const { status, out } = await run(['knife', SHOP, '--name', name, '--part', part, '-o', target]);
        expect([status, out]).toEqual([0, '']);
        const drawing = { knife: named(name), units: 'mm' as const, title: 'Knives of the shop', part };
        expect(withoutMark(readFileSync(target, 'utf8'))).toBe(drawKnife(drawing));
      }
    }
    expect(readdirSync(join(folder, 'drawn'))).toHaveLength(2 * knives.length);
  });

  it('writes a DXF that reads back as the outline of the report', async () => {
    const target = join(folder, 'ogee.dxf');
    await run(['knife', SHOP, '--name', 'ogee-38', '-o', target]);
    const { outlines } = readDxf(readFileSync(target, 'utf8'));
    const written = readReportPath(named('ogee-38').outline)[0]!;
    expect(outlines.map((o) => o.layer)).toEqual(['KNIFE', 'LIMITER', 'WOOD', 'AXIS', 'BLANK']);
    expect(outlines[0]!.chain).toHaveLength(written.length);
    outlines[0]!.chain.forEach((c, i) => {
      for (const key of ['x0', 'y0', 'x1', 'y1', 'r'] as const) expect(c[key]).toBeCloseTo(written[i]![key], 7);
    });
  });

  it('writes the ordinates of the report as CSV, the limiter’s its own', async () => {
    for (const part of ['knife', 'limiter'] as const) {
      const target = join(folder, `${part}.csv`);
      await run(['knife', SHOP, '--name', 'cove-14', '--part', part, '-o', target]);
      const text = readFileSync(target, 'utf8');
      expect(text).toMatch(/^s \(mm\),t \(mm\)\r\n/);
      const { ordinates } = part === 'knife' ? named('cove-14') : named('cove-14').limiter!;
      const { points } = readPoints(text);
      expect(points).toHaveLength(ordinates.length);
      points.forEach(({ x, y }, i) => {
        expect(x).toBeCloseTo(ordinates[i]!.s, 6);
        expect(y).toBeCloseTo(ordinates[i]!.t, 6);
      });
    }
  });

  it('finds the knife of a cut by the cut’s name, and by the knife’s', async () => {
    const { job } = readJob(readFileSync(JOB, 'utf8'), { loadShop: () => shopText });
    const report = evaluate(job!);
    const expected = drawKnife({ knife: report.knives![1]!, units: 'mm', title: report.title, part: 'knife' });
    expect((await run(['knife', JOB, '--name', 'back relief'])).out).toBe(expected);
    expect((await run(['knife', JOB, '--name', 'cove-14'])).out).toBe(expected);
  });

  it('asks for side relief on the drawing, and warns of nothing that is ground as usual', async () => {
    const { out, err } = await run(['knife', SHOP, '--name', 'rebate-10']);
    expect(err).toBe('');
    expect(out).toContain('Side relief: grind at least 3° here');
  });

  it.each([
    [['knife'], 'fielded: knife needs a job or a shop file. See fielded help knife.\n'],
    [['knife', SHOP, JOB], 'fielded: knife takes one file at a time. See fielded help knife.\n'],
    [['knife', SHOP], `fielded: There are several: say which with --name. There are ${NAMES}.\n`],
    [
      ['knife', SHOP, '--name', 'oge-38'],
      `fielded: --name oge-38: there is no such knife. Did you mean ogee-38? There are ${NAMES}.\n`,
    ],
    [
      ['knife', JOB, '--name', 'rise'],
      'fielded: --name rise: there is no such cut. Did you mean raise? There are raise and back relief.\n',
    ],
    [
      ['knife', SHOP, '--name', 'ogee-38', '--part', 'limitter'],
      'fielded: --part limitter is not known. Did you mean limiter? There are knife and limiter.\n',
    ],
    [
      ['knife', SHOP, '--name', 'ogee-38', '-o', 'x.png'],
      'fielded: x.png does not say what to write: end the name in .svg, .pdf, .html, .dxf or .csv.\n',
    ],
    [['knife', 'none.yaml'], 'none.yaml  There is no such file. Check the name and the folder.\n'],
  ])('%j is refused', async (argv, err) => {
    expect(await run(argv)).toEqual({ status: 2, out: '', err });
  });

  it('says why a knife cannot be computed, and writes nothing', async () => {
    const heads = 'heads: { raiser: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, rake: 30, maxSpeed: 8000 } }';
    const bad = put(
      folder,
      'bad.yaml',
      `fielded: 1
knives:
  far: { shape: bevel, reach: 60, depth: 9, head: raiser }
  bare: { shape: bevel, reach: 30, depth: 9 }
  lost: { shape: bevel, reach: 30, depth: 9, head: riser }
${heads}
`,
    );
    const said = async (name: string) => {
      const { status, out, err } = await run(['knife', bad, '--name', name]);
      expect([status, out]).toEqual([1, '']);
      return err;
    };
    expect(await said('far')).toBe(
      `${bad}  The face of the knives in the head "raiser" never reaches in to a radius of 20 mm for the far: 30° of cutting angle on a cutting radius of 80 mm sets it 40 mm off the axis. The greatest reach that works is 39.9 mm: take less reach, less cutting angle or a larger head.\n`,
    );
    expect(await said('bare')).toBe(
      `${bad}  The knife bare names no head, and what to grind depends on it. Add head: to it.\n`,
    );
    expect(await said('lost')).toBe(
      `${bad}  The knife lost is kept in the head riser, which the shop does not describe. Did you mean raiser? Describe it under heads.\n`,
    );
  });

  it('names a cut that names no head', async () => {
    const text = readFileSync(JOB, 'utf8').replace(
      'knife: cove-14',
      'profile: { shape: cove, reach: 14, depth: 4.8, land: 9 }',
    );
    const job = put(folder, 'headless.yaml', text);
    const { status, err } = await run(['knife', job, '--shop', SHOP, '--name', 'back relief']);
    expect(status).toBe(1);
    expect(err).toBe(
      `${job}  The cut "back relief" names no head, and what to grind depends on it. Add head: to it.\n`,
    );
  });

  it('lists the faults of a shop file by line', async () => {
    const bad = put(folder, 'faulty.yaml', shopText.replace('rake: 15', 'rake: 75'));
    const { status, err } = await run(['knife', bad, '--name', 'ogee-38']);
    expect(status).toBe(2);
    expect(err).toMatch(
      /^\S+faulty\.yaml:\d+:\d+ {2}heads\.raiser\.rake: 75° of rake is past what a cutter's face can have\./,
    );
  });
});

describe('fielded board', () => {
  const samples = sampleBoard(shop!);

  it('draws every knife of the shop, as one drawing and as a page', async () => {
    const drawing = { samples, units: 'mm' as const, title: 'Our knives' };
    expect((await run(['board', SHOP])).out).toBe(drawBoard(drawing));
    const page = join(folder, 'board.html');
    expect(await run(['board', SHOP, '--title', 'Knives & heads', '-o', page])).toEqual({
      status: 0,
      out: '',
      err: '',
    });
    const html = withoutMark(readFileSync(page, 'utf8'));
    expect(html).toBe(boardPage({ ...drawing, title: 'Knives & heads' }));
    expect(html).toContain('<title>Knives &amp; heads: sample board</title>');
    for (const { name } of samples) expect(html).toContain(`>${name}</text>`);
  });

  it.each([
    [['board'], 2, 'fielded: board needs a shop file. See fielded help board.\n'],
    [['board', SHOP, '-o', 'b.dxf'], 2, 'fielded: b.dxf does not say what to write: end the name in .svg or .html.\n'],
  ])('%j is refused', async (argv, status, err) => {
    expect(await run(argv)).toEqual({ status, out: '', err });
  });

  it('says so where there is nothing to show', async () => {
    const bare = put(folder, 'bare.yaml', 'fielded: 1\nknives: {}\n');
    expect(await run(['board', bare])).toEqual({
      status: 1,
      out: '',
      err: `${bare}  The shop has no knives to show. Add some under knives.\n`,
    });
  });
});

describe('drawings that profiles name', () => {
  const dxf = writeDxf([{ name: 'PROFILE', chains: [readReportPath('M 0 -9 L 12 -9 L 30 0')[0]!] }]);
  const job = (file: string) => `fielded: 1
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 11, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts: [ { name: raise, side: front, profile: { shape: outline, file: ${file} } } ]
`;

  it('are opened beside the job, by check as by knife', async () => {
    put(folder, 'bevel.dxf', dxf);
    const path = put(folder, 'drawn.yaml', job('bevel.dxf'));
    const { out, err } = await run(['check', path, '--json']);
    expect(err).toBe('');
    expect(JSON.parse(out).section.cuts[0]).toMatchObject({ shape: 'outline', reach: 30, depth: 9 });
    const headed = put(
      folder,
      'headed.yaml',
      job('bevel.dxf').replace('file: bevel.dxf }', 'file: bevel.dxf }, head: raiser'),
    );
    expect((await run(['knife', headed, '--shop', SHOP])).out).toMatch(/^<svg /);
  });

  it('are looked for nowhere else', async () => {
    const path = put(folder, 'outside.yaml', job('../bevel.dxf'));
    const { status, err } = await run(['check', path]);
    expect(status).toBe(2);
    expect(err).toContain(
      "cuts[0].profile.file: ../bevel.dxf: the file lies outside the job's folder. Move it into the folder of the job.",
    );
  });

  it('serve the knives of a shop', async () => {
    put(folder, 'bevel.dxf', dxf);
    const text = shopText.replace('knives:', 'knives:\n  traced: { shape: outline, file: bevel.dxf, head: raiser }');
    const path = put(folder, 'tracing.yaml', text);
    expect((await run(['knife', path, '--name', 'traced'])).out).toMatch(/^<svg /);
    expect((await run(['board', path])).out).toContain('>traced</text>');
  });
});

describe('an order', () => {
  it('is a PDF of sheets, with number and revision', async () => {
    const path = join(folder, 'order.pdf');
    const given = ['knife', SHOP, '--name', 'ogee-38', '-o', path, '--number', 'K-17', '--revision', 'B'];
    expect((await run(given)).status).toBe(0);
    const bytes = readFileSync(path);
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    expect(bytes.toString('latin1').match(/\/Type \/Page\b(?!s)/g)).toHaveLength(4);
  });

  it('has its title block to itself', async () => {
    const { status, err } = await run(['knife', SHOP, '--name', 'ogee-38', '--number', 'K-17']);
    expect(status).toBe(2);
    expect(err).toBe('fielded: --number is for orders. Write a .pdf or .html with -o, or leave it out.\n');
  });
});

describe('fielded match', () => {
  it('names the nearest knife first, as JSON and in words', async () => {
    const { status, out } = await run(['match', JOB, '--cut', 'raise', '--json']);
    expect(status).toBe(0);
    const { matches } = JSON.parse(out);
    expect(matches[0]).toMatchObject({ knife: 'ogee-38', reach: 38, fit: 'sliding', works: true, against: [] });
    expect(matches).toHaveLength(8);
    expect((await run(['match', JOB, '--cut', 'raise'])).out).toContain(
      'ogee-38: set to reach 38 mm, at most 0 mm off; sliding',
    );
  });

  it('asks which cut, and knows one that was meant', async () => {
    expect((await run(['match', JOB])).err).toContain('There are several cuts: say which with --cut.');
    expect((await run(['match', JOB, '--cut', 'rais'])).err).toContain('Did you mean raise?');
  });
});
