// What is drawn of shaped doors is what the report says.
import { readFileSync } from 'node:fs';
import { answerPlan, assumedRules, evaluate, makeCuttingList, prepareJob, readJob } from '@fielded/core';
import {
  cuttingSheets,
  doorSchedule,
  type Item,
  makeTemplate,
  planSheets,
  scene,
  sceneToSvg,
  templateSheets,
} from '@fielded/render';
import { describe, expect, it } from 'vitest';

const report = evaluate(
  readJob(readFileSync('examples/wardrobe/job.yaml', 'utf8'), {
    loadShop: () => readFileSync('examples/wardrobe/shop.yaml', 'utf8'),
  }).job!,
);

function itemsOf(items: readonly Item[]): Item[] {
  return items.flatMap((item) => [item, ...(item.kind === 'group' ? itemsOf(item.items) : [])]);
}

const drawn = (view: 'door' | 'panel', door: number) => itemsOf(scene(report, { view, door, scale: 0.1 }).items);
const sized = (view: 'door' | 'panel', door: number, plain: boolean) =>
  scene(report, { view, door, scale: 0.3, bare: true, plain });
const radii = (items: readonly Item[], key: string) =>
  items.flatMap((item) =>
    item.kind === 'path' && item.key === key
      ? item.loops.flatMap(({ curves }) =>
          curves.filter(({ turn }) => turn !== 0).map(({ r }) => Math.round(r * 1e4) / 1e3),
        )
      : [],
  );

describe('a shaped door', () => {
  it('is drawn with the arcs of its sight edge, its panel and its field, to scale', () => {
    expect(radii(drawn('door', 1), 'sight')).toEqual([80, 120, 80]);
    // The first outline is the panel's front; its sections follow.
    expect(radii(drawn('panel', 1), 'outline').slice(0, 3)).toEqual([71, 129, 71]);
    expect(radii(drawn('panel', 1), 'field')).toEqual([109, 91, 109]);
    expect(radii(drawn('door', 0), 'sight')).toEqual([510]);
  });

  it('has on the panel’s template what follows it, bearings and rings, and on others its size alone', () => {
    const notes = (part: 'rail' | 'panel' | 'field', cut?: string) =>
      makeTemplate(report, report.doors![1]!, part, cut === undefined ? undefined : { cut, diameter: 122 })!.notes;
    const full = notes('rail');
    expect(full).toHaveLength(1);
    expect(notes('field')).toEqual(full);
    // A ring of radius G guides a cut that reaches ρ on a circle of radius R: e(1 − cos θ) short, e = G + ρ − R. Here 18 and 11.5 mm.
    const ring = (cut: string, off: number) =>
      [5, 10, 20].reduce(
        (words, angle, k) => words.replace(`#${k}`, (off * (1 - Math.cos((angle * Math.PI) / 180))).toFixed(2)),
        `The ${cut} on a ring fence of 120 mm: #0 mm short 5° off its mark, #1 mm at 10°, #2 mm at 20°.`,
      );
    expect(notes('panel')).toEqual([
      "The panel's own edge: bearing 84 mm for raise, 97 mm for back relief.",
      ring('raise', 18),
      ring('back relief', 11.5),
      ...full,
    ]);
    // Its radius is 61 in place of 42.
    expect(notes('panel', 'raise')).toEqual([
      "For the raise on a bearing of 122 mm: 19 mm inside the panel's edge.",
      ring('raise', 18),
      ...full,
    ]);
  });

  it('shows its radii and its rise', () => {
    const values = (view: 'door' | 'panel', door: number) =>
      Object.fromEntries(
        drawn(view, door).flatMap((item) => (item.kind === 'group' && item.of ? [[item.of, item.value]] : [])),
      );
    expect(values('door', 1)).toMatchObject({
      'doors[1].head.crown': 120,
      'doors[1].head.ears': 80,
      'doors[1].head.rise': 60,
    });
    expect(values('panel', 1)).toMatchObject({
      'doors[1].head.panelEdge.crown': 129,
      'doors[1].head.panelEdge.ears': 71,
    });
    expect(values('door', 0)['doors[0].head.radius']).toBeCloseTo(510, 9);
  });
});

