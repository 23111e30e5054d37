import { readFileSync } from 'node:fs';
import { type KnifeReport, readShop, reportShopKnives, type Sample, type Shop, sampleBoard } from '@fielded/core';
import {
  boardScene,
  drawBoard,
  drawBoardSheets,
  drawKnife,
  type Item,
  knifeScene,
  type PathItem,
  type Scene,
} from '@fielded/render';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { randomHead, rules } from '../support/heads.ts';
import { Random } from '../support/random.ts';
import { randomProfile } from '../support/random-job.ts';
import { trials } from '../support/trials.ts';
import { layoutFaults } from './layout-faults.ts';

const shop = readShop(readFileSync('examples/shop/shop.yaml', 'utf8')).shop!;
const { reports } = reportShopKnives(shop);
const named = (name: string) => reports.find((knife) => knife.cut === name)!;
const PARTS = ['knife', 'limiter'] as const;

function sceneOf(knife: KnifeReport, part: 'knife' | 'limiter' = 'knife', units: 'mm' | 'in' = 'mm'): Scene {
  return knifeScene({ knife, units, title: 'Knives', part });
}

function find(items: readonly Item[], key: string): Item[] {
  return items.flatMap((item) => [
    ...(item.key === key ? [item] : []),
    ...(item.kind === 'group' ? find(item.items, key) : []),
  ]);
}

function texts(items: readonly Item[]): string[] {
  return items.flatMap((item) => (item.kind === 'text' ? [item.text] : item.kind === 'group' ? texts(item.items) : []));
}

/** Random knives, as a shop of them. */
function randomKnives(count: number, units: 'mm' | 'in'): readonly KnifeReport[] {
  const random = new Random(11);
  const knives: Record<string, Shop['knives'][string]> = {};
  const heads: Record<string, Shop['heads'][string]> = {};
  for (let i = 0; i < count; i++) {
    heads[`head ${i}`] = { ...randomHead(random), knifeThickness: 5 };
    const groundFor = {
      run: random.oneOf(['under', 'over'] as const),
      rotation: random.oneOf(['clockwise', 'counterclockwise'] as const),
    };
    knives[`knife ${i}`] = { profile: randomProfile(random, 20), head: `head ${i}`, measured: 'wood', groundFor };
  }
  return reportShopKnives({ units, knives, heads, machines: {}, rules }).reports;
}

