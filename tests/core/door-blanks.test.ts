// Blanks against a search through all ways to share panels out.
import { describe, expect, it } from 'vitest';
import type { BlankRules } from '../../packages/core/src/door/blank-rules.ts';
import { type BlankItem, makeBlanks } from '../../packages/core/src/door/blanks.ts';
import { coverAll } from '../../packages/core/src/door/cover.ts';
import { Random } from '../support/random.ts';
import { processorTime } from '../support/timing.ts';

const RULES: BlankRules = { leastEndGrainWidth: 300, greatestBlankWidth: 600, kerf: 3.2, edgeAllowance: 1 };

function items(widths: readonly number[], length = 600): BlankItem[] {
  return widths.map((width, i) => ({ door: `d${i}`, width, length }));
}

interface Sharing {
  /** Narrow panels left over, narrow ones that ride with a wide one, blanks of narrow ones alone. */
  readonly left: number;
  readonly riders: number;
  readonly own: number;
}

/** Fewest left over, then fewest that ride with wide panels, then most blanks, by trying every partition. */
function exhaustive(widths: readonly number[], rules: BlankRules): Sharing {
  const cut = rules.kerf + 2 * rules.edgeAllowance;
  const narrow = (w: number) => w < rules.leastEndGrainWidth;
  let best: Sharing = { left: Number.POSITIVE_INFINITY, riders: 0, own: 0 };
  const groups: number[][] = [];
  const walk = (i: number) => {
    if (i === widths.length) {
      const found = { left: 0, riders: 0, own: 0 };
      for (const group of groups) {
        const width = group.reduce((sum, w) => sum + w, 0) + (group.length - 1) * cut;
        const wide = group.filter((w) => !narrow(w)).length;
        if (group.length === 1) found.left += 1 - wide;
        else if (wide > 1 || width < rules.leastEndGrainWidth || width > rules.greatestBlankWidth) return;
        else if (wide === 1) found.riders += group.length - 1;
        else found.own++;
      }
      if (
        found.left < best.left ||
        (found.left === best.left &&
          (found.riders < best.riders || (found.riders === best.riders && found.own > best.own)))
      )
        best = found;
      return;
    }
    for (const group of groups) {
      group.push(widths[i]!);
      walk(i + 1);
      group.pop();
    }
    groups.push([widths[i]!]);
    walk(i + 1);
    groups.pop();
  };
  walk(0);
  return best;
}

