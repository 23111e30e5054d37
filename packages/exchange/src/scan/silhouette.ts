import type { Refusal } from '@fielded/core';
import type { Point } from '@fielded/geometry';
import { type GreyImage, shadeAt } from './grey-image.ts';
import { findPlateaus } from './plateaus.ts';
import { findThings, type Thing } from './things.ts';

/** The edge of a thing in a picture: points in order round it, pixels from the middle of the top left one, y down. */
export interface Silhouette {
  readonly points: readonly Point[];
  /** Shades of what lies beside it and of itself. */
  readonly paper: number;
  readonly wood: number;
}

/** Wood and paper less than this apart, shades of 255, are not told apart. */
const LEAST_CONTRAST = 30;
/** Rows that are begun from before there is said to be no sample. */
const MOST_STARTS = 60;
/** How far to either side of an edge its plateaus are looked at, pixels: beyond the blur, short of the next thing. */
const PLATEAU = [4, 5, 6];

/**
 * Finds what may be the sample, the largest thing first, and follows its edge (formula T1): where the shade crosses the middle between paper and wood, between pixels by straight
 * interpolation, then moved along the edge's normal to the middle between the two plateaus on either side of it there. Dust and
 * anything much smaller than the largest thing lies outside; holes do not count. A rule beside the sample may be larger than it.
 */
export function findSilhouettes(image: GreyImage): readonly Silhouette[] | Refusal {
  const { paper, level, wood } = findPlateaus(image);
  if (Math.abs(paper - wood) < LEAST_CONTRAST)
    return {
      refused: 'the sample does not stand out from what is behind it',
      instead: 'Scan it against white or black, the end grain down',
    };
  const isWood = (shade: number) => (paper > wood ? shade < level : shade > level);
  const found = findThings(image, isWood).flatMap((thing) => {
    const rough = followOutside(image, thing, isWood, level);
    return rough === null ? [] : [{ points: refine(image, rough, (paper + wood) / 2), paper, wood }];
  });
  if (found.length === 0)
    return {
      refused: 'no sample was found in the picture',
      instead: 'Lay the end grain on the glass and scan it at 600 dpi',
    };
  return found;
}

/** Round the outside of the sample: a way that encloses much less than it covers went round a pore, and another row is begun from. */
function followOutside(
  image: GreyImage,
  { starts, area }: Thing,
  isWood: (shade: number) => boolean,
  level: number,
): Point[] | null {
  for (const start of starts.slice(0, MOST_STARTS)) {
    let { x } = start;
    while (x > 0 && isWood(image.grey[start.y * image.width + x - 1]!)) x--;
    const points = follow(image, { x, y: start.y }, isWood, level);
    if (enclosed(points) > 0.5 * area) return points;
  }
  return null;
}

/** Clockwise as seen counts as positive, with y down. */
function enclosed(points: readonly Point[]): number {
  let twice = 0;
  let before = points[points.length - 1]!;
  for (const p of points) {
    twice += before.x * p.y - p.x * before.y;
    before = p;
  }
  return twice / 2;
}

/**
 * Round the sample from a pixel of its left edge, pixel side by pixel side with the wood on the right hand, out of the picture being paper. Each side
 * gives the point between its two pixels where the shade crosses the level.
 */
function follow(
  { width, height, grey }: GreyImage,
  start: { readonly x: number; readonly y: number },
  isWood: (shade: number) => boolean,
  level: number,
): Point[] {
  const woodAt = (x: number, y: number) => x >= 0 && y >= 0 && x < width && y < height && isWood(grey[y * width + x]!);
  const points: Point[] = [];
  // Corner of pixels (x, y) is the top left one of pixel (x, y); first up along the left side of the start.
  let x = start.x;
  let y = start.y + 1;
  let dx = 0;
  let dy = -1;
  const most = 8 * (width + height) + 200_000;
  for (let step = 0; step < most; step++) {
    // The pixels on the right and on the left of the side just ahead.
    const rx = x + (dx - dy - 1) / 2;
    const ry = y + (dy + dx - 1) / 2;
    const lx = x + (dx + dy - 1) / 2;
    const ly = y + (dy - dx - 1) / 2;
    const inside = lx >= 0 && ly >= 0 && lx < width && ly < height;
    const a = grey[ry * width + rx]!;
    const b = inside ? grey[ly * width + lx]! : a;
    const t = a === b ? 0.5 : Math.min(1, Math.max(0, (level - a) / (b - a)));
    points.push({ x: rx + t * (lx - rx), y: ry + t * (ly - ry) });
    x += dx;
    y += dy;
    // Left if the pixel ahead on the left is wood, straight on if the one on the right is, else right.
    const aheadLeft = woodAt(x + (dx + dy - 1) / 2, y + (dy - dx - 1) / 2);
    const aheadRight = woodAt(x + (dx - dy - 1) / 2, y + (dy + dx - 1) / 2);
    if (aheadLeft && aheadRight) [dx, dy] = [dy, -dx];
    else if (!aheadRight) [dx, dy] = [-dy, dx];
    if (x === start.x && y === start.y + 1 && dx === 0 && dy === -1) break;
  }
  return points;
}

/** Each point moved along the edge's normal to the middle between the plateaus beside it; where there is none it stays. */
function refine(image: GreyImage, points: readonly Point[], level: number): Point[] {
  const count = points.length;
  return points.map((p, i) => {
    const before = points[(i - 4 + count) % count]!;
    const after = points[(i + 4) % count]!;
    const length = Math.hypot(after.x - before.x, after.y - before.y);
    if (length === 0) return p;
    const nx = -(after.y - before.y) / length;
    const ny = (after.x - before.x) / length;
    const shade = (d: number) => shadeAt(image, p.x + d * nx, p.y + d * ny);
    const inside = PLATEAU.reduce((sum, d) => sum + shade(d), 0) / PLATEAU.length;
    const outside = PLATEAU.reduce((sum, d) => sum + shade(-d), 0) / PLATEAU.length;
    const half = (inside + outside) / 2;
    if ((inside - level) * (outside - level) >= 0) return p;
    for (let d = -1.5; d < 1.5; d += 0.5) {
      const [s0, s1] = [shade(d), shade(d + 0.5)];
      if ((s0 - half) * (s1 - half) > 0 || s0 === s1) continue;
      const move = d + (0.5 * (half - s0)) / (s1 - s0);
      return { x: p.x + move * nx, y: p.y + move * ny };
    }
    return p;
  });
}
