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

/** Places of the picture, evenly over it: u and v of each, both −1 to 1, and its shade. */
interface Places {
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly shade: Uint8Array;
}

/** Which of the places, in order. */
type Indices = Uint32Array<ArrayBuffer>;

/**
 * A photo as even light would show it (formula T5): each shade times what the paper should be over what it is there. The paper's shade is a quadratic in x
 * and y by least squares, from the rim inwards, without what is not paper. A picture that is lit evenly, or whose paper no such
 * surface follows, comes back as it is.
 */
export function evenLight(image: GreyImage): GreyImage {
  const places = placesOf(image);
  const light = fitLight(places);
  if (light === null) return image;
  const { width, height, grey } = image;
  const { least, most } = rangeOf(light);
  if (most - least < LEAST_DIFFERENCE || least < 8) return image;
  // Against dark paper wood is the lighter of the two, and must not be cut off at white.
  const wanted = isPaperLighter(places, light) ? Math.min(LIGHTEST, most) : least;
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
function fitLight(places: Places): Light | null {
  const all = new Uint32Array(places.u.length).map((_, i) => i);
  const rim = all.filter((i) => Math.max(Math.abs(places.u[i]!), Math.abs(places.v[i]!)) > 1 - 2 * RIM);
  let light: Light | null = null;
  let paper = rim;
  const enough = paper.length / 2;
  for (let round = 0; round < ROUNDS; round++) {
    light = leastSquares(places, paper);
    if (light === null) return null;
    // First what lies far off at the rim goes, then the paper between rim and sample comes in.
    const next =
      round < 2 ? within(places, rim, light, boundAtRim(places, paper, light)) : within(places, all, light, OFF);
    if (next.length < enough) return null;
    // The same places give the same light again.
    if (round >= 2 && next.length === paper.length && next.every((place, i) => place === paper[i])) break;
    paper = next;
  }
  return light;
}

/** Which of some places lie no further off the light than a bound, shades. */
function within(places: Places, some: Indices, light: Light, bound: number): Indices {
  return some.filter((i) => Math.abs(offLight(places, i, light)) <= bound);
}

/** Twice the scatter about the light, shades. */
function boundAtRim(places: Places, paper: Indices, light: Light): number {
  let squares = 0;
  for (const i of paper) squares += offLight(places, i, light) ** 2;
  return Math.max(OFF, 2 * Math.sqrt(squares / paper.length));
}

function placesOf({ width, height, grey }: GreyImage): Places {
  const step = Math.max(1, Math.floor(Math.min(width, height) / ACROSS));
  const count = Math.ceil(width / step) * Math.ceil(height / step);
  const places = { u: new Float64Array(count), v: new Float64Array(count), shade: new Uint8Array(count) };
  let i = 0;
  for (let y = 0; y < height; y += step)
    for (let x = 0; x < width; x += step) {
      places.u[i] = (2 * x) / (width - 1) - 1;
      places.v[i] = (2 * y) / (height - 1) - 1;
      places.shade[i++] = grey[y * width + x]!;
    }
  return places;
}

function shadeOf([a, b, c, d, e, f]: Light, u: number, v: number): number {
  return a! + u * b! + v * c! + u * u * d! + u * v * e! + v * v * f!;
}

/** How much lighter than the light a place is, shades. */
function offLight({ u, v, shade }: Places, i: number, light: Light): number {
  return shade[i]! - shadeOf(light, u[i]!, v[i]!);
}

function rangeOf(light: Light): { least: number; most: number } {
  const shades: number[] = [];
  for (let u = -1; u <= 1; u += 0.1) for (let v = -1; v <= 1; v += 0.1) shades.push(shadeOf(light, u, v));
  return { least: Math.min(...shades), most: Math.max(...shades) };
}

function isPaperLighter(places: Places, light: Light): boolean {
  let darker = 0;
  for (let i = 0; i < places.shade.length; i++) {
    const off = offLight(places, i, light);
    if (Math.abs(off) > OFF) darker += off < 0 ? 1 : -1;
  }
  return darker >= 0;
}

/** Six unknowns by normal equations, eliminated with the largest pivot first; null where the places do not determine them. */
function leastSquares(places: Places, paper: Indices): Light | null {
  const n = 6;
  const rows = Array.from({ length: n }, () => new Float64Array(n + 1));
  const terms = new Float64Array(n);
  for (const at of paper) {
    const [u, v, shade] = [places.u[at]!, places.v[at]!, places.shade[at]!];
    terms[0] = 1;
    terms[1] = u;
    terms[2] = v;
    terms[3] = u * u;
    terms[4] = u * v;
    terms[5] = v * v;
    for (let i = 0; i < n; i++) {
      const row = rows[i]!;
      for (let k = i; k < n; k++) row[k]! += terms[i]! * terms[k]!;
      row[n]! += terms[i]! * shade;
    }
  }
  // The sums are the same across the diagonal.
  for (let i = 0; i < n; i++) for (let k = 0; k < i; k++) rows[i]![k] = rows[k]![i]!;
  for (let i = 0; i < n; i++) {
    let best = i;
    for (let k = i + 1; k < n; k++) if (Math.abs(rows[k]![i]!) > Math.abs(rows[best]![i]!)) best = k;
    [rows[i], rows[best]] = [rows[best]!, rows[i]!];
    if (Math.abs(rows[i]![i]!) < 1e-9 * paper.length) return null;
    for (let k = 0; k < n; k++) {
      if (k === i) continue;
      const share = rows[k]![i]! / rows[i]![i]!;
      for (let m = i; m <= n; m++) rows[k]![m]! -= share * rows[i]![m]!;
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
}
