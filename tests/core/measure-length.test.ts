import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseAngle } from '../../packages/core/src/measure/angle.ts';
import { formatLength, formatNumber } from '../../packages/core/src/measure/format.ts';
import { parseLength, type Units } from '../../packages/core/src/measure/length.ts';
import { trials } from '../support/trials.ts';

// 1 in = 25.4 mm exactly: the international inch (1959).
const READ: readonly (readonly [string, Units, number])[] = [
  ['19', 'mm', 19],
  ['19', 'in', 482.6],
  ['19 mm', 'in', 19],
  ['1.9 cm', 'mm', 19],
  ['0.019 m', 'mm', 19],
  ['3/4 in', 'mm', 19.05],
  ['3/4"', 'mm', 19.05],
  ['3/4', 'in', 19.05],
  ['1-1/4"', 'mm', 31.75],
  ['1 1/4 in', 'mm', 31.75],
  ['1 - 1/4 in', 'mm', 31.75],
  ['1¼ in', 'mm', 31.75],
  ['1 ¼ in', 'mm', 31.75],
  ['1-1/4', 'in', 31.75],
  ['¾"', 'mm', 19.05],
  ['¾', 'in', 19.05],
  ['13/16"', 'mm', 20.6375],
  ['5/4 in', 'mm', 31.75],
  ['0.75in', 'mm', 19.05],
  ['.75"', 'mm', 19.05],
  ['1.', 'mm', 1],
  ['19,05', 'mm', 19.05],
  ['0,125', 'in', 3.175],
  ['19,05 mm', 'in', 19.05],
  ["5'", 'mm', 1524],
  ['5\' 3-1/2"', 'mm', 1612.9],
  ['5\'3½"', 'mm', 1612.9],
  ['5\'-3 1/2"', 'mm', 1612.9],
  ['5 ft 3 in', 'mm', 1600.2],
  ['5 feet', 'mm', 1524],
  ['1 foot', 'mm', 304.8],
  ['2 inches', 'mm', 50.8],
  ['1 inch', 'mm', 25.4],
  ['3/4 IN.', 'mm', 19.05],
  ['5′ 3½″', 'mm', 1612.9],
  ['5’ 3”', 'mm', 1600.2],
  ["3/4''", 'mm', 19.05],
  ['3⁄4 in', 'mm', 19.05],
  ['1\u00A01/4\u00A0in', 'mm', 31.75],
  ['1–1/4"', 'mm', 31.75],
  ['-19', 'mm', -19],
  ['−3/4 in', 'mm', -19.05],
  ['-1-1/4 in', 'mm', -31.75],
  ['+2 mm', 'mm', 2],
  ['-0', 'mm', 0],
  ['1e1', 'mm', 10],
  ['1000.5 mm', 'in', 1000.5],
];

const REFUSED: readonly (readonly [string, Units, string, string])[] = [
  ['', 'mm', 'empty', 'a figure and its unit, such as 19 mm or 3/4 in'],
  ['1/0', 'in', 'a division by nothing', 'a fraction such as 3/4 in'],
  ['20 kg', 'mm', 'in "kg", which is not a unit known here', 'it in mm, cm, m, in or ft'],
  ['1--1/4', 'in', 'a figure with a stray hyphen', '1-1/4 in'],
  ['1--1/4"', 'mm', 'a figure with a stray hyphen', '1-1/4"'],
  ['1e999', 'mm', 'beyond any number', 'a figure such as 19 mm or 3/4 in'],
  ['1,000', 'mm', 'either a thousand or a decimal comma', '1000 or 1.000'],
  ['19,050', 'mm', 'either a thousand or a decimal comma', '19050 or 19.050'],
  ['1,000.5', 'mm', 'a figure with commas in it', '1000.5'],
  ['1,000,000', 'mm', 'a figure with commas in it', '1000000'],
  ['1.000,5', 'mm', 'a figure with both points and a comma', '1000.5'],
  ['1.2.3', 'mm', 'a figure with too many points or commas', 'one decimal point, such as 19.05 mm'],
  ['3/4', 'mm', 'a fraction with no unit', '3/4 in'],
  ['¾', 'mm', 'a fraction with no unit', '3/4 in'],
  ['1-1/4', 'mm', 'a fraction with no unit', '1-1/4 in'],
  [
    '1-5/4',
    'in',
    'a whole number with more than a whole beside it',
    'it as one fraction, such as 5/4 in, or as 1-1/4 in',
  ],
  ['NaN', 'mm', 'not a number', 'a figure and its unit, such as 19 mm or 3/4 in'],
  ['inf', 'mm', 'not a number', 'a figure and its unit, such as 19 mm or 3/4 in'],
  ['-.inf', 'mm', 'not a number', 'a figure and its unit, such as 19 mm or 3/4 in'],
  ['mm', 'mm', 'not a length', 'a figure and its unit, such as 19 mm or 3/4 in'],
  ['thick', 'mm', 'not a length', 'a figure and its unit, such as 19 mm or 3/4 in'],
  ['3/', 'in', 'half a fraction', 'a fraction such as 3/4 in'],
  ['20 mm 3', 'mm', 'more than one figure', 'a figure and its unit, such as 19 mm or 3/4 in'],
  ["5' 3", 'in', 'a figure with no unit after the feet', '5\' 3"'],
  ["5' 3 mm", 'in', 'feet with something else than inches after them', 'it like 5\' 3-1/2"'],
  ['0x10', 'mm', 'more than one figure', 'a figure and its unit, such as 19 mm or 3/4 in'],
  ['9'.repeat(61), 'mm', '61 characters long', 'a figure and its unit, such as 19 mm or 3/4 in'],
  [
    `${'9'.repeat(30)} 1/${'9'.repeat(20)} kg`,
    'mm',
    'in "kg", which is not a unit known here',
    'it in mm, cm, m, in or ft',
  ],
];

