import { evaluate, makeQuote, QUOTE_WORDS, type QuoteQuantities, readJob } from '@fielded/core';
import {
  documentPages,
  documentToHtml,
  drawDoorCorner,
  type Item,
  quoteDocument,
  type TextItem,
} from '@fielded/render';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';

const JOB = `
fielded: 1
title: Pantry doors
panel: { thickness: 20, species: black cherry }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts:
  - { name: raise, side: front, profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 } }
  - { name: relief, side: back, run: over, profile: { shape: cove, reach: 14, depth: 4.8, land: 9 } }
season: { made: 8, driest: 6, dampest: 12 }
doors:
  - { name: A, width: 400, height: 700, stile: 60, rail: 60, quantity: 3 }
`;

const SHOP = `
fielded: 1
name: Alder Lane Joinery
rates: { currency: EUR, hour: 48, wood: { black cherry: 2350 }, setUp: 0.5, margin: 10, tax: { name: VAT, rate: 20 } }
`;

const QUANTITIES: QuoteQuantities = {
  timber: [{ wood: 'black cherry', thickness: 20, order: 0.2 }],
  setUps: 2,
  metres: 12,
  doors: 3,
  face: 1.68,
  knives: [],
};

function document(client: string, quantities = QUANTITIES, words = QUOTE_WORDS as Record<string, string>, shop = SHOP) {
  const { job, faults } = readJob(JOB, { shop: { text: shop, name: 'shop.yaml' } });
  if (job === null) throw new Error(JSON.stringify(faults));
  const report = evaluate(job);
  const quote = makeQuote(job, report, quantities, { date: '2026-03-14', number: 'Q-1', client });
  return quoteDocument(quote, report, { words: words as typeof QUOTE_WORDS });
}

function textsOf(items: readonly Item[]): string[] {
  return items.flatMap((item) =>
    item.kind === 'group' ? textsOf(item.items) : item.kind === 'text' ? [(item as TextItem).text] : [],
  );
}

describe('a quote as a document', () => {
  it('holds the figures of the price and of the report', () => {
    const said = documentPages(document('M. Fennimore')).flatMap(({ items }) => textsOf(items));
    // By hand: 0.2·2350 = 470; 1 h·48 = 48; net 518; margin 51.80; VAT on 569.80 is 113.96; total 683.76.
    for (const figure of ['€470.00', '€48.00', '€518.00', '€51.80', '€113.96', '€683.76'])
      expect(said).toContain(figure);
    expect(said.filter((text) => text === 'not priced')).toHaveLength(3);
    expect(said.join(' ')).toContain('Between 6 % and 12 % moisture');
    expect(said).toContain('13 April 2026');
  });

  it('keeps a sum on one line, however long the currency', () => {
    const dear = document(
      'M. Fennimore',
      QUANTITIES,
      QUOTE_WORDS,
      SHOP.replace('EUR', 'USD').replace('hour: 48', 'hour: 48000'),
    );
    const said = documentPages(dear).flatMap(({ items }) => textsOf(items));
    // By hand: 470 + 48,000 = 48,470; margin 4,847; VAT on 53,317 is 10,663.40; total 63,980.40.
    expect(said).toContain('US$63,980.40');
  });

  it('repeats the head of a table that goes on over pages, and numbers them', () => {
    const many = {
      ...QUANTITIES,
      timber: Array.from({ length: 200 }, (_, i) => ({ wood: 'x', thickness: i + 1, order: 1 })),
    };
    const pages = documentPages(document('M. Fennimore', many)).map(({ items }) => textsOf(items));
    const withLines = pages.filter((texts) => texts.some((text) => /^x, \d+\smm finished$/.test(text)));
    expect(withLines.length).toBeGreaterThan(4);
    for (const texts of withLines) expect(texts).toContain('Unit price');
    expect(pages.map((texts) => texts.at(-1))).toEqual(pages.map((_, i) => `${i + 1} / ${pages.length}`));
    const lines = pages.flat().filter((text) => /^x, \d+\smm finished$/.test(text));
    expect(new Set(lines).size).toBe(200);
  });

  it('keeps every text inside the paper', () => {
    for (const page of documentPages(document('M. Fennimore'), 'letter')) {
      const visit = (items: readonly Item[]) => {
        for (const item of items) {
          if (item.kind === 'group') visit(item.items);
          else if (item.kind === 'text') {
            expect(item.y).toBeLessThan(page.height);
            expect(item.x).toBeGreaterThanOrEqual(0);
            expect(item.x).toBeLessThanOrEqual(page.width);
          }
        }
      };
      visit(page.items);
    }
  });

  it('lets nothing of a hostile name through as markup', () => {
    const html = documentToHtml(document('</title><script>alert(1)</script><img src=x onerror="alert(2)">'));
    expect(html).not.toMatch(/<script|<img src=x/);
    const body = html
      .replace('<!doctype html>', '')
      .replace(/<meta [^>]*>/g, '')
      .replace(/<br>/g, '');
    expect(XMLValidator.validate(body)).toBe(true);
    const names = new Set<string>();
    const transformTagName = (name: string) => {
      names.add(name);
      return name;
    };
    const parser = new XMLParser({ ignoreAttributes: false, transformTagName });
    parser.parse(body);
    expect([...names]).not.toContain('script');
    expect(html).not.toMatch(/https?:\/\/(?!www\.w3\.org)/);
  });

  it('writes dates, money and decimals as the language of its words has them', () => {
    const german = { ...QUOTE_WORDS, language: 'de-DE', quote: 'Angebot', total: 'Gesamtpreis' };
    const said = documentPages(document('M. Fennimore', QUANTITIES, german)).flatMap(({ items }) => textsOf(items));
    expect(said).toContain('Angebot');
    expect(said).toContain('683,76\u00a0€');
    expect(said).toContain('14. März 2026');
    expect(said.some((text) => text.includes('0,2\u00a0mm'))).toBe(true);
  });

  it('writes a currency without minor units without decimals', () => {
    const shop = SHOP.replace('EUR', 'JPY');
    const said = documentPages(document('M. Fennimore', QUANTITIES, QUOTE_WORDS, shop)).flatMap(({ items }) =>
      textsOf(items),
    );
    expect(said).toContain('JP¥684');
  });
});

describe('the corner', () => {
  it('shows the section itself at the cut, in cabinet projection', () => {
    const { job } = readJob(JOB);
    const report = evaluate(job!);
    const cut = drawDoorCorner(report, 1).find(({ key }) => key === 'panel cut outline');
    const points = (cut as { loops: readonly { curves: readonly { x0: number; y0: number }[] }[] }).loops[0]!.curves;
    // ISO 5456-3: depth at 45°, half as long. The tip of the tongue is the leftmost end: its thickness is seen as half its length each way.
    const least = Math.min(...points.map(({ x0, y0 }) => x0 + y0));
    const tip = points.filter(({ x0, y0 }) => Math.abs(x0 + y0 - least) < 1e-6).map(({ x0 }) => x0);
    expect(Math.max(...tip) - Math.min(...tip)).toBeCloseTo((report.tongue.thicknessAtTip! * Math.SQRT1_2) / 2, 9);
  });
});
