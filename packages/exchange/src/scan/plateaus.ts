import type { GreyImage } from './grey-image.ts';

/** Every so many pixels, across and down, one is counted. */
const COARSE = 3;

/** The shades of paper and wood, and the level halfway between them. */
export interface Plateaus {
  readonly paper: number;
  readonly wood: number;
  readonly level: number;
}

/** The shade that parts the picture best in two, and the middle of either part; paper is what lies at the picture's rim. */
export function findPlateaus(image: GreyImage): Plateaus {
  const counts = countShades(image);
  const part = partingShade(counts);
  const dark = medianShade(counts, 0, part);
  const light = medianShade(counts, part + 1, 255);
  const [paper, wood] = isRimLight(image, part) ? [light, dark] : [dark, light];
  return { paper, wood, level: (dark + light) / 2 };
}

function countShades({ width, height, grey }: GreyImage): Float64Array {
  const counts = new Float64Array(256);
  for (let y = 0; y < height; y += COARSE) for (let x = 0; x < width; x += COARSE) counts[grey[y * width + x]!]!++;
  return counts;
}

/** The shade up to which the darker part goes: both parts then lie furthest apart for how they scatter (Otsu 1979). */
function partingShade(counts: Float64Array): number {
  const total = counts.reduce((sum, count) => sum + count, 0);
  const whole = counts.reduce((sum, count, shade) => sum + count * shade, 0);
  let below = 0;
  let sum = 0;
  let best = -1;
  let part = 127;
  for (let shade = 0; shade < 255; shade++) {
    below += counts[shade]!;
    sum += counts[shade]! * shade;
    const above = total - below;
    if (below === 0 || above === 0) continue;
    const between = below * above * (sum / below - (whole - sum) / above) ** 2;
    if (between > best) {
      best = between;
      part = shade;
    }
  }
  return part;
}

/** Whether most of the picture's rim is lighter than the parting shade. */
function isRimLight({ width, height, grey }: GreyImage, part: number): boolean {
  let lightRim = 0;
  const rim = (x: number, y: number) => {
    lightRim += grey[y * width + x]! > part ? 1 : -1;
  };
  for (let x = 0; x < width; x += COARSE) {
    rim(x, 0);
    rim(x, height - 1);
  }
  for (let y = 0; y < height; y += COARSE) {
    rim(0, y);
    rim(width - 1, y);
  }
  return lightRim >= 0;
}

function medianShade(counts: Float64Array, from: number, to: number): number {
  let total = 0;
  for (let shade = from; shade <= to; shade++) total += counts[shade]!;
  let seen = 0;
  for (let shade = from; shade <= to; shade++) {
    seen += counts[shade]!;
    if (seen * 2 >= total) return shade;
  }
  return to;
}
