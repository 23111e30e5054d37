// Outlines at 1:1 read back by a reader that is not Fielded's: the `dxf` package.
import { evaluate, type Report } from '@fielded/core';
import { writeDxf } from '@fielded/exchange';
import { OUTLINE_VIEWS, type OutlineView, outlineLayers } from '@fielded/render';
import { Helper } from 'dxf';
import { describe, expect, test } from 'vitest';
import { limiterProfile } from '../../packages/core/src/knife/limiter-profile.ts';
import { seeProfile } from '../../packages/core/src/knife/seen-profile.ts';
import { profileChain } from '../../packages/core/src/profile/chain.ts';
import { completeDoor } from '../support/doors.ts';
import { JOBS, job } from './jobs-to-draw.ts';

interface Entity {
  readonly type: 'LINE' | 'ARC';
  readonly layer: string;
  readonly start: { x: number; y: number };
  readonly end: { x: number; y: number };
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly startAngle: number;
  readonly endAngle: number;
}

const door = completeDoor({ name: 'A', width: 596, height: 716, stile: 60, rail: 60 });
const report = evaluate(job({ doors: [door] }));

function readBack(of: Report, view: OutlineView): { entities: Entity[]; layers: string[]; units: number } {
  const { parsed } = new Helper(writeDxf(outlineLayers(of, view)));
  return {
    entities: parsed.entities as Entity[],
    layers: Object.keys(parsed.tables.layers).filter((name) => name !== '0'),
    units: parsed.header.insUnits,
  };
}

/** Points along an entity, close enough for its extent. */
function pointsOf(entity: Entity): [number, number][] {
  if (entity.type === 'LINE')
    return [
      [entity.start.x, entity.start.y],
      [entity.end.x, entity.end.y],
    ];
  const { x, y, r, startAngle, endAngle } = entity;
  const sweep = (endAngle - startAngle + 4 * Math.PI) % (2 * Math.PI);
  return Array.from({ length: 2001 }, (_, i) => {
    const angle = startAngle + (sweep * i) / 2000;
    return [x + r * Math.cos(angle), y + r * Math.sin(angle)];
  });
}

function extent(entities: readonly Entity[], layer: string) {
  const points = entities.filter((entity) => entity.layer === layer).flatMap(pointsOf);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
}

describe('outlines as DXF', () => {
  test.each([
    ['section', ['STOCK', 'PANEL']],
    ['joint', ['PANEL', 'FRAME']],
    ['cuts', ['STOCK', 'PANEL', 'CUT 1 RAISE', 'CUT 2 BACK RELIEF']],
    ['panel', ['PANEL', 'FIELD', 'SIGHT', 'SECTION']],
  ] as const)('%s has its layers, in millimetres', (view, layers) => {
    const read = readBack(report, view);
    expect(read.layers).toEqual(layers);
    // 4 is millimetres (DXF reference, $INSUNITS).
    expect(read.units).toBe(4);
  });

  test('the section bounds the wood that is left', () => {
    const { entities } = readBack(report, 'section');
    const box = extent(entities, 'PANEL');
    expect([box.x0, box.x1, box.y0, box.y1].map((v) => Math.round(v * 1e6) / 1e6)).toEqual([
      0,
      report.section.width,
      -report.panel.measured,
      0,
    ]);
    // Green's theorem along the outline, which the file holds in order; an arc's points run anticlockwise, so each is turned to start where the last ended.
    let area = 0;
    let at: [number, number] | null = null;
    for (const entity of entities.filter(({ layer }) => layer === 'PANEL')) {
      let points = pointsOf(entity);
      const from = at;
      const far = (p: [number, number]) => (from === null ? 0 : Math.hypot(p[0] - from[0], p[1] - from[1]));
      if (far(points[0]!) > far(points.at(-1)!)) points = points.reverse();
      for (let i = 1; i < points.length; i += 1)
        area += (points[i - 1]![0] * points[i]![1] - points[i]![0] * points[i - 1]![1]) / 2;
      at = points.at(-1)!;
    }
    const left = report.section.width * report.panel.measured - report.section.removedArea;
    expect(Math.abs(area)).toBeCloseTo(left, 3);
  });

  test('the joint stands as it fits', () => {
    const { entities } = readBack(report, 'joint');
    const panel = extent(entities, 'PANEL');
    const frame = extent(entities, 'FRAME');
    expect(frame.x1 - panel.x0).toBeCloseTo(report.tongue.insertion, 6);
    expect(frame.y1 - frame.y0).toBeCloseTo(report.frame.thickness, 6);
    expect(panel.y1 - frame.y1).toBeCloseTo(report.fit.frontFace!.most, 6);
  });

  test('each cut reaches and goes down as it is set', () => {
    const { entities } = readBack(report, 'cuts');
    report.section.cuts.forEach((cut, i) => {
      const box = extent(entities, `CUT ${i + 1} ${cut.name.toUpperCase()}`);
      expect(box.x1).toBeCloseTo(cut.reach, 6);
      expect(box.y1 - box.y0).toBeCloseTo(cut.depthCut, 6);
    });
  });

  test('the panel has its size, its field and what the frame covers', () => {
    const { entities } = readBack(report, 'panel');
    const size = (layer: string) => {
      const box = extent(entities, layer);
      return [box.x1 - box.x0, box.y1 - box.y0];
    };
    const { width, height } = report.doors![0]!.panel;
    const { insertion } = report.tongue;
    expect(size('PANEL')[0]).toBeCloseTo(width, 6);
    expect(size('PANEL')[1]).toBeCloseTo(height, 6);
    expect(size('SIGHT')[0]).toBeCloseTo(width - 2 * insertion, 6);
    const fields = entities.filter(({ layer, type }) => layer === 'FIELD' && type === 'LINE');
    const level = fields.filter(({ start, end }) => Math.abs(start.y - end.y) < 1e-9);
    expect(level).toHaveLength(2);
    expect(Math.abs(level[0]!.start.x - level[0]!.end.x)).toBeCloseTo(width - 2 * report.section.cuts[0]!.reach, 6);
  });

  test.each(Object.keys(JOBS))('%s is read without loss', (name) => {
    const of = evaluate({ ...JOBS[name]!, doors: [door] });
    for (const view of OUTLINE_VIEWS) {
      const pieces = outlineLayers(of, view).flatMap(({ chains }) => chains.flat());
      expect(readBack(of, view).entities).toHaveLength(pieces.length);
    }
  });

  test.each([
    [38, 4, 1, 1],
    [38, 4, 1, 2],
  ])(
    'a limiter behind an ovolo of %d × %d mm with a shoulder of %d, %d mm back, has no line of no length',
    (reach, depth, shoulder, gap) => {
      const { chain } = seeProfile(profileChain({ shape: 'ovolo', reach, depth, land: 0, shoulder, balance: 0.5 }), 0);
      const { parsed } = new Helper(writeDxf([{ name: 'LIMITER', chains: [limiterProfile(chain, gap, 0.2)] }]));
      const ends = (parsed.entities as Entity[]).map(
        (entity) => [pointsOf(entity)[0]!, pointsOf(entity).at(-1)!] as const,
      );
      for (const [from, to] of ends) expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeGreaterThan(0.01);
      // Every end but the two of the whole meets another.
      const points = ends.flat();
      const alone = points.filter((p) => !points.some((q) => q !== p && Math.hypot(q[0] - p[0], q[1] - p[1]) < 1e-6));
      expect(alone).toHaveLength(2);
    },
  );
});