describe('blanks', () => {
  it('need four panels of 90 mm: three make 280.4, still under 300', () => {
    const three = makeBlanks(items([90, 90, 90]), RULES);
    expect(three.blanks).toEqual([]);
    // By hand: 300 − 280.4 − 5.2.
    expect(three.leftOver[0]!.missing).toBeCloseTo(14.4, 9);
    const four = makeBlanks(items([90, 90, 90, 90]), RULES);
    expect(four.leftOver).toEqual([]);
    expect(four.blanks).toHaveLength(1);
    expect(four.blanks[0]!.width).toBeCloseTo(375.6, 9);
    expect(four.blanks[0]!.rips).toEqual([92.6, 187.8, 283].map((x) => expect.closeTo(x, 9)));
  });

  it('leave wide panels alone unless that saves a narrow one', () => {
    expect(makeBlanks(items([350, 400]), RULES)).toEqual({ blanks: [], leftOver: [] });
    expect(makeBlanks(items([350, 400, 160, 160]), RULES).blanks[0]!.panels.map(({ width }) => width)).toEqual([
      160, 160,
    ]);
    const saved = makeBlanks(items([350, 400, 120]), RULES);
    expect(saved.leftOver).toEqual([]);
    expect(saved.blanks[0]!.panels.map(({ width }) => width)).toEqual([350, 120]);
  });

  it('leave over one of three that are too wide together, though all three are one object', () => {
    const one = { door: 'A', width: 198, length: 700 };
    const { blanks, leftOver } = makeBlanks([one, one, one], RULES);
    expect(blanks.map(({ width, quantity }) => [width, quantity])).toEqual([[401.2, 1]]);
    expect(leftOver).toMatchObject([{ quantity: 1, width: 198 }]);
    expect(leftOver[0]!.missing).toBeCloseTo(96.8, 9);
  });

  it('are as long as their panels, to the last digit', () => {
    const inch = [1, 2, 3, 4].map(() => ({ door: 'A', width: 90, length: 511.175 }));
    expect(makeBlanks(inch, RULES).blanks.map(({ length }) => length)).toEqual([511.175]);
  });

  it('join only panels of one length', () => {
    const mixed = [...items([160], 600), ...items([160], 700)];
    expect(makeBlanks(mixed, RULES).leftOver).toHaveLength(2);
  });

  it('are filled up by a spare where that is asked for', () => {
    const filled = makeBlanks(items([90, 90]), RULES, true);
    expect(filled.leftOver).toEqual([]);
    expect(filled.blanks[0]!.panels.map(({ door }) => door)).toContain('spare');
    expect(filled.blanks[0]!.width).toBeCloseTo(300, 9);
  });

  it('fill a blank to the greatest width exactly', () => {
    // 400 and 194.8 with a kerf of 3.2 and a millimetre on both sides of it: 600.
    expect(makeBlanks(items([400, 194.8]), RULES).leftOver).toEqual([]);
    expect(makeBlanks(items([400, 194.801]), RULES).leftOver).toHaveLength(1);
    expect(makeBlanks(items([299, 295.8]), RULES).leftOver).toEqual([]);
    expect(makeBlanks(items([299, 295.801]), RULES).leftOver).toHaveLength(2);
    // And to the least: 150 and 144.8 make 300.
    expect(makeBlanks(items([150, 144.8]), RULES).leftOver).toEqual([]);
    expect(makeBlanks(items([150, 144.799]), RULES).leftOver).toHaveLength(2);
  });

  it('are given up in a second where no way of riding with wide panels serves, and there are millions', () => {
    // No two of these fit into 380 together, and the wide one has no room for any.
    const narrow = Array.from({ length: 22 }, (_, i) => 250 + i);
    const took = processorTime(() => {
      const { blanks, leftOver } = makeBlanks(items([...narrow, 370]), { ...RULES, greatestBlankWidth: 380 });
      expect([blanks.length, leftOver.reduce((sum, { quantity }) => sum + quantity, 0)]).toEqual([0, 22]);
    });
    expect(took).toBeLessThan(1000);
  });

  it('have a spare each where no two of what is left fit together', () => {
    // Two of 250 make 505.2, past 380; 250 and a kerf leave 44.8 to 300, and a spare is 50 at least.
    const filled = makeBlanks(items([250, 250, 250]), { ...RULES, greatestBlankWidth: 380 }, true);
    const made = filled.blanks.flatMap(({ width, quantity }) => new Array<number>(quantity).fill(width));
    expect(made).toEqual([305.2, 305.2, 305.2].map((width) => expect.closeTo(width, 9)));
  });

  it('are filled to the last tenth: three sizes that make the least to the bit make a bin', () => {
    expect(coverAll([100, 100, 100, 100, 100, 100], { least: 300, most: 600 })).toHaveLength(2);
    const tenths = Array.from({ length: 9 }, () => 0.1);
    expect(coverAll(tenths, { least: 0.3, most: 0.6 })).toHaveLength(3);
  });

  it('are what a search through every partition finds, on 300 random lists of up to 8', () => {
    const random = new Random(17);
    for (let i = 0; i < 300; i++) {
      const count = 1 + Math.floor(random.unit() * 8);
      const rules = random.unit() < 0.5 ? RULES : { ...RULES, greatestBlankWidth: 380 };
      const widths = Array.from({ length: count }, () =>
        Math.round(random.between(60, random.unit() < 0.3 ? 420 : 290)),
      );
      const { blanks, leftOver } = makeBlanks(items(widths), rules);
      const wanted = exhaustive(widths, rules);
      const made = blanks.flatMap(({ panels, quantity }) => new Array<typeof panels>(quantity).fill(panels));
      const isWide = ({ width }: { readonly width: number }) => width >= rules.leastEndGrainWidth;
      const found = {
        left: leftOver.reduce((sum, { quantity }) => sum + quantity, 0),
        riders: made.filter((panels) => panels.some(isWide)).reduce((sum, { length }) => sum + length - 1, 0),
        own: made.filter((panels) => !panels.some(isWide)).length,
      };
      expect(found, String(widths)).toEqual(wanted);
      const riding = blanks.flatMap(({ panels, quantity }) =>
        panels.flatMap(({ width }) => new Array<number>(quantity).fill(width)),
      );
      const apart = leftOver.flatMap(({ width, quantity }) => new Array<number>(quantity).fill(width));
      const narrow = widths.filter((width) => width < rules.leastEndGrainWidth).sort((p, q) => p - q);
      expect([...riding, ...apart].filter((width) => width < rules.leastEndGrainWidth).sort((p, q) => p - q)).toEqual(
        narrow,
      );
      for (const { width } of blanks) {
        expect(width).toBeGreaterThanOrEqual(rules.leastEndGrainWidth - 1e-9);
        expect(width).toBeLessThanOrEqual(rules.greatestBlankWidth + 1e-9);
      }
    }
  });

  it.each([
    [60, 290],
    [60, 140],
    [90, 90],
  ])('of 300 panels of a length, %i to %i mm wide, come within one of the most there can be, in 2 s', (least, most) => {
    const random = new Random(5);
    const widths = Array.from({ length: 300 }, () => random.between(least, most));
    let made: ReturnType<typeof makeBlanks> | null = null;
    const took = processorTime(() => {
      made = makeBlanks(items(widths), RULES);
    });
    expect(took).toBeLessThan(2000);
    const { blanks, leftOver } = made!;
    // No more than the sum of the widths allows, nor than so many panels to a blank as the widest need.
    const whole = widths.reduce((sum, width) => sum + width + 5.2, 0);
    const each = Math.ceil(305.2 / (Math.max(...widths) + 5.2));
    const bound = Math.min(Math.floor(whole / 305.2), Math.floor(300 / each));
    expect(leftOver).toEqual([]);
    const count = blanks.reduce((sum, { quantity }) => sum + quantity, 0);
    expect(count).toBeGreaterThanOrEqual(bound - 1);
    expect(count).toBeLessThanOrEqual(bound);
  });

  it('cover exactly where a bin less would waste wood: 24 sizes that fit eight bins of three and no more', () => {
    // A planted 3-partition: each three come to 300 exactly.
    const random = new Random(8);
    const sizes: number[] = [];
    for (let i = 0; i < 8; i++) {
      const a = Math.round(random.between(80, 120));
      const b = Math.round(random.between(80, 120));
      sizes.push(a, b, 300 - a - b);
    }
    const took = processorTime(() => expect(coverAll(sizes, { least: 300, most: 600 })).toHaveLength(8));
    expect(took).toBeLessThan(2000);
  });
});
