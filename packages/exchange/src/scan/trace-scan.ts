import type { Refusal } from '@fielded/core';
import { type Chain, curveLength, findSelfCrossing, type Point, pathData, pointAt } from '@fielded/geometry';
import { MOST_STROKES } from '../most-strokes.ts';
import { listArcs, type TracedArc } from './arcs.ts';
import { evenLight } from './even-light.ts';
import { fitSurface } from './fit-surface.ts';
import type { GreyImage } from './grey-image.ts';
import { levelSample } from './level.ts';
import { findSilhouettes, type Silhouette } from './silhouette.ts';
import { partSurfaces, type ScannedSurface } from './surfaces.ts';

/** One face's cut as traced, mm: its outline as SVG path data (x in from the edge, y below the face), and how far points lie from it at most. */
export interface TracedSide {
  readonly path: string;
  readonly reach: number;
  readonly depth: number;
  readonly deviation: number;
  readonly arcs: readonly TracedArc[];
  /** The same outline as a chain, y up from the face. */
  readonly chain: Chain;
}

/** A kept sample read from its scan. Lengths mm, `turned` degrees, positive anticlockwise. */
export interface Traced {
  readonly dpi: readonly [across: number, down: number];
  readonly thickness: number;
  /** Thickness of the tongue at the edge. */
  readonly edge: number;
  readonly turned: number;
  /** The face whose cut reaches further in. */
  readonly front: TracedSide;
  readonly back: TracedSide | null;
  /** What was seen and what was read of it, in pixels of the picture: to be drawn over it. */
  readonly seen: {
    readonly front: readonly Point[];
    readonly back: readonly Point[];
    /** Along the lines and arcs of front and back. */
    readonly read: { readonly front: readonly Point[]; readonly back: readonly Point[] };
    readonly silhouette: readonly Point[];
  };
}

/** Fewer pixels to the inch than this do not show 0.1 mm; more no scanner gives. */
const LEAST_DPI = 100;
const MOST_DPI = 9600;
const INCH = 25.4;
/** Arcs are drawn by points so far apart, mm. */
const DRAWN_STEP = 0.2;

/**
 * Traces a scan of a sample's end grain: its thickness, and the outlines of the cuts on its two faces in lines and arcs (formulas T1 to T3).
 *
 * `dpi` pixels to the inch, across and down. The sample may lie either way up or round, up to 40° out of level, light on dark or dark on light. Good to 0.05 mm at 600 dpi.
 * Refuses in words what it cannot read; never throws for a picture of `width` × `height` shades.
 */
export function traceScan(image: GreyImage, dpi: readonly [number, number]): Traced | Refusal {
  if (dpi.some((each) => !(each >= LEAST_DPI && each <= MOST_DPI)))
    return {
      refused: `the picture has ${dpi.map((each) => Math.round(each)).join(' × ')} pixels to the inch`,
      instead: `Scan at 600, and give --dpi if the file says something else: ${LEAST_DPI} to ${MOST_DPI} are read`,
    };
  const found = findSilhouettes(evenLight(image));
  if ('refused' in found) return found;
  let refusal: Refusal | null = null;
  for (const silhouette of found) {
    const traced = traceSilhouette(silhouette, dpi, image);
    if (!('refused' in traced)) return traced;
    // What is said is about the largest thing, unless another is the sample.
    refusal ??= traced;
  }
  return refusal!;
}

function traceSilhouette(
  silhouette: Silhouette,
  dpi: readonly [number, number],
  image: Pick<GreyImage, 'width' | 'height'>,
): Traced | Refusal {
  const [across, down] = dpi.map((each) => INCH / each) as [number, number];
  const level = levelSample(silhouette.points.map(({ x, y }) => ({ x: x * across, y: y * down })));
  if ('refused' in level) return level;
  const surfaces = partSurfaces(level);
  if ('refused' in surfaces) return surfaces;
  const { upper, lower, mirrored, edge } = surfaces;
  // The sawn end may run off the picture, within what the sample lies askew; a worked edge or a face must not.
  const cutOff = silhouette.points
    .filter((p) => liesOnRim(p, image))
    .map(({ x, y }) => Math.abs(level.place(x * across, y * down).x - edge));
  const end = Math.max(...level.points.map(({ x }) => Math.abs(x - edge)));
  if (cutOff.some((inwards) => inwards < end - END * level.thickness))
    return {
      refused: 'the sample runs off the picture at its worked edge or at a face',
      instead: 'Scan it with paper showing round the edge and along both faces',
    };
  const upperIsFront = (upper?.reach ?? 0) >= (lower?.reach ?? 0);
  const [front, back] = upperIsFront ? [upper, lower] : [lower, upper];
  if (front === null)
    return { refused: 'no cut was found on either face', instead: 'Scan the end grain with the worked edge on it' };
  // From a face's own coordinates back to pixels of the picture.
  const seenOf = (points: readonly Point[], onTop: boolean): Point[] =>
    points.map(({ x, y }) => {
      const p = level.back({ x: edge + (mirrored ? -x : x), y: onTop ? level.thickness - y : y });
      return { x: p.x / across, y: p.y / down };
    });
  const sides = { front: traceSide(front, across), back: back && traceSide(back, across) };
  const strokes = sides.front.chain.length + (sides.back?.chain.length ?? 0);
  if (strokes > MOST_STROKES)
    return {
      refused: `its outline falls into ${strokes} lines and arcs, and up to ${MOST_STROKES} are read`,
      instead: 'Scan a sawn or planed end, clean and in focus',
    };
  if ([sides.front, sides.back].some((side) => side && findSelfCrossing(side.chain) !== null))
    return {
      refused: 'the outline that is seen crosses itself',
      instead: 'Wipe the glass, sand the end grain, and scan at 600 dpi against plain paper',
    };
  return {
    dpi,
    thickness: level.thickness,
    edge: level.thickness - sides.front.depth - (sides.back?.depth ?? 0),
    turned: level.turned,
    ...sides,
    seen: {
      front: seenOf(front.points, upperIsFront),
      back: seenOf(back?.points ?? [], !upperIsFront),
      read: {
        front: seenOf(along(sides.front.chain), upperIsFront),
        back: seenOf(along(sides.back?.chain ?? []), !upperIsFront),
      },
      silhouette: silhouette.points,
    },
  };
}

/** The sawn end of a sample takes up no more of its length than this many times its thickness, turned by 40°. */
const END = 0.9;

/** Whether a point of a silhouette lies where the picture ends, and not where the wood does. */
function liesOnRim({ x, y }: Point, { width, height }: Pick<GreyImage, 'width' | 'height'>): boolean {
  return x < 0 || y < 0 || x > width - 1 || y > height - 1;
}

/** Points along a chain, y below the face, close enough to draw it by. */
function along(chain: Chain): Point[] {
  return chain.flatMap((c) => {
    const steps = c.turn === 0 ? 1 : Math.max(2, Math.ceil(curveLength(c) / DRAWN_STEP));
    return Array.from({ length: steps + 1 }, (_, k) => pointAt(c, k / steps)).map(({ x, y }) => ({ x, y: -y }));
  });
}

function traceSide({ points }: ScannedSurface, pixel: number): TracedSide {
  const { chain, deviation } = fitSurface(points, pixel);
  const [first, last] = [chain[0]!, chain[chain.length - 1]!];
  return {
    path: pathData(chain, 0, false),
    reach: last.x1,
    depth: -first.y0,
    deviation,
    arcs: listArcs(chain, points, pixel),
    chain,
  };
}
