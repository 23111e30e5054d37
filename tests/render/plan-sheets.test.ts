// The sheets of a plan: what they say is what the plan says, everything stands on the paper, and nothing stands on anything else.
import { readFileSync } from 'node:fs';
import { evaluate, type Job, readJob } from '@fielded/core';
import { type Item, PAPERS, planSheets, type Scene, type TextItem, textWidth } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { planned, shopJob } from '../support/plans.ts';
import { layoutFaults } from './layout-faults.ts';

const sheetsOf = (job: Job) => planSheets(planned(job), evaluate(job));

function textsOf(items: readonly Item[]): TextItem[] {
  return items.flatMap((item) => (item.kind === 'group' ? textsOf(item.items) : item.kind === 'text' ? [item] : []));
}

/** Texts that stand on each other, by their boxes. */
function overlaps({ items }: Scene): string[] {
  const boxes = textsOf(items).map((item) => {
    const width = textWidth(item.text, item.height);
    const before = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? width / 2 : width;
    const box = item.upright
      ? { x0: item.x - item.height, x1: item.x, y0: item.y - (width - before), y1: item.y + before }
      : { x0: item.x - before, x1: item.x - before + width, y0: item.y - item.height, y1: item.y };
    return { text: item.text, ...box };
  });
  return boxes.flatMap((a, k) =>
    boxes
      .slice(k + 1)
      .filter(
        (b) => Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0) > 0.3 && Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0) > 0.3,
      )
      .map((b) => `${a.text} | ${b.text}`),
  );
}

const JOBS: readonly (readonly [string, Job])[] = [
  ['under the stock', shopJob()],
  ['over the stock, reversed', shopJob({ run: 'over', reversing: true })],
  ['nothing known of the knives', shopJob({ ogee: 'measured: wood', cove: 'measured: wood' })],
  ['several passes', shopJob({ power: 0.8 })],
  [
    'on edge and tilted',
    shopJob({
      cuts: '[{ name: raise, side: front, knife: ogee, presented: on-edge }, { name: slope, side: back, knife: cove, presented: 12 }]',
      machines: '{ m: { speeds: [6000], seat: [-90, 90], opening: 220, nutDiameter: 40, tilt: [0, 45] } }',
    }),
  ],
];

describe.each(JOBS)('the sheets of a plan: %s', (_, job) => {
  const scenes = sheetsOf(job);
  const { plan } = planned(job);

  it('are the order of work and one page for each set-up, of A4 or Letter', () => {
    expect(scenes.length).toBeGreaterThanOrEqual(plan.setups.length + 1);
    expect(plan.setups.length).toBe(2);
    for (const { width, height } of scenes) expect([width, height]).toEqual([210, 297]);
    const { width, height } = PAPERS.letter;
    for (const scene of planSheets(planned(job), evaluate(job), 'letter')) {
      expect([scene.width, scene.height]).toEqual([width, height]);
      expect(layoutFaults(scene)).toEqual([]);
    }
  });

  it('keep to the paper, and no text stands on another', () => {
    for (const scene of scenes) {
      for (const { x, y } of textsOf(scene.items)) {
        expect(x).toBeGreaterThanOrEqual(8);
        expect(x).toBeLessThanOrEqual(202);
        expect(y).toBeGreaterThanOrEqual(8);
        expect(y).toBeLessThanOrEqual(289);
      }
      expect(overlaps(scene)).toEqual([]);
    }
  });

  it('show the figures that are set at 10 mm, as the plan has them', () => {
    plan.setups.forEach((setUp, k) => {
      const sheet = scenes[scenes.length - plan.setups.length + k]!;
      const large = textsOf(sheet.items).filter(({ height }) => height === 10);
      const shown = large.map(({ text }) => text);
      const height = setUp.seat === null ? setUp.cuttingPoint : Math.abs(setUp.seat);
      const near = (mm: number) => String(Math.round(mm * 100) / 100);
      expect(shown.slice(0, 2)).toEqual([near(height), near(setUp.fence.toAxis)]);
      expect(shown[2]).toBe(setUp.hole === null ? '–' : near(setUp.hole.ring!));
      expect(shown.slice(3, 5)).toEqual([String(setUp.speed), String(Math.round(setUp.feedRate * 10) / 10)]);
      expect(shown[5]).toBe(setUp.feedDirection === 'right to left' ? '←' : '→');
      const words = textsOf(sheet.items)
        .map(({ text }) => text)
        .join(' ');
      expect(words).toContain('Turned by hand through a dry run');
      if (setUp.assumed) expect(words).toContain('Assumed: the hand of the knife');
    });
  });
});

