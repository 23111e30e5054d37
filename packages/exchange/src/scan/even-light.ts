import type { GreyImage } from './grey-image.ts';

/** Places across and down that the light is measured at. */
const ACROSS = 90;
/** Part of the picture's width and height that counts as its rim, where paper lies. */
const RIM = 0.07;
/** Light that differs less than this over the picture, shades, is left as it is: scans are even. */
const LEAST_DIFFERENCE = 16;
/** Shades that paper may lie off the fitted light, and how often the fit is made anew without what lies further off. */
const OFF = 18;
const ROUNDS = 6;
/** Paper is made no lighter than this: its noise must not be cut off at white. */
const LIGHTEST = 235;

/** Shade at (u, v), both −1 to 1 across and down: 1, u, v, u², uv, v². */
type Light = readonly number[];

interface Place {
  readonly terms: readonly number[];
  readonly shade: number;
}

/**
 * A photo as even light would show it (formula T5): each shade times what the paper should be over what it is there. The paper's shade is a quadratic in x
 * and y by least squares, from the rim inwards, without what is not paper. A picture that is lit evenly, or whose paper no such
 * surface follows, comes back as it is.
 */
export function evenLight(image: GreyImage): GreyImage {
  const light = fitLight(image);
  if (light === null) return image;
  const { width, height, grey } = image;
  const { least, most } = rangeOf(light);
  if (most - least < LEAST_DIFFERENCE || least < 8) return image;
  // Against dark paper wood is the lighter of the two, and must not be cut off at white.
  const wanted = isPaperLighter(image, light) ? Math.min(LIGHTEST, most) : least;
  const even = new Uint8Array(grey.length);
  for (let y = 0; y < height; y++) {
    const v = (2 * y) / (height - 1) - 1;
    const [a, b, c] = [light[0]! + light[2]! * v + light[5]! * v * v, light[1]! + light[4]! * v, light[3]!];
    for (let x = 0; x < width; x++) {
      const u = (2 * x) / (width - 1) - 1;
      const i = y * width + x;
      even[i] = Math.min(255, (grey[i]! * wanted) / (a + b * u + c * u * u) + 0.5);
    }
  }
  return { width, height, grey: even };
}

/** The paper's shade over the picture; null where none is found that its rim follows. */
function fitLight(image: GreyImage): Light | null {
  const all = placesOf(image);
  const rim = all.filter(({ terms: [, u, v] }) => Math.max(Math.abs(u!), Math.abs(v!)) > 1 - 2 * RIM);
  let light: Light | null = null;
  let paper: readonly Place[] = rim;
  const enough = paper.length / 2;
  for (let round = 0; round < ROUNDS; round++) {
    light = leastSquares(paper);
    if (light === null) return null;
    const fitted = light;
    const off = (place: Place) => Math.abs(place.shade - shadeOf(fitted, place.terms));
    // First what lies far off at the rim goes, then the paper between rim and sample comes in.
    if (round >= 2) paper = all.filter((place) => off(place) <= OFF);
    else {
      const bound = Math.max(OFF, 2 * Math.sqrt(paper.reduce((sum, p) => sum + off(p) ** 2, 0) / paper.length));
      paper = rim.filter((place) => off(place) <= bound);
    }
    if (paper.length < enough) return null;
  }
  return light;
}

function placesOf({ width, height, grey }: GreyImage): Place[] {
  const places: Place[] = [];
  const step = Math.max(1, Math.floor(Math.min(width, height) / ACROSS));
  for (let y = 0; y < height; y += step)
    for (let x = 0; x < width; x += step) {
      const [u, v] = [(2 * x) / (width - 1) - 1, (2 * y) / (height - 1) - 1];
      places.push({ terms: [1, u, v, u * u, u * v, v * v], shade: grey[y * width + x]! });
    }
  return places;
}

function shadeOf(light: Light, terms: readonly number[]): number {
  let shade = 0;
  for (let k = 0; k < terms.length; k++) shade += terms[k]! * light[k]!;
  return shade;
}

function rangeOf(light: Light): { least: number; most: number } {
  const shades: number[] = [];
  for (let u = -1; u <= 1; u += 0.1)
    for (let v = -1; v <= 1; v += 0.1) shades.push(shadeOf(light, [1, u, v, u * u, u * v, v * v]));
  return { least: Math.min(...shades), most: Math.max(...shades) };
}

function isPaperLighter(image: GreyImage, light: Light): boolean {
  let darker = 0;
  for (const { terms, shade } of placesOf(image)) {
    const off = shade - shadeOf(light, terms);
    if (Math.abs(off) > OFF) darker += off < 0 ? 1 : -1;
  }
  return darker >= 0;
}

/** Six unknowns by normal equations, eliminated with the largest pivot first; null where the places do not determine them. */
function leastSquares(places: readonly Place[]): Light | null {
  const n = 6;
  const rows = Array.from({ length: n }, () => new Float64Array(n + 1));
  for (const { terms, shade } of places)
    for (let i = 0; i < n; i++) {
      const row = rows[i]!;
      const term = terms[i]!;
      for (let k = i; k < n; k++) row[k]! += term * terms[k]!;
      row[n]! += term * shade;
    }
  // What stands below the diagonal is what stands above it.
  for (let i = 0; i < n; i++) for (let k = 0; k < i; k++) rows[i]![k] = rows[k]![i]!;
  for (let i = 0; i < n; i++) {
    let best = i;
    for (let k = i + 1; k < n; k++) if (Math.abs(rows[k]![i]!) > Math.abs(rows[best]![i]!)) best = k;
    [rows[i], rows[best]] = [rows[best]!, rows[i]!];
    if (Math.abs(rows[i]![i]!) < 1e-9 * places.length) return null;
    for (let k = 0; k < n; k++) {
      if (k === i) continue;
      const share = rows[k]![i]! / rows[i]![i]!;
      for (let m = i; m <= n; m++) rows[k]![m]! -= share * rows[i]![m]!;
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
}