describe('a schedule of doors', () => {
  it('holds 18 sizes on two sheets', () => {
    const doors = Array.from({ length: 18 }, (_, i) => ({ ...report.doors![0]!, name: `door ${i}` }));
    const sheets = doorSchedule({ ...report, doors });
    expect(sheets).toHaveLength(2);
    const names = sheets
      .flatMap(({ items }) => itemsOf(items))
      .flatMap((item) => (item.kind === 'text' && item.key === 'name' ? [item.text] : []));
    expect(names).toHaveLength(18);
    for (const { items, width, height } of sheets) {
      for (const item of itemsOf(items)) {
        if (item.kind !== 'text') continue;
        expect(item.x).toBeGreaterThan(0);
        expect(item.x).toBeLessThan(width);
        expect(item.y).toBeLessThan(height);
      }
    }
  });
});

describe('an odd head', () => {
  const B = 'name: A, stile: 60, rail: 75';
  it.each([
    ['half a circle', `${B}, width: 520, height: 900, head: { shape: arch, rise: 200 }`],
    [
      'with ears smaller than the groove',
      `${B}, width: 520, height: 900, head: { shape: cathedral, rise: 60, crown: 120, ears: 0.01 }`,
    ],
    ['low over its foot', `${B}, width: 520, height: 320, head: { shape: arch, rise: 169 }`],
    [
      'with a spike',
      `${B}, width: 520, height: 900, head: { shape: outline, path: "M 0 60 H 199 L 200 0 L 201 60 H 400" }`,
    ],
    [
      'over two leaves hung overlay',
      `${B}, opening: { width: 900, height: 1200 }, hung: overlay, overlay: 12, leaves: 2, head: { shape: arch, rise: 60 }`,
    ],
  ])('%s goes through report, plan, lists, templates and drawings', (_, door) => {
    const { job } = readJob(
      readFileSync('examples/wardrobe/job.yaml', 'utf8').replace(/doors:[\s\S]*$/, `doors: [{ ${door} }]\n`),
      { loadShop: () => readFileSync('examples/wardrobe/shop.yaml', 'utf8') },
    );
    const odd = evaluate(job!);
    const [shaped] = odd.doors!;
    expect(shaped!.head!.area).toBeGreaterThan(0);
    expect(shaped!.panels[0]!.volume).toBeGreaterThan(0);
    expect(shaped!.panels[0]!.volume).toBeLessThanOrEqual(shaped!.head!.area * 20 + 1e-6);
    const list = makeCuttingList([odd]);
    const sheets = [
      ...planSheets(answerPlan(prepareJob(job!))!, odd),
      ...cuttingSheets(list, { reports: [odd], assumed: assumedRules([job!], 'mm') }),
      ...(['panel', 'rail', 'field'] as const).flatMap((part) => {
        const template = makeTemplate(odd, shaped!, part);
        return template === null ? [] : templateSheets(template);
      }),
      scene(odd, { view: 'door', door: 0 }),
      scene(odd, { view: 'panel', door: 0 }),
    ];
    for (const sheet of sheets) expect(sceneToSvg(sheet)).not.toMatch(/NaN|Infinity|undefined/);
    // Without a field the report says so, and no template of it is made.
    if (shaped!.head!.field === null)
      expect(odd.problems.map(({ code }) => code)).toEqual(
        expect.arrayContaining([expect.stringMatching(/^head-(no-field|field-pointed)$/)]),
      );
    expect(makeTemplate(odd, shaped!, 'field') === null).toBe(shaped!.head!.field === null);
  });
});

it('a door and its panel are as large without their grain, and have it unless told', () => {
  const hasGrain = ({ items }: { readonly items: readonly Item[] }) =>
    itemsOf(items).some((item) => item.kind === 'path' && item.role === 'grain' && item.loops.length > 0);
  for (const view of ['door', 'panel'] as const)
    for (const door of report.doors!.keys()) {
      const [whole, plain] = [sized(view, door, false), sized(view, door, true)];
      expect([plain.width, plain.height]).toEqual([whole.width, whole.height]);
      expect([hasGrain(whole), hasGrain(plain)]).toEqual([true, false]);
    }
});