describe('parseLength', () => {
  it.each(READ)('reads %s in a file of %s', (text, units, mm) => {
    const reading = parseLength(text, units);
    expect(reading).toEqual({ mm });
  });

  it.each(REFUSED)('refuses %s in a file of %s', (text, units, read, instead) => {
    expect(parseLength(text, units)).toEqual({ read, instead });
  });

  it('reads every 64th exactly as sixty-fourths of 25.4 mm', () => {
    for (let parts = 1; parts <= 640; parts++) {
      const exact = (parts * 254) / 640;
      expect(parseLength(`${parts}/64 in`, 'mm')).toEqual({ mm: exact });
    }
  });

  it('reads back what formatLength writes, exactly in 64ths and to the rounding in mm', () => {
    fc.assert(
      fc.property(fc.integer({ min: -64_000, max: 64_000 }), (parts) => {
        const mm = (parts * 254) / 640;
        expect(parseLength(formatLength(mm, 'in'), 'mm')).toEqual({ mm });
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: -9000, max: 9000, noNaN: true }), (mm) => {
        const back = parseLength(formatLength(mm, 'mm'), 'in');
        expect('mm' in back && Math.abs(back.mm - mm) <= 0.005 + 1e-9).toBe(true);
      }),
    );
  });

  it('never throws and never answers anything but a finite length or words, whatever it is given', () => {
    // Half pairs too. The library's own unit of any sign first lists the million of them.
    const anySign = fc.integer({ min: 0, max: 0x10ffff }).map((code) => String.fromCodePoint(code));
    const scraps = fc.constantFrom(
      '1',
      '3/4',
      '-',
      ' ',
      '"',
      "'",
      'in',
      'mm',
      '.',
      ',',
      'e',
      '9',
      '¼',
      '/',
      '0',
      'ft',
      '′',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.string({ unit: anySign }),
          fc.array(scraps).map((all) => all.join('')),
        ),
        (text) => {
          const reading = parseLength(text, 'in');
          if ('mm' in reading) expect(Number.isFinite(reading.mm)).toBe(true);
          else expect(reading.read.length * reading.instead.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: trials(500, 2000) },
    );
  });
});

describe('parseAngle', () => {
  it.each([
    ['18', 18],
    ['18°', 18],
    ['18 deg', 18],
    ['17,5 degrees', 17.5],
    ['-12', -12],
  ])('reads %s', (text, degrees) => {
    expect(parseAngle(text)).toEqual({ degrees });
  });

  it.each([
    ['', 'empty'],
    ['18 mm', 'in "mm", which is not a unit of angle'],
    ['steep', 'not an angle'],
    ['1e999', 'beyond any number'],
  ])('refuses %s', (text, read) => {
    expect(parseAngle(text)).toEqual({ read, instead: 'degrees, such as 18 or 18°' });
  });
});

describe('formatLength', () => {
  it.each([
    [6.4, 'mm', '6.4 mm'],
    [9, 'mm', '9 mm'],
    [1.005, 'mm', '1.01 mm'],
    [-0.001, 'mm', '0 mm'],
    [-3.9, 'mm', '−3.9 mm'],
    [1234.5678, 'mm', '1234.57 mm'],
    [19.05, 'in', '3/4 in'],
    [31.75, 'in', '1-1/4 in'],
    [25.4, 'in', '1 in'],
    [0, 'in', '0 in'],
    [-6.35, 'in', '−1/4 in'],
    [5.3, 'in', '≈13/64 in (0.2087 in)'],
    [0.2, 'in', '0.0079 in'],
    [25.39, 'in', '≈1 in (0.9996 in)'],
  ] as const)('writes %s mm in %s as %s', (mm, units, text) => {
    expect(formatLength(mm, units)).toBe(text);
  });

  it('refuses what is no length', () => {
    expect(() => formatLength(Number.NaN, 'mm')).toThrow('formatLength: NaN is not a length');
    expect(() => formatNumber(Number.POSITIVE_INFINITY, 2)).toThrow('formatNumber: Infinity is not a number');
  });
});
