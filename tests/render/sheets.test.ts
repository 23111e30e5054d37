import { evaluate, type Report } from '@fielded/core';
import type { Item, Scene, SheetOptions } from '@fielded/render';
import { laySheets, PAPERS, scene, sceneToSvg, sheets, viewsOf } from '@fielded/render';
import { describe, expect, test } from 'vitest';
import { completeDoor } from '../support/doors.ts';
import { leastProcessorTime } from '../support/timing.ts';
import { cut, JOBS, job, profile } from './jobs-to-draw.ts';
import { dimensionTexts, layoutFaults } from './layout-faults.ts';

const door = completeDoor({ name: 'A', width: 596, height: 716, stile: 60, rail: 60 });
const withDoor = evaluate(job({ doors: [door] }));
const onA4 = sheets(withDoor, { view: 'sheet', paper: 'a4' });
const wideCut = cut('raise', 'front', profile('ogee', { reach: 190, land: 11, shoulder: 1.5 }));
const wide = evaluate(job({ cuts: [wideCut, job().cuts[1]!], doors: [door] }));

function itemsOf(scene: Scene, wanted: (item: Item) => boolean): Item[] {
  const visit = (items: readonly Item[]): Item[] =>
    items.flatMap((item) => [...(wanted(item) ? [item] : []), ...(item.kind === 'group' ? visit(item.items) : [])]);
  return visit(scene.items);
}

const texts = (scene: Scene) =>
  itemsOf(scene, ({ kind }) => kind === 'text').map((item) => (item.kind === 'text' ? item.text : ''));
const breaks = (scene: Scene) => itemsOf(scene, ({ key }) => /^break [xy]/.test(key)).length;

describe('every sheet', () => {
  for (const [paper, { width, height }] of Object.entries(PAPERS)) {
    test(`is ${paper}, upright or across`, () => {
      const options = { view: 'sheet', paper: paper as SheetOptions['paper'] } as const;
      const upright = paper === 'a4' ? onA4 : sheets(withDoor, options);
      for (const sheet of upright) expect([sheet.width, sheet.height]).toEqual([width, height]);
      for (const sheet of sheets(withDoor, { ...options, landscape: true })) {
        expect([sheet.width, sheet.height]).toEqual([height, width]);
        expect(layoutFaults(sheet)).toEqual([]);
      }
    });
  }

  test('has a title block with what the caller gives, and room to write what is not given', () => {
    const fields = { shop: 'Elm Lane Joinery', number: 'D-104', revision: 'B', material: 'black cherry' };
    const all = sheets(withDoor, { view: 'sheet', paper: 'a4', date: '1 May 2031', drawnBy: 'A. Turner', ...fields });
    expect(all.length).toBeGreaterThan(1);
    all.forEach((sheet, i) => {
      for (const words of [
        'Elm Lane Joinery',
        'D-104',
        'B',
        'black cherry',
        'clearance 0.05 mm to 0.5 mm',
        'no errors',
        'fits',
        'running not checked',
        'Boot-room cupboard doors',
        `${i + 1} of ${all.length}`,
        '1 May 2031',
        'A. Turner',
        'Sliding',
      ])
        expect(texts(sheet)).toContain(words);
      expect(texts(sheet).join(' ')).toContain('Make a test piece first, and measure the stock: this is drawn for 20');
      expect(texts(sheet)).toContain('100 mm: check the print with a rule');
    });
    expect(
      itemsOf(
        onA4[0]!,
        ({ kind, key }) =>
          kind === 'path' && ['date', 'drawn by', 'shop', 'drawing', 'revision', 'material'].includes(key),
      ),
    ).toHaveLength(6);
  });

  test('is headed by no tick where the joint fits and an error stands against the job', () => {
    const narrow = completeDoor({ name: 'B', width: 175, height: 716, stile: 60, rail: 60 });
    const blocked = evaluate(job({ doors: [narrow] }));
    expect(blocked.statements).toMatchObject({ fits: true, canBeRun: false, errors: 1 });
    const headMarks = (scene: Scene) =>
      itemsOf(scene, ({ key }) => key === 'mark').map((item) => item.kind === 'path' && item.role);
    const drawn = [
      ...sheets(blocked, { view: 'sheet', paper: 'a4' }),
      ...viewsOf(blocked).map((view) => scene(blocked, { view })),
    ];
    for (const picture of drawn) {
      const marks = headMarks(picture);
      expect(marks.every((role) => role === 'trouble')).toBe(true);
      if (marks.length > 0) expect(texts(picture)).toContain('Cannot be run: 1 error');
    }
    // The same joint in doors that can be made has the tick.
    expect(onA4.flatMap(headMarks)).toContain('judged');
  });

  test('draws the joint true to size and says the scale', () => {
    expect(onA4[0]!.scale).toBe(1);
    expect(texts(onA4[0]!)).toContain('1:1, 5:1');
  });

  test('leaves the title block out when bare', () => {
    const [bare] = sheets(withDoor, { view: 'joint', paper: 'a4', bare: true });
    expect(texts(bare!)).not.toContain('scale');
  });
});

