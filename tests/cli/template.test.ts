import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readDxf } from '@fielded/exchange';
import { describe, expect, it } from 'vitest';
import { ringShortfall, templateOffset } from '../../packages/core/src/door/guide.ts';
import { makeFolder, run } from './command.ts';

const JOB = 'examples/wardrobe/job.yaml';
const folder = makeFolder();

/** The chain of the one outline in a DXF that a template wrote. */
async function written(...more: string[]) {
  const target = join(folder, 'part.dxf');
  const { status } = await run(['template', JOB, ...more, '-o', target]);
  expect(status).toBe(0);
  const { outlines } = readDxf(readFileSync(target, 'utf8'));
  expect(outlines).toHaveLength(1);
  return outlines[0]!.chain;
}

const arcs = (chain: Awaited<ReturnType<typeof written>>) => chain.filter(({ turn }) => turn !== 0);

describe('fielded template', () => {
  it('writes the arcs of a cathedral that plane geometry gives, panel and field', async () => {
    const panel = arcs(await written('--door', 'cathedral'));
    expect(panel.map(({ r }) => r.toFixed(6)).sort()).toEqual(['129.000000', '71.000000', '71.000000']);
    const field = arcs(await written('--door', 'cathedral', '--part', 'field'));
    expect(field.map(({ r }) => r.toFixed(6)).sort()).toEqual(['109.000000', '109.000000', '91.000000']);
    // The same centres: the crown's in the middle, the ears' half the curved width beside it.
    const foot = Math.sqrt(60 * (2 * (120 + 80) - 60));
    for (const all of [panel, field]) {
      const across = all.map(({ cx }) => cx - 209).sort((p, q) => p - q);
      for (const [i, x] of [-foot, 0, foot].entries()) expect(across[i]).toBeCloseTo(x, 6);
    }
  });

  it('writes a rail whose sight edge is the arch between two joints', async () => {
    const rail = await written('--door', 'arched', '--part', 'rail');
    const [arch] = arcs(rail);
    expect(arch!.r).toBeCloseTo(510, 6);
    const xs = [arch!.x0, arch!.x1].sort((p, q) => p - q);
    // 480 between the stiles, 11 of cope at each end.
    expect(xs[0]).toBeCloseTo(11, 6);
    expect(xs[1]).toBeCloseTo(491, 6);
    expect(Math.max(...rail.map(({ x1 }) => x1))).toBeCloseTo(502, 6);
    expect(Math.max(...rail.map(({ y1 }) => y1))).toBeCloseTo(120, 6);
  });

  it('moves the panel for another bearing, so that the axis stays where it was', async () => {
    // The head of the back cut needs most room: 62.5 − 14 = 48.5. A bearing of 60 in diameter runs 18.5 further out.
    expect(templateOffset(48.5, 30)).toBeCloseTo(18.5, 9);
    const radii = arcs(await written('--door', 'cathedral', '--bearing', '60')).map(({ r }) => r.toFixed(6));
    expect(radii.sort()).toEqual(['147.500000', '52.500000', '52.500000']);
  });

  it('moves it for the bearing of the cut that is named, and names each cut with its own', async () => {
    // The raise: 80 − 38 = 42. A bearing of 60 in diameter runs 12 further out.
    const moved = ['--door', 'cathedral', '--bearing', '60', '--cut', 'raise'];
    expect(
      arcs(await written(...moved))
        .map(({ r }) => r.toFixed(6))
        .sort(),
    ).toEqual(['141.000000', '59.000000', '59.000000']);
    expect((await run(['template', JOB, ...moved])).out).toContain(
      'For the raise on a bearing of 60 mm: 12 mm outside',
    );
    const own = (await run(['template', JOB, '--door', 'cathedral'])).out;
    expect(own).toContain('bearing 84 mm for raise, 97 mm for back relief');
    expect(own).toContain(
      'The raise on a ring fence of 120 mm: 0.07 mm short 5° off its mark, 0.27 mm at 10°, 1.09 mm at 20°.',
    );
  });

  it('draws it on one piece and over several sheets', async () => {
    const svg = await run(['template', JOB, '--part', 'rail']);
    expect(svg.status).toBe(0);
    expect(svg.out).toContain('<svg');
    const pdf = join(folder, 'panel.pdf');
    expect((await run(['template', JOB, '--door', 'cathedral', '-o', pdf])).status).toBe(0);
    const pages = readFileSync(pdf, 'latin1').match(/\/Type \/Page\b/g) ?? [];
    // 418 × 783 mm over sheets with 182 × 255 mm of room: three beside each other, four under each other, those without an edge left out.
    expect(pages).toHaveLength(10);
  });

  it('knows how far a ring fence falls short beside its mark', () => {
    const degrees = (angle: number) => ringShortfall(90, 80, 38, (angle * Math.PI) / 180);
    expect([5, 10, 20].map((angle) => degrees(angle).toFixed(6))).toEqual(['0.182654', '0.729228', '2.894754']);
  });

  it.each([
    [['examples/hall-doors/job.yaml'], 1, 'No door has a shaped head.'],
    [[JOB, '--door', 'cathedrl'], 2, 'Did you mean cathedral?'],
    [[JOB, '--bearing', 'big'], 2, '--bearing big: write the diameter'],
    [[JOB, '--part', 'rail', '--bearing', '60'], 2, '--bearing is for the panel'],
    [[JOB, '--door', 'cathedral', '--bearing', '-3'], 2, '--bearing'],
    [[JOB, '--cut', 'raise'], 2, 'Add --bearing'],
    [[JOB, '--bearing', '60', '--cut', 'rise'], 2, 'There are raise and back relief.'],
  ])('says what is wrong with %j', async (argv, status, words) => {
    const done = await run(['template', ...argv]);
    expect(done.status).toBe(status);
    expect(done.err).toContain(words);
  });
});

describe('a shaped door', () => {
  it('goes through plan, cutting list and quote', async () => {
    const plan = JSON.parse((await run(['plan', JOB, '--json'])).out);
    const heads = plan.plan.steps.filter(({ kind }: { kind: string }) => kind === 'run-heads');
    type Run = { cuts: string[]; doors: string[]; shoulder: string };
    expect(heads.map(({ cuts, doors, shoulder }: Run) => [cuts, shoulder, doors])).toEqual([
      [['raise'], 'right', ['arched', 'cathedral']],
      [['back relief'], 'left', ['arched', 'cathedral']],
      [['raise'], 'left', ['arched', 'cathedral']],
      [['back relief'], 'right', ['arched', 'cathedral']],
    ]);
    const list = JSON.parse((await run(['cutting-list', JOB, '--json'])).out);
    const panel = list.panels.find(({ width }: { width: number }) => width === 418);
    expect(panel).toMatchObject({ height: 783, quantity: 1, shaped: true });
    // Lighter than its square blank with the same cuts would be, by more than the corners' area alone takes.
    const corners = 418 * 783 - panel.door.head.area;
    expect(corners).toBeGreaterThan(10_000);
    expect(panel.volume).toBeLessThan(418 * 783 * 20 - corners * 20);
    // 60 of rail over the apex, and the rise.
    expect(
      list.parts
        .filter(({ part }: { part: string }) => part === 'top rail')
        .map(({ width }: { width: number }) => width),
    ).toEqual([120, 120]);
    const quote = JSON.parse(
      (await run(['quote', JOB, '--client', 'M. Fennimore', '--number', 'Q-1', '--date', '2026-03-14', '--json'])).out,
    );
    expect(JSON.stringify(quote)).toContain('wood');
  });
});