describe("the sheets of the frame's own cuts", () => {
  const read = (name: string) => readFileSync(new URL(`../../examples/coped-frame/${name}`, import.meta.url), 'utf8');
  const { job } = readJob(read('job.yaml'), { loadShop: () => read('shop.yaml') });
  const scenes = sheetsOf(job!).slice(-5);
  const words = scenes.map(({ items }) => textsOf(items).map(({ text }) => text));

  it('have no text on another, and say what goes with each', () => {
    expect(scenes.flatMap(overlaps)).toEqual([]);
    const [cope, sticking, , , backEdge] = words.map((each) => each.join(' ').replaceAll('\u00a0', ' '));
    expect(cope).toContain('rail ends, front down, in a carrier');
    expect(cope).toContain('front face to tenon: 7.5 mm');
    expect(cope).toContain('11 mm long, 8.1 mm deep');
    expect(sticking).toContain('6.4 mm wide, 11 mm deep');
    expect(backEdge).toContain('keep a radius of 60 mm');
    expect(backEdge).toContain('Bearing, its radius');
    expect(backEdge).not.toContain('Fence, bar');
  });
});

describe('the sheet of both heads at once', () => {
  const given = shopJob({
    cove: 'fromFace: 1.2, groundFor: { run: over, rotation: counterclockwise }',
    run: 'over',
    machines:
      '{ main: { speeds: [7000], seat: [-70, 90], opening: 220, rings: [170], nutDiameter: 48, spindleLength: 110, power: 6, feeds: [4, 8] } }',
  });
  const heads = { ...given.shop!.heads, small: { ...given.shop!.heads.small!, cuttingDiameter: 112 } };
  const job = { ...given, shop: { ...given.shop!, heads } };
  const scenes = sheetsOf(job);
  const words = (k: number) =>
    textsOf(scenes[k]!.items)
      .map(({ text }) => text)
      .join(' ')
      .replaceAll('\u00a0', ' ');

  it('is one, with both tools, the spacer, both powers together and no correction by the spindle', () => {
    expect(planned(job).plan.stack!.works).toBe(true);
    expect(scenes).toHaveLength(2);
    expect(words(1)).toContain('Set-up 1: raise + cove 1 of 1');
    expect(words(1)).toContain('spacer 3.5 mm');
    expect(words(1)).toContain('the spacer sets the tongue');
    expect(words(1)).not.toContain('spindle up');
    const watts = planned(job).plan.setups.reduce((sum, { power }) => sum + power.most, 0);
    expect(words(1)).toContain(`to ${Math.round(watts / 10) * 10} W`);
    expect(words(0)).toContain('make the spacer thinner or thicker');
  });

  it('has no text on another, in inches either', () => {
    expect(scenes.flatMap(overlaps)).toEqual([]);
    expect(sheetsOf({ ...job, units: 'in' }).flatMap(overlaps)).toEqual([]);
    expect(sheetsOf({ ...shopJob(), units: 'in' }).flatMap(overlaps)).toEqual([]);
  });
});

it('keeps a long order of work on one page: what belongs together stands in one row', () => {
  const cuts = Array.from(
    { length: 8 },
    (_, k) => `{ name: c${k}, side: front, profile: { shape: rebate, reach: 20, depth: ${1 + k} }, head: raiser }`,
  );
  const job = shopJob({ cuts: `[${cuts.join(', ')}]` });
  const { plan } = planned(job);
  expect(plan.steps.length).toBeGreaterThan(40);
  const [first, second] = sheetsOf(job);
  const said = (scene: Scene) => textsOf(scene.items).map(({ text }) => text);
  expect(said(first!).join(' ')).toContain('Glue up the frames');
  expect(said(first!).join(' ')).toContain('Set up "main" for c7. Run the sample');
  expect(said(second!).join(' ')).not.toContain('Set up "main" for');
});

it('the check for texts on each other can fail', () => {
  const text = (x: number): TextItem => ({
    kind: 'text',
    key: 'a',
    role: 'text',
    x,
    y: 10,
    text: 'word',
    height: 3,
    anchor: 'start',
    upright: false,
  });
  const scene = { items: [text(10), text(12)] } as unknown as Scene;
  expect(overlaps(scene)).toHaveLength(1);
});
