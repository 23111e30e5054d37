import { readFileSync } from 'node:fs';
import { evaluate, type KnifeReport, readJob, readShop, reportShopKnives } from '@fielded/core';
import { type Item, orderSheets, PAPERS, type Scene, type TextItem } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { layoutFaults } from './layout-faults.ts';

const { shop } = readShop(readFileSync('examples/shop/shop.yaml', 'utf8'));
const { reports } = reportShopKnives(shop!);
const named = (name: string) => reports.find((knife) => knife.cut === name)!;

function sheetsOf(knife: KnifeReport, units: 'mm' | 'in' = 'mm'): Scene[] {
  return orderSheets({
    knife,
    units,
    title: 'Knives',
    number: 'K-17',
    revision: 'B',
    date: '3 May',
    orderedBy: 'Joinery',
  });
}

/** A raise so deep, on steel so raked and sheared, that its templates take most of a sheet; the head is too small for it. */
const LONG = `fielded: 1
title: Library doors
shop: shop.yaml
panel: { thickness: 30 }
frame: { thickness: 32, groove: { width: 6, depth: 11, setback: 7 }, swellGap: 2 }
cuts:
  - { name: raise, side: front, head: big, profile: { shape: ogee, reach: 60, depth: 14, land: 9 } }
`;
const LONG_SHOP = `fielded: 1
heads: { big: { cuttingDiameter: 200, bodyDiameter: 120, height: 140, rake: 18, shear: 10, maxSpeed: 9000 } }
`;

function textsOf(items: readonly Item[]): TextItem[] {
  return items.flatMap((item) => (item.kind === 'group' ? textsOf(item.items) : item.kind === 'text' ? [item] : []));
}

const itemsOf = (items: readonly Item[]): Item[] =>
  items.flatMap((item) => (item.kind === 'group' ? [item, ...itemsOf(item.items)] : [item]));

const wordsOf = (scenes: readonly Scene[]) =>
  scenes
    .flatMap((scene) => textsOf(scene.items).map((item) => item.text))
    .join(' ')
    .replaceAll('\u00a0', ' ');

describe('an order for a knife', () => {
  it('has no text over another or over an outline, and none off its paper: every knife of the example shop, mm and inches', () => {
    for (const units of ['mm', 'in'] as const)
      for (const knife of reports)
        for (const sheet of sheetsOf(knife, units)) {
          expect([sheet.width, sheet.height]).toEqual([210, 297]);
          expect(layoutFaults(sheet), `${knife.cut}, ${sheet.title}`).toEqual([]);
        }
  });

  it.each(['a4', 'letter'] as const)(
    'goes on upon a further sheet of %s where a long knife leaves its words no room, errors first',
    (paper) => {
      const { job } = readJob(LONG, { loadShop: () => LONG_SHOP });
      const [knife] = evaluate({ ...job!, units: 'in' }).knives!;
      const sheets = orderSheets({ knife: knife!, units: 'in', title: job!.title, paper });
      const { width, height } = PAPERS[paper];
      for (const sheet of sheets) {
        expect([sheet.width, sheet.height]).toEqual([width, height]);
        expect(layoutFaults(sheet), sheet.title).toEqual([]);
      }
      const words = wordsOf(sheets);
      const places = ['Error: The panel meets the body', 'Error: The back of the knife', 'wanted', 'Side relief'].map(
        (said) => words.indexOf(said),
      );
      expect(places).toEqual([...places].sort((a, b) => a - b));
      expect(places).not.toContain(-1);
    },
  );

  it('says all that a grinder asks: hand, side that is up, count, steel, blank, circle, angles, relief, number and revision', () => {
    const words = wordsOf(sheetsOf(named('ogee-38')));
    for (const said of [
      'Order: 2 knives for the ogee-38',
      'cutter under the stock, turning counterclockwise',
      'the end that cuts deepest, at the tongue',
      '8 mm thick',
      'at least 10 mm wide and 41.73 mm long',
      '160 mm at the longest tip',
      'no shear',
      '45° between face and ground back',
      'grind at least 3° here',
      "Limiter's circle 157.8 mm",
      'edge of the steel: grind to this',
      'profile in the wood: do not grind',
      'K-17',
      'check the print with a rule',
    ])
      expect(words).toContain(said);
    expect(words).not.toContain('ASSUMED');
  });

  it('marks a hand that nobody gave, so that it is not ground by mistake', () => {
    const assumed = sheetsOf({ ...named('ogee-38'), assumed: true });
    const marked = assumed.flatMap((sheet) => textsOf(sheet.items)).filter(({ role }) => role === 'trouble-text');
    expect(marked.map((item) => item.text).join(' ')).toContain('ASSUMED, confirm it before grinding');
    // In black and white too: in a heavy frame at the top of the first sheet.
    const first = itemsOf(assumed[0]!.items);
    const framed = first.find(({ key }) => key === 'assumed frame');
    expect(framed).toMatchObject({ kind: 'path', role: 'outline' });
    expect(wordsOf([assumed[0]!])).toContain('Hand ASSUMED: have it confirmed before anything is ground.');
    expect(assumed.map((sheet) => layoutFaults(sheet))).toEqual(assumed.map(() => []));
  });

  it('lists every ordinate of knife and limiter, and every radius', () => {
    const knife = named('cove-14');
    const cells = new Set(sheetsOf(knife).flatMap((sheet) => textsOf(sheet.items).map((item) => item.text)));
    const show = (mm: number) =>
      mm
        .toFixed(2)
        .replace(/^-(0\.00)$/, '$1')
        .replace('-', '−');
    for (const { s, t } of [...knife.ordinates, ...knife.limiter!.ordinates]) {
      expect(cells).toContain(show(s));
      expect(cells).toContain(show(t));
    }
    const radii = [...knife.outline.matchAll(/A ([\d.]+)/g)].map((found) => show(Number(found[1])));
    expect(radii.length).toBeGreaterThan(0);
    for (const radius of radii) expect(cells).toContain(radius);
  });

  it('takes three sheets or four: templates and words, head and figures, limiter and figures', () => {
    const scenes = sheetsOf(named('ogee-38'));
    expect(scenes.length).toBeLessThanOrEqual(4);
    expect(sheetsOf(named('cove-14'))).toHaveLength(3);
    expect(wordsOf([scenes[1]!])).toContain('The knife in its head');
    expect(wordsOf([scenes[1]!])).toContain('chords within 0.05 mm');
  });

  it('calls what bows less than 0.002 mm a line, and gives no radius of metres to set a wheel to', () => {
    const cells = sheetsOf(named('ogee-38')).flatMap((sheet) => textsOf(sheet.items).map((item) => item.text));
    const figures = cells
      .filter((cell) => /^[−\d.]+$/.test(cell))
      .map((cell) => Math.abs(Number(cell.replace('−', '-'))));
    expect(Math.max(...figures)).toBeLessThan(1000);
  });
});
