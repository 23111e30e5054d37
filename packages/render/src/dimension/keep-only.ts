import type { Sketch } from './sketch.ts';

/** A sketch with the dimensions of some values alone; with all of them, for null. */
export function keepOnly(sketch: Sketch, only: readonly string[] | null): Sketch {
  if (only === null) return sketch;
  const wanted = <F extends { readonly of: string }>(list: readonly F[]) => list.filter(({ of }) => only.includes(of));
  return {
    ...sketch,
    tiers: wanted(sketch.tiers),
    interiors: wanted(sketch.interiors),
    leaders: wanted(sketch.leaders),
    angles: wanted(sketch.angles ?? []),
    ordinates: wanted(sketch.ordinates ?? []),
  };
}