describe('the drawing of a knife', () => {
  it('has no text over another, over an arrow or an outline: the example shop', () => {
    for (const knife of reports) for (const part of PARTS) expect(layoutFaults(sceneOf(knife, part))).toEqual([]);
  });

  it('has none for random knives in mm and in inches either', () => {
    for (const units of ['mm', 'in'] as const) {
      for (const knife of randomKnives(trials(20, 60), units)) {
        expect(layoutFaults(sceneOf(knife, 'knife', units)), `${knife.cut} in ${units}`).toEqual([]);
      }
    }
  });

  it('shows every ordinate of the report, knife and limiter', () => {
    const knife = named('ogee-38');
    for (const part of PARTS) {
      const { ordinates } = part === 'knife' ? knife : knife.limiter!;
      const [table] = find(sceneOf(knife, part).items, 'ordinates');
      const cells = texts([table!]);
      for (const { s, t } of ordinates)
        for (const value of [s, t])
          expect(cells).toContain(
            value
              .toFixed(2)
              .replace(/^-(0\.00)$/, '$1')
              .replace('-', '−'),
          );
      expect(cells.filter((cell) => /\d/.test(cell))).toHaveLength(2 * ordinates.length);
    }
  });

  it('is at full size: the outline measures on paper what the report says', () => {
    for (const knife of reports) {
      const [outline] = find(sceneOf(knife).items, 'knife').filter(
        (item) => item.kind === 'path' && item.role === 'outline',
      );
      const curves = (outline as PathItem).loops.flatMap((loop) => loop.curves);
      const xs = curves.flatMap((c) => [c.x0, c.x1]);
      const ys = curves.flatMap((c) => [c.y0, c.y1]);
      expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(knife.width, 2);
      // The overrun lies beyond the length.
      expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(knife.length + knife.overrun.edge - 0.01);
      expect(Math.max(...ys) - Math.min(...ys)).toBeLessThan(knife.length + 2 * knife.overrun.edge + 0.01);
    }
  });

  it('looks at the cutting face: s runs left for a knife that turns counterclockwise under the work, right for clockwise', () => {
    const spread = (knife: KnifeReport) => {
      const [item] = find(sceneOf(knife).items, 'knife').filter(
        (found) => found.kind === 'path' && found.role === 'outline',
      );
      const curves = (item as PathItem).loops.flatMap((loop) => loop.curves);
      // The outline starts at the edge, at the greatest s of a knife run flat, and ends at the tip's side.
      return Math.sign(curves[0]!.x0 - curves.at(-1)!.x1);
    };
    const knife = named('ogee-38');
    const ground = (run: 'under' | 'over', rotation: 'clockwise' | 'counterclockwise') => ({
      ...knife,
      groundFor: { run, rotation },
    });
    expect(spread(ground('under', 'counterclockwise'))).toBe(-1);
    expect(spread(ground('under', 'clockwise'))).toBe(1);
    // Turned over, the head runs the other way round: the same knife.
    expect(spread(ground('over', 'clockwise'))).toBe(-1);
    expect(spread(ground('over', 'counterclockwise'))).toBe(1);
  });

  it('puts the wood tip on tip with the steel, so that the stretch shows', () => {
    const drawn = sceneOf(named('ogee-38'));
    const box = (key: string, role: string) => {
      const [item] = find(drawn.items, key).filter((found) => found.kind === 'path' && found.role === role);
      const ys = (item as PathItem).loops.flatMap((loop) => loop.curves.flatMap((c) => [c.y0, c.y1]));
      return { top: Math.min(...ys), bottom: Math.max(...ys) };
    };
    const [steel, wood] = [box('knife', 'outline'), box('wood', 'old')];
    expect(steel.bottom).toBeCloseTo(wood.bottom, 9);
    // The overrun past the edge is a millimetre on the radius, a little more on the steel.
    const beyond = wood.top - steel.top - (named('ogee-38').length - 38);
    expect(beyond).toBeGreaterThan(1);
    expect(beyond).toBeLessThan(1.3);
  });

  it('says rake, radius, hand and every warning', () => {
    const words = texts(sceneOf(named('rebate-10')).items)
      .join(' ')
      .replaceAll('\u00a0', ' ');
    expect(words).toContain('cutting radius 62.5 mm, cutting angle (rake) 18°, no shear, sharpness angle (wedge) 42°');
    expect(words).toContain('Ground to run over, turning clockwise seen from above.');
    expect(words).toContain(
      'Side relief: grind at least 3° here, behind the edge: on A, the flat 0 mm to 10 mm from the edge, 5 mm down.',
    );
    expect(words).toContain('50 mm: check the print with a rule');
  });

  it('is well-formed SVG, the same every time, and names from files cannot break it', () => {
    const knife = { ...named('ogee-38'), cut: '<b>&"', head: '</svg>' };
    const drawing = { knife, units: 'mm' as const, title: '<script>', part: 'knife' as const };
    expect(XMLValidator.validate(drawKnife(drawing))).toBe(true);
    expect(drawKnife(drawing)).toBe(drawKnife(drawing));
    expect(drawKnife(drawing)).not.toContain('<script');
  });

  it('cannot be of a limiter that there is none of', () => {
    const drawing = {
      knife: { ...named('ogee-38'), limiter: null },
      units: 'mm' as const,
      title: '',
      part: 'limiter' as const,
    };
    expect(() => knifeScene(drawing)).toThrow('the knife ogee-38 has no limiter');
  });
});

describe('the sample board', () => {
  const samples = sampleBoard(shop);

  it('has no text over another or off the paper, and every knife with its sizes', () => {
    const board = boardScene({ samples, units: 'mm', title: 'Our knives' });
    expect(layoutFaults(board)).toEqual([]);
    const words = texts(board.items);
    for (const { name, reach, depth } of samples) {
      expect(words).toContain(name);
      expect(
        words.some((line) =>
          line.endsWith(`reach ${Math.round(reach * 10) / 10}, depth ${Math.round(depth * 10) / 10}`),
        ),
      ).toBe(true);
    }
  });

  it('fits A4 in width, and breaks a large shop into sheets that fit it in height', () => {
    const many: Sample[] = Array.from({ length: 60 }, (_, i) => ({
      ...samples[i % samples.length]!,
      name: `knife ${i}`,
    }));
    const sheets = drawBoardSheets({ samples: many, units: 'mm', title: 'Many' });
    expect(sheets.length).toBeGreaterThan(2);
    for (const svg of sheets) {
      const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg)!;
      expect(Number(width)).toBeLessThanOrEqual(200);
      expect(Number(height)).toBeLessThanOrEqual(287);
      expect(XMLValidator.validate(svg)).toBe(true);
    }
    for (let i = 0; i < 60; i++) expect(sheets.filter((svg) => svg.includes(`>knife ${i}</text>`))).toHaveLength(1);
  });

  it('is drawn as it was last looked at', async () => {
    await expect(drawBoard({ samples, units: 'mm', title: 'Our knives' })).toMatchFileSnapshot(
      '../snapshots/shop-board.svg',
    );
    await expect(
      drawKnife({ knife: named('ogee-38'), units: 'mm', title: 'Knives', part: 'knife' }),
    ).toMatchFileSnapshot('../snapshots/shop-knife-ogee-38.svg');
  });

  it('refuses no knives and no scale', () => {
    expect(() => boardScene({ samples: [], units: 'mm', title: '' })).toThrow('a board needs at least one knife');
    expect(() => boardScene({ samples, units: 'mm', title: '', scale: 0 })).toThrow('scale 0');
  });
});