describe('a drawing too wide for the paper at its scale is broken, not shrunk', () => {
  test.each([
    ['joint', 1],
    ['section', 1],
    ['cuts', 1],
    ['door', 1],
    ['panel', 1],
    ['joint', 2],
  ] as const)('%s at %s:1', (view, scale) => {
    const report = view === 'door' || view === 'panel' ? withDoor : wide;
    const options = { view, paper: 'a4', scale } as const;
    const [broken] = sheets(report, options);
    const [whole] = sheets(report, { ...options, scale: 'fit' });
    expect(broken!.scale).toBe(scale);
    expect(breaks(broken!)).toBeGreaterThan(0);
    expect(breaks(whole!)).toBe(0);
    expect(layoutFaults(broken!)).toEqual([]);
    const shown = (scene: Scene) =>
      dimensionTexts(scene)
        .map(({ of, texts: [figure] }) => `${of} ${figure}`)
        .sort();
    expect(shown(broken!)).toEqual(shown(whole!));
  });

  test('what is not in the strip keeps its size', () => {
    const [sheet] = sheets(wide, { view: 'joint', paper: 'a4', scale: 1 });
    const arcs = itemsOf(sheet!, ({ key }) => key === 'outline').flatMap((item) =>
      item.kind === 'path' ? item.loops.flatMap(({ curves }) => curves.filter(({ turn }) => turn !== 0)) : [],
    );
    // The ogee's two arcs by the law of its S-curve: S = (run² + rise²)/(2·rise), half of it each.
    const radius = (179 ** 2 + 7.5 ** 2) / (2 * 7.5) / 2;
    expect(Math.max(...arcs.map(({ r }) => r))).toBeCloseTo(radius, 6);
  });

  test('one that does not even fit broken is refused, naming a scale that fits', () => {
    expect(() => sheets(withDoor, { view: 'joint', paper: 'a4', scale: 50 })).toThrow(
      new RangeError('Joint in section A–A does not fit the paper at 50:1, even broken. At 2:1 it would fit.'),
    );
    expect(sheets(withDoor, { view: 'joint', paper: 'a4', scale: 2 })).toHaveLength(1);
  });

  test('fit takes the largest standard scale that fits unbroken', () => {
    expect(sheets(withDoor, { view: 'door', paper: 'a4', scale: 'fit' })[0]!.scale).toBe(0.2);
    expect(sheets(withDoor, { view: 'door', paper: 'a3', scale: 'fit' })[0]!.scale).toBe(0.2);
    expect(sheets(withDoor, { view: 'joint', paper: 'a3', scale: 'fit' })[0]!.scale).toBe(2);
  });
});

describe('nothing is lost between pages', () => {
  const several = (count: number, wide: (i: number) => number) =>
    evaluate(
      job({
        doors: Array.from({ length: count }, (_, i) => ({ ...door, name: `D${i + 1}`, quantity: 2, width: wide(i) })),
      }),
    );

  test('every cut is drawn, and every sheet is numbered', () => {
    const cuts = Array.from({ length: 12 }, (_, i) =>
      cut(`cut ${i + 1}`, 'front', profile('rebate', { reach: 44 - 3 * i, depth: 1 + i / 3 })),
    );
    const all = sheets(evaluate(job({ cuts })), { view: 'cuts', paper: 'a4', scale: 1 });
    expect(all.length).toBeGreaterThan(1);
    const shown = all.flatMap(texts);
    for (let i = 1; i <= 12; i += 1) expect(shown).toContain(`${i}  cut ${i}`);
    for (const [i, sheet] of all.entries()) expect(texts(sheet)).toContain(`${i + 1} of ${all.length}`);
  });

  test('doors of the same sizes share a drawing, which says how many there are', () => {
    const all = sheets(
      several(3, () => 596),
      { view: 'door', paper: 'a4' },
    );
    expect(all).toHaveLength(1);
    expect(texts(all[0]!)).toContain('Doors D1, D2, D3  1:5');
    expect(texts(all[0]!)).toContain('6 off');
    const panels = sheets(
      several(3, () => 596),
      { view: 'panel', paper: 'a4' },
    );
    expect(panels.flatMap(texts)).toContain('6 off, of doors D1, D2, D3');
  });

  test('18 doors of different sizes with their panels take at most 14 sheets, none of them lost', () => {
    const all = sheets(
      several(18, (i) => 400 + 10 * i),
      { view: 'sheet', paper: 'a4' },
    );
    expect(all.length).toBeLessThanOrEqual(14);
    const shown = all.flatMap(texts);
    for (let i = 1; i <= 18; i += 1) {
      expect(shown.filter((words) => words.startsWith(`Door D${i}  `))).toHaveLength(1);
      expect(shown).toContain(`2 off, of door D${i}`);
    }
    for (const sheet of all) expect(layoutFaults(sheet)).toEqual([]);
  });
});

