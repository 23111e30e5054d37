import { readFileSync } from 'node:fs';
import { readShop, reportShopKnives } from '@fielded/core';
import { readDxf, writeDxf } from '@fielded/exchange';
import { arc, type Chain, line, readReportPath } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';

const { shop } = readShop(readFileSync('examples/shop/shop.yaml', 'utf8'));
const { reports } = reportShopKnives(shop!);

/** The group codes and values of a DXF file, for looking at what was written apart from the reader. */
function pairs(text: string): [number, string][] {
  const lines = text.trim().split('\n');
  return lines.flatMap((code, i) => (i % 2 === 0 ? [[Number(code), lines[i + 1]!.trim()] as [number, string]] : []));
}

function dxf(entities: string, unit = 4): string {
  const lines =
    `0 SECTION 2 HEADER 9 $INSUNITS 70 ${unit} 0 ENDSEC 0 SECTION 2 ENTITIES ${entities} 0 ENDSEC 0 EOF`.split(' ');
  return `${lines.join('\n')}\n`;
}

function expectSame(read: Chain, written: Chain, within: number): void {
  expect(read).toHaveLength(written.length);
  read.forEach((c, i) => {
    const w = written[i]!;
    expect(c.turn).toBe(w.turn);
    for (const key of ['x0', 'y0', 'x1', 'y1'] as const) expect(Math.abs(c[key] - w[key])).toBeLessThan(within);
    // A flat arc's centre is known less well than its ends by radius / sagitta.
    if (w.turn !== 0) {
      const chord2 = (w.x1 - w.x0) ** 2 + (w.y1 - w.y0) ** 2;
      expect(Math.abs(c.r - w.r) * (chord2 / (8 * w.r * w.r))).toBeLessThan(10 * within);
    }
  });
}

describe('a DXF file', () => {
  it('of every knife of the example shop reads back equal', () => {
    for (const knife of reports) {
      const [outline] = readReportPath(knife.outline);
      const { outlines, leftOut } = readDxf(writeDxf([{ name: 'KNIFE', chains: [outline!] }]));
      expect(leftOut).toEqual([]);
      expect(outlines.map((o) => o.layer)).toEqual(['KNIFE']);
      expectSame(outlines[0]!.chain, outline!, 2e-9);
    }
  });

  it('says that it is in millimetres and writes true arcs, anticlockwise in degrees', () => {
    const text = writeDxf([{ name: 'KNIFE', chains: [[line(0, 0, 5, 0), arc(5, 0, 5, 10, 5, 5, -1)]] }]);
    const written = pairs(text);
    const units = written.findIndex(([, value]) => value === '$INSUNITS');
    expect(written[units + 1]).toEqual([70, '4']);
    const start = written.findIndex(([, value]) => value === 'ARC');
    const figure = (code: number) => Number(written.slice(start).find(([c]) => c === code)![1]);
    // Clockwise from the foot over the left to the top: anticlockwise from 90° to 270°.
    expect([10, 20, 40, 50, 51].map(figure)).toEqual([5, 5, 5, 90, 270]);
    expect(written.slice(start).find(([c]) => c === 8)).toEqual([8, 'KNIFE']);
  });

  it('is the same text every time', () => {
    const layers = [{ name: 'A', chains: [[line(0, 0, 1, 1)]] }];
    expect(writeDxf(layers)).toBe(writeDxf(layers));
  });

  it('keeps clockwise arcs and those past half a turn', () => {
    const chain = [arc(10, 0, -10, 0, 0, 0, -1), arc(-10, 0, 0, -10, 0, 0, -1)];
    const [outline] = readDxf(writeDxf([{ name: 'A', chains: [chain] }])).outlines;
    expectSame(outline!.chain, chain, 1e-9);
  });

  it('is not made of an outline without pieces', () => {
    expect(() => writeDxf([{ name: 'A', chains: [[]] }])).toThrow('the layer A has an outline without pieces');
  });
});

describe('a DXF file from elsewhere', () => {
  it('in inches comes out in millimetres', () => {
    const { outlines } = readDxf(dxf('0 LWPOLYLINE 8 0 90 2 70 0 10 0 20 0 10 1 20 0.5', 1));
    expect(outlines[0]!.chain).toEqual([line(0, 0, 25.4, 12.7)]);
  });

  it('of an old polyline, closed: a circle of two half turns', () => {
    const text = dxf(
      '0 POLYLINE 8 P 66 1 10 0 20 0 70 1 0 VERTEX 8 P 10 0 20 0 42 1 0 VERTEX 8 P 10 10 20 0 42 1 0 SEQEND 8 P',
    );
    const [outline] = readDxf(text).outlines;
    expect(outline!.layer).toBe('P');
    expect(outline!.chain.map((c) => [c.turn, c.r, c.cx, c.cy])).toEqual([
      [1, 5, 5, 0],
      [1, 5, 5, 0],
    ]);
  });

  it('of single lines and arcs is joined end to end, turned round where needed', () => {
    const text = dxf(
      '0 LINE 8 L 10 0 20 5 11 10 21 5 0 ARC 8 L 10 10 20 0 40 5 50 0 51 90 0 LINE 8 L 10 15 20 -3 11 15 21 0 0 LINE 8 M 10 0 20 0 11 1 21 1',
    );
    const { outlines } = readDxf(text);
    expect(outlines.map((o) => [o.layer, o.chain.length])).toEqual([
      ['L', 3],
      ['M', 1],
    ]);
    const ends = outlines[0]!.chain.map((c) => [c.x0, c.y0, c.x1, c.y1].map((v) => Math.round(v * 1e9) / 1e9));
    expect(ends).toEqual([
      [0, 5, 10, 5],
      [10, 5, 15, 0],
      [15, 0, 15, -3],
    ]);
    expect(outlines[0]!.chain[1]!.turn).toBe(-1);
  });

  it('tells what it left out', () => {
    const { outlines, leftOut } = readDxf(dxf('0 SPLINE 8 0 0 SPLINE 8 0 0 TEXT 8 0 1 hello'));
    expect(outlines).toEqual([]);
    expect(leftOut).toEqual(['2 × SPLINE', '1 × TEXT']);
  });

  it.each([
    ['', 'This is not a text DXF file, or it breaks off.'],
    ['<svg xmlns="http://www.w3.org/2000/svg"/>', 'This is not a text DXF file, or it breaks off.'],
    [dxf('0 LINE 8 0').replace('EOF', 'EO'), 'This is not a text DXF file, or it breaks off.'],
    [dxf('0 LINE 8 0', 3), "The drawing's unit ($INSUNITS 3) is not a usual one."],
    [dxf('0 LINE 8 0 10 0 20 x 11 1 21 1'), 'The drawing holds a figure that is not a number.'],
  ])('that cannot be read gives nothing and says why', (text, why) => {
    expect(readDxf(text)).toEqual({ outlines: [], leftOut: [why] });
  });
});
