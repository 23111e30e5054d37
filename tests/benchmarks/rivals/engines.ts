import type { Job } from '@fielded/core';
import Flatten from '@flatten-js/core';
import { areaPathsD, differenceD, FillRule } from 'clipper2-ts';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import polygonClipping from 'polygon-clipping';
import { makeEdge } from '../../../packages/core/dist/joint/edge.js';
import { flatten, type Point, type Region, regionsOf, stockPoints } from './job-polygons.ts';
import { loadClipper } from './load-clipper.ts';

/** A way to work out the wood left of a job, mm²: `prepare` is not timed, what it returns is. */
export interface Engine {
  readonly name: string;
  /** Whether it keeps arcs; the others get chords within the tolerance they are named with. */
  readonly arcs: boolean;
  prepare(job: Job): () => number;
}

const PLACES = 6;

/** Our own: from the job's chains, through the sweep, to areas, boundaries and tongue. Nothing is prepared. */
export const ours: Engine = {
  name: 'Fielded',
  arcs: true,
  prepare: (job) => () => makeEdge(job.panel, job.cuts).section.wood.area,
};

export const flattenJs: Engine = {
  name: '@flatten-js/core',
  arcs: true,
  prepare: (job) => {
    const { width, thickness, regions } = regionsOf(job);
    const { Polygon, Segment, Arc, Point: P, point, BooleanOperations } = Flatten;
    const toShape = (c: Region['curves'][number]) => {
      if (c.turn === 0) return new Segment(point(c.x0, c.y0), point(c.x1, c.y1));
      const angle = (x: number, y: number) => Math.atan2(y - c.cy, x - c.cx);
      return new Arc(new P(c.cx, c.cy), c.r, angle(c.x0, c.y0), angle(c.x1, c.y1), c.turn > 0);
    };
    const upright = (polygon: InstanceType<typeof Polygon>) => {
      if ([...polygon.faces][0]!.orientation() !== Flatten.ORIENTATION.CCW) polygon.reverse();
      return polygon;
    };
    return () => {
      const stock = upright(new Polygon(stockPoints(width, thickness).map(([x, y]) => point(x, y))));
      const cuts = regions.map(({ curves }) => upright(new Polygon(curves.map(toShape))));
      return cuts.reduce((left, cut) => BooleanOperations.subtract(left, cut), stock).area();
    };
  },
};

/** The libraries that know straight lines only, at one tolerance. */
export async function chordEngines(tolerance: number): Promise<Engine[]> {
  const name = (library: string) => `${library}, ${tolerance} mm`;
  const prepared = (job: Job) => {
    const { width, thickness, regions } = regionsOf(job);
    return { stock: stockPoints(width, thickness), cuts: regions.map((region) => flatten(region, tolerance)) };
  };
  const clipper = await loadClipper();
  return [
    {
      name: name('clipper2-ts'),
      arcs: false,
      prepare: (job) => {
        const { stock, cuts } = prepared(job);
        const path = (points: Point[]) => points.map(([x, y]) => ({ x, y }));
        return () => areaPathsD(differenceD([path(stock)], cuts.map(path), FillRule.NonZero, PLACES));
      },
    },
    {
      name: name('clipper2-wasm'),
      arcs: false,
      prepare: (job) => {
        const { stock, cuts } = prepared(job);
        return () => clipper.difference(stock, cuts, PLACES);
      },
    },
    {
      name: name('polygon-clipping'),
      arcs: false,
      prepare: (job) => {
        const { stock, cuts } = prepared(job);
        return () =>
          polygonClipping
            .difference([stock], ...cuts.map((cut): Point[][] => [cut]))
            .reduce((sum, rings) => sum + ringsArea(rings as Point[][]), 0);
      },
    },
    {
      name: name('jsts'),
      arcs: false,
      prepare: (job) => {
        const { stock, cuts } = prepared(job);
        const factory = new GeometryFactory();
        const polygon = (points: Point[]) => {
          const ring = [...points, points[0]!].map(([x, y]) => new Coordinate(x, y));
          return factory.createPolygon(factory.createLinearRing(ring), []);
        };
        return () => cuts.reduce((left, cut) => OverlayOp.difference(left, polygon(cut)), polygon(stock)).getArea();
      },
    },
  ];
}

function ringsArea(rings: Point[][]): number {
  const area = (ring: Point[]) =>
    Math.abs(
      ring.reduce((sum, [x, y], i) => {
        const [nextX, nextY] = ring[(i + 1) % ring.length]!;
        return sum + (x * nextY - nextX * y) / 2;
      }, 0),
    );
  return rings.reduce((sum, ring, i) => sum + (i === 0 ? 1 : -1) * area(ring), 0);
}
