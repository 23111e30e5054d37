import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

type Points = readonly (readonly [number, number])[];

/** What the benchmarks ask of clipper2-wasm: areas, mm², of polygons cut and of a polygon's parallel. */
export interface Clipper {
  difference(stock: Points, cuts: readonly Points[], places: number): number;
  inflate(ring: Points, distance: number, chord: number, places: number): number;
}

export async function loadClipper(): Promise<Clipper> {
  const require = createRequire(import.meta.url);
  const file = require.resolve('clipper2-wasm/dist/umd/clipper2z.js');
  const lib = await require(file)({ locateFile: (path: string) => join(dirname(file), path) });
  const paths = (list: readonly Points[]) => {
    const all = new lib.PathsD();
    for (const points of list) {
      const path = lib.MakePathD(points.flat());
      all.push_back(path);
      path.delete();
    }
    return all;
  };
  const areaAndForget = (made: { delete(): void }[], left: { delete(): void }): number => {
    const area: number = lib.AreaPathsD(left);
    for (const each of [...made, left]) each.delete();
    return area;
  };
  return {
    difference(stock, cuts, places) {
      const made = [paths([stock]), paths(cuts)];
      return areaAndForget(made, lib.DifferenceD(...made, lib.FillRule.NonZero, places));
    },
    inflate(ring, distance, chord, places) {
      const made = [paths([ring])];
      const { JoinType, EndType } = lib;
      return areaAndForget(
        made,
        lib.InflatePathsD(made[0], distance, JoinType.Round, EndType.Polygon, 2, places, chord),
      );
    },
  };
}
