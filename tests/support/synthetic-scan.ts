import { Random } from './random.ts';

/** A sample to draw: whether wood is at (x, y), mm, x in from the edge, y up from the back face. */
export interface DrawnSample {
  readonly inside: (x: number, y: number) => boolean;
  readonly length: number;
  readonly thickness: number;
}

export interface ScanSettings {
  readonly dpi?: number;
  /** Degrees, positive anticlockwise as seen. */
  readonly turn?: number;
  readonly mirrored?: boolean;
  readonly upsideDown?: boolean;
  /** Standard deviation of the blur, pixels; of the noise, part of the whole range. */
  readonly blur?: number;
  readonly noise?: number;
  readonly dust?: number;
  readonly fibre?: boolean;
  readonly paper?: number;
  readonly wood?: number;
  /** Paper left round the sample, mm. */
  readonly margin?: number;
}

/** Samples of a pixel across and down that its cover is counted by. */
const PARTS = 4;

/**
 * A scan of a sample, made: each pixel's cover counted over 16 places, blurred, with noise, dust on the glass and a torn fibre.
 */
export function drawScan(sample: DrawnSample, settings: ScanSettings = {}) {
  const { dpi = 600, turn = 0, mirrored = false, upsideDown = false, blur = 0.8, noise = 0.02, margin = 6 } = settings;
  const { dust = 0, fibre = false, paper = 235, wood = 95 } = settings;
  const { length, thickness } = sample;
  const mm = 25.4 / dpi;
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const width = Math.ceil((length * cos + thickness * Math.abs(sin) + 2 * margin) / mm);
  const height = Math.ceil((thickness * cos + length * Math.abs(sin) + 2 * margin) / mm);
  const random = new Random(7);
  const specks = Array.from({ length: dust }, () => {
    const x = random.between(0, width * mm);
    return { x, y: random.between(0, 1) < 0.5 ? margin / 3 : height * mm - margin / 3, r: random.between(0.1, 0.5) };
  });
  const isDark = (sx: number, sy: number, near: typeof specks): boolean => {
    // From the middle of the picture, y up, turned back.
    const mx = sx - (width * mm) / 2;
    const my = (height * mm) / 2 - sy;
    let x = mx * cos + my * sin + length / 2;
    let y = -mx * sin + my * cos + thickness / 2;
    if (mirrored) x = length - x;
    if (upsideDown) y = thickness - y;
    const wooden = sample.inside(x, y) || (fibre && x > 30.2 && x < 30.4 && y > thickness / 2 && y < thickness + 1.2);
    return wooden || (near.length > 0 && near.some((s) => (sx - s.x) ** 2 + (sy - s.y) ** 2 < s.r ** 2));
  };
  const specksNear = (sy: number) => specks.filter(({ y, r }) => Math.abs(y - sy) < r + 2 * mm);
  const cornersOf = (py: number) => {
    const near = specksNear(py * mm);
    const dark = new Uint8Array(width + 1);
    for (let px = 0; px <= width; px++) if (isDark(px * mm, py * mm, near)) dark[px] = 1;
    return dark;
  };
  const cover = new Float32Array(width * height);
  let above = cornersOf(0);
  for (let py = 0; py < height; py++) {
    const near = specksNear(py * mm);
    const below = cornersOf(py + 1);
    for (let px = 0; px < width; px++) {
      const corners = above[px]! + above[px + 1]! + below[px]! + below[px + 1]!;
      // A pixel whose corners are alike is all of one kind: nothing drawn is thinner than two pixels.
      if (corners === 0 || corners === 4) {
        cover[py * width + px] = corners / 4;
        continue;
      }
      let count = 0;
      for (let k = 0; k < PARTS * PARTS; k++) {
        const sx = (px + ((k % PARTS) + 0.5) / PARTS) * mm;
        const sy = (py + (Math.floor(k / PARTS) + 0.5) / PARTS) * mm;
        if (isDark(sx, sy, near)) count++;
      }
      cover[py * width + px] = count / (PARTS * PARTS);
    }
    above = below;
  }
  const soft = blurred(blurred(cover, width, height, blur, 1), width, height, blur, width);
  const grey = new Uint8Array(width * height);
  // Drawn from many made once, in no order.
  const normals = Float32Array.from({ length: 1 << 16 }, () => normal(random));
  let drawn = 1;
  for (let i = 0; i < grey.length; i++) {
    drawn = (Math.imul(drawn, 1664525) + 1013904223) >>> 0;
    const shade = paper + (wood - paper) * soft[i]! + noise * 255 * normals[drawn >>> 16]!;
    // With a half added, what a byte keeps of it is the nearest.
    grey[i] = Math.min(255, Math.max(0, shade + 0.5));
  }
  return { width, height, grey };
}

function normal(random: { between: (from: number, to: number) => number }): number {
  return Math.sqrt(-2 * Math.log(random.between(1e-9, 1))) * Math.cos(2 * Math.PI * random.between(0, 1));
}

/** A Gaussian along rows (`step` 1) or columns (`step` the width); beyond the picture stands its last pixel. */
function blurred(from: Float32Array, width: number, height: number, sigma: number, step: number): Float32Array {
  if (sigma === 0) return from;
  const reach = Math.ceil(4 * sigma);
  const weights = Float64Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-((k - reach) ** 2) / (2 * sigma * sigma)),
  );
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const to = new Float32Array(from.length);
  const [size, lines, next] = step === 1 ? [width, height, width] : [height, width, 1];
  for (let line = 0; line < lines; line++) {
    const start = line * next;
    // So many pixels up to the furthest that is looked at are alike.
    let alike = 0;
    for (let place = -reach; place < size; place++) {
      const furthest = Math.min(size - 1, place + reach);
      const shade = from[start + furthest * step]!;
      alike = furthest > 0 && from[start + (furthest - 1) * step] === shade ? alike + 1 : 1;
      if (place < 0) continue;
      // A Gaussian of one shade is that shade.
      if (alike > 2 * reach) {
        to[start + place * step] = shade;
        continue;
      }
      const inside = place >= reach && place < size - reach;
      let sum = 0;
      for (let k = -reach; k <= reach; k++) {
        const at = inside ? place + k : Math.min(size - 1, Math.max(0, place + k));
        sum += weights[k + reach]! * from[start + at * step]!;
      }
      to[start + place * step] = sum / total;
    }
  }
  return to;
}

/** Depth below its face at x, mm, of a cut; 0 beyond its reach. */
export type Depth = (x: number) => number;

/** A sample of a panel with a cut on each face. */
export function sampleOf(front: Depth, back: Depth, thickness: number, length: number): DrawnSample {
  return {
    thickness,
    length,
    inside: (x, y) => x >= 0 && x <= length && y >= back(x) && y <= thickness - front(x),
  };
}
