import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeFolder, run } from './command.ts';

const EXAMPLE = 'examples/two-machines/job.yaml';
const folder = makeFolder();

/** The example with some of its shop changed, in a folder of its own. */
function example(change: (shop: string) => string, job: (text: string) => string = (text) => text): string {
  writeFileSync(join(folder, 'shop.yaml'), change(readFileSync('examples/two-machines/shop.yaml', 'utf8')));
  const path = join(folder, 'job.yaml');
  writeFileSync(path, job(readFileSync(EXAMPLE, 'utf8')));
  return path;
}

describe('fielded plan', () => {
  it('prints set-ups and an order of work to follow', async () => {
    const { status, out, err } = await run(['plan', EXAMPLE]);
    expect([status, err]).toEqual([0, '']);
    for (const line of [
      'Seat of the head   −29.50 mm',
      'Table ring         170.00 mm, needs 166.00 mm',
      'clockwise seen from above, feed left to right',
      'Order of work: 2 set-ups',
      'Rip the blanks for dresser, now that their ends have every cut',
      'Turned by hand through a dry run with the machine off.',
    ])
      expect(out).toContain(line);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    const at = (words: string) => out.indexOf(words);
    expect(at('cove on "bench": the narrow panels')).toBeGreaterThan(at('Rip the blanks'));
    expect(at('raise on "large": the narrow panels')).toBeGreaterThan(at('cove on "bench": the narrow panels'));
  });

  it('lists every way with what stands against it', async () => {
    const { out } = await run(['plan', EXAMPLE, '--all']);
    expect(out).toMatch(/raise +bench +under +counterclockwise +no +✗ seat-too-low/);
    expect(out.match(/ works$/gm)).toHaveLength(4);
    // A tick is kept for a job that fits and can be made.
    expect(out).not.toMatch(/✓ works/);
  });

  it('names a knife that rubs, counts it as a cut that cannot be run, and says it on the sheet of its set-up', async () => {
    const path = example((shop) => shop.replace('rake: 15, wedge: 45', 'rake: 30, wedge: 58'));
    const { status, out } = await run(['plan', path]);
    expect(out).toContain('✗ cannot be run: 1 error');
    expect(out).toMatch(/✗ error +The back of the knife for the raise rubs/);
    const json = await run(['plan', path, '--json']);
    expect(JSON.parse(json.out).problems).toContainEqual(expect.objectContaining({ code: 'back-rubs' }));
    const sheet = join(folder, 'rubs.svg');
    const drawn = await run(['plan', path, '--sheet', '2', '-o', sheet]);
    expect(readFileSync(sheet, 'utf8')).toContain('The back of the knife for the raise rubs');
    expect([status, json.status, drawn.status]).toEqual([1, 1, 1]);
  });

  it('calls both heads at once one set-up', async () => {
    const path = example((shop) =>
      shop
        .replace('cuttingDiameter: 125', 'cuttingDiameter: 112')
        .replace('speeds: [3000, 4500, 6000, 7500]', 'speeds: [7000]')
        .replace('power: 4', 'power: 9')
        .replace(/(fromFace: 1.2.* run: )under/, '$1over'),
    );
    const { out } = await run(['plan', path]);
    expect(out).toContain('Set-up 1, lower head: raise');
    expect(out).toContain('Set-up 1, upper head: cove');
    expect(out).toContain('Order of work: 1 set-up');
  });

  it('prints the plan as JSON', async () => {
    const { out } = await run(['plan', EXAMPLE, '--json']);
    const { fielded, title, plan, problems } = JSON.parse(out);
    expect([fielded, title, problems]).toEqual([1, 'Dresser doors, narrow panels', []]);
    expect(Object.keys(plan)).toEqual(['setups', 'ways', 'steps', 'setUpCount', 'stack', 'otherHeads', 'correction']);
    expect(plan.setups[0]).toMatchObject({ cut: 'raise', machine: 'large', seat: -29.5, notChecked: [] });
    expect(plan.correction[1]).toHaveLength(6);
  });

  it('proposes another run with status 0, and writes it into the job with --write', async () => {
    const path = example((shop) => shop.replace('seat: [-60, 100]', 'seat: [-25, 100]'));
    const before = readFileSync(path, 'utf8');
    const { status, out } = await run(['plan', path]);
    expect(status).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain('would sit 29.5 mm below the table, and 25 mm below it is the lowest');
    expect((await run(['plan', path, '--write'])).status).toBe(0);
    expect(readFileSync(path, 'utf8')).toBe(before.replace('knife: ogee-38, run: under', 'knife: ogee-38, run: over'));
    const again = await run(['plan', path]);
    expect(again.out).not.toContain('another-run');
  });

  it('ends with 1 where a cut cannot be run, and check says so too', async () => {
    const path = example((shop) => shop.replaceAll(/seat: \[-\d+, \d+\]/g, 'seat: [0, 5]'));
    const { status, out } = await run(['plan', path]);
    expect(status).toBe(1);
    expect(out).toContain('cannot-be-run');
    const checked = await run(['check', path]);
    expect(checked.status).toBe(1);
    expect(checked.out).toContain('cannot-be-run');
    expect(checked.out).toContain('✗');
  });

  it('plans with one machine alone, and knows the others by name', async () => {
    const { out } = await run(['plan', EXAMPLE, '--machine', 'large', '--json']);
    const { plan } = JSON.parse(out);
    expect(new Set(plan.setups.map(({ machine }: { machine: string }) => machine))).toEqual(new Set(['large']));
    // Narrow panels on one machine: 2m − 1.
    expect(plan.setUpCount).toBe(3);
    const wrong = await run(['plan', EXAMPLE, '--machine', 'larg']);
    expect([wrong.status, wrong.err]).toEqual([
      2,
      expect.stringContaining('Did you mean large? The shop has large and bench.'),
    ]);
  });

  it('writes sheets: all of them as PDF or HTML, one as SVG', async () => {
    const pdf = join(folder, 'plan.pdf');
    expect((await run(['plan', EXAMPLE, '-o', pdf])).status).toBe(0);
    const bytes = readFileSync(pdf, 'latin1');
    expect(bytes.startsWith('%PDF-')).toBe(true);
    expect(bytes.match(/\/Type \/Page\b/g)).toHaveLength(3);
    const html = join(folder, 'plan.html');
    expect((await run(['plan', EXAMPLE, '-o', html])).status).toBe(0);
    expect(readFileSync(html, 'utf8').match(/<svg/g)).toHaveLength(3);
    const svg = join(folder, 'plan.svg');
    expect((await run(['plan', EXAMPLE, '-o', svg, '--sheet', '2'])).status).toBe(0);
    expect(readFileSync(svg, 'utf8')).toContain('Set-up 1: raise');
    const none = await run(['plan', EXAMPLE, '-o', svg, '--sheet', '9']);
    expect([none.status, none.err]).toEqual([2, expect.stringContaining('--sheet 9: there are 3')]);
    const both = await run(['plan', EXAMPLE, '-o', pdf, '--json']);
    expect([both.status, both.err]).toEqual([2, expect.stringContaining('--json goes to standard output')]);
  });

  it.each([
    ['examples/ogee-cove/job.yaml', 'There is no shop to plan in'],
    ['examples/two-machines/shop.yaml', 'This is a shop file, not a job'],
    ['nowhere.yaml', 'nowhere.yaml'],
  ])('says what is missing in %s', async (path, said) => {
    const { status, err } = await run(['plan', path]);
    expect(status).toBe(2);
    expect(err).toContain(said);
  });
});