test('a job with errors lists them on every sheet, each beginning with the word Error', () => {
  const report = evaluate(JOBS['bevel that wedges']!);
  const errors = report.problems.filter(({ severity }) => severity === 'error');
  expect(errors.length).toBeGreaterThan(0);
  const all = sheets(report, { view: 'sheet', paper: 'a4' });
  for (const sheet of all) {
    expect(texts(sheet).filter((words) => words.startsWith('Error: '))).toHaveLength(errors.length);
    expect(texts(sheet).join(' ').replaceAll('\u00a0', ' ')).toContain(errors[0]!.message.slice(0, 40));
    expect(texts(sheet)).toContain('does not fit');
  }
});

test('an inch sheet carries an inch bar', () => {
  const [sheet] = sheets(evaluate(job({ units: 'in' })), { view: 'joint', paper: 'letter' });
  expect(texts(sheet!)).toContain('4 in: check the print with a rule');
  const bar = itemsOf(sheet!, ({ key, kind }) => key === 'bar' && kind === 'path')[0];
  const xs = bar?.kind === 'path' ? bar.loops.flatMap(({ curves }) => curves.flatMap(({ x0, x1 }) => [x0, x1])) : [];
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(101.6, 9);
});

test('the enlarged groove is never below 2:1', () => {
  for (const thickness of [14, 30, 72]) {
    const report = evaluate(job({ frame: { ...job().frame, thickness } }));
    const words = sheets(report, { view: 'sheet', paper: 'a4' }).flatMap(texts);
    const scales = words.flatMap((each) => /^Tongue and groove {2}(\d+):1/.exec(each)?.[1] ?? []);
    expect(scales).toHaveLength(1);
    expect(Number(scales[0])).toBeGreaterThanOrEqual(2);
  }
});

test('a door that the job does not have is refused', () => {
  expect(() => sheets(withDoor, { view: 'door', paper: 'a4', door: 3 })).toThrow('door 4 of 1');
  expect(() => sheets(evaluate(JOBS['ogee and cove']!), { view: 'panel', paper: 'a4' })).toThrow('door 1 of 0');
});

test('a job whose cuts leave nothing at all is drawn all the same', () => {
  const gone = evaluate(job({ cuts: [cut('all', 'front', profile('rebate', { reach: 20, depth: 19.9 }))] }));
  for (const sheet of sheets(gone, { view: 'sheet', paper: 'a4' })) {
    expect(layoutFaults(sheet)).toEqual([]);
    expect(sceneToSvg(sheet)).not.toMatch(/NaN|Infinity|undefined/);
  }
});

test('doors of one size with different heads are drawn apart, and so are their panels', () => {
  const arched = { ...door, name: 'B', topRail: 110, head: { shape: 'arch', rise: 60 } } as const;
  const square = { ...door, name: 'A', topRail: 110 };
  const shown = sheets(evaluate(job({ doors: [square, arched] })), { view: 'sheet', paper: 'a4' }).flatMap(texts);
  expect(shown.filter((words) => /^Door [AB] {2}/.test(words))).toHaveLength(2);
  expect(shown).toContain('1 off, of door A');
  expect(shown).toContain('1 off, of door B');
});

describe('one sheet of many', () => {
  /** 1,500 doors of as many sizes: 3,000 drawings. */
  const many = job({
    doors: Array.from({ length: 1500 }, (_, i) =>
      completeDoor({ name: `${i}`, width: 400 + i, height: 700 + i, stile: 60, rail: 60 }),
    ),
  });
  let evaluated: Report | undefined;
  test.each([['sheet', undefined] as const, ['door', 0.1] as const])('of %s is drawn alone', (view, scale) => {
    evaluated ??= evaluate(many);
    const report = evaluated;
    let seen = { count: 0, title: '' };
    const took = leastProcessorTime(() => {
      const { count, draw } = laySheets(report, { view, paper: 'a4', ...(scale && { scale }) });
      seen = { count, title: draw(count - 1).title };
    }, 1000);
    expect(seen.count).toBeGreaterThan(700);
    expect(seen.title).toContain(`sheet ${seen.count} of ${seen.count}`);
    expect(took, 'ms of processor time').toBeLessThan(1000);
  });
});
