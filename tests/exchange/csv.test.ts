import { readPoints, writeCsv } from '@fielded/exchange';
import { describe, expect, it } from 'vitest';

describe('ordinates as CSV', () => {
  it('stand under their headings, nanometres at most, empty where there is none', () => {
    const table = {
      headings: ['s (mm)', 't, knife'],
      rows: [
        [-1.5, 0],
        [1 / 3, 1e-9],
        [2, null],
        [-1e-12, 43.3109746611],
      ],
    };
    expect(writeCsv(table)).toBe('s (mm),"t, knife"\r\n-1.5,0\r\n0.333333,0\r\n2,\r\n0,43.310975\r\n');
  });

  it('read back as the same points', () => {
    const rows = [
      [-1.5, 0],
      [0, 0.25],
      [7.5, 43.310975],
    ];
    const { points, unread } = readPoints(writeCsv({ headings: ['s (mm)', 't (mm)'], rows }));
    expect(points.map(({ x, y }) => [x, y])).toEqual(rows);
    expect(unread).toEqual([]);
  });

  it('never hold what is not a number', () => {
    expect(() => writeCsv({ headings: ['s'], rows: [[Number.NaN]] })).toThrow(
      'a table holds NaN, which is not a number',
    );
  });
});

describe('points of a scan', () => {
  it('are read with any parting, comments and empty lines left out, broken lines named', () => {
    const text = 'x;y\n# scanned at 1200 dpi\n0;0\n1\t2 \n\n3 , 4\n5\nsix 6\n7 8 9\n1e-3 -2.5\n';
    expect(readPoints(text)).toEqual({
      points: [
        { x: 0, y: 0 },
        { x: 1, y: 2 },
        { x: 3, y: 4 },
        { x: 7, y: 8 },
        { x: 0.001, y: -2.5 },
      ],
      unread: [7, 8],
    });
  });
});
