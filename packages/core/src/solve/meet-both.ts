import { SAME_LENGTH } from '@fielded/geometry';
import { type FigureOfSetting, type SearchResult, searchSetting } from './search.ts';

/** Two figures of two settings, x and y: each null where the joint has none. */
export interface TwoFigures {
  readonly first: (x: number, y: number) => number | null;
  readonly second: (x: number, y: number) => number | null;
}

/** A setting's present size, and the least and most that are looked at, mm. */
interface Room {
  readonly now: number;
  readonly least: number;
  readonly most: number;
}

/** Settings at which both figures are as wanted; else those at which the second is, and the first comes nearest. */
export interface MetBoth {
  readonly found: readonly [number, number] | null;
  readonly nearest: { readonly settings: readonly [number, number]; readonly value: number } | null;
}

/** Tolerance for calling a figure met, mm: rounding error of a section a metre wide, with margin. */
const HIT = 1e-11;
/** Rounds of the secant before it is given up: straight figures need two. */
const ROUNDS = 14;
/** How far to either side the second setting is looked for where the secant finds nothing, mm. */
const BESIDE = 2;
/** Step to measure a first slope by, mm. */
const STEP = 0.01;

/**
 * Finds x and y, near their present sizes, at which the first figure is `value` and the second `other` (formula V1).
 *
 * At each x the y that keeps the second figure is found by the secant from the last one, since neighbours differ by little.
 * The first figure is then one of x alone: by the secant too, and where that leads out of the room or to no end, by
 * looking outwards in growing steps as for one setting.
 */
export function meetBoth(figures: TwoFigures, value: number, other: number, a: Room, b: Room): MetBoth {
  const keep = createKeeper(figures.second, other, b);
  const curve: FigureOfSetting = (x) => {
    const y = keep(x);
    return y === null ? null : figures.first(x, y);
  };
  const led = secant(curve, value, a.now, a, null);
  const quick = led === 'out' ? null : led;
  const y = quick && keep(quick.at);
  if (quick !== null && y !== null) return { found: [quick.at, y], nearest: null };
  const { found, nearest }: SearchResult = searchSetting(curve, value, a.now, a.least, a.most);
  const best = found ?? nearest;
  const beside = best && keep(best.setting);
  if (best === null || beside === null) return { found: null, nearest: null };
  const settings = [best.setting, beside] as const;
  return found === null
    ? { found: null, nearest: { settings, value: best.value } }
    : { found: settings, nearest: null };
}

/** Gives for each x the y that keeps the second figure, from that of the nearest x before; null where none does. */
function createKeeper(second: TwoFigures['second'], other: number, b: Room): (x: number) => number | null {
  const kept = new Map<number, Place | null>();
  const nearestTo = (x: number): Place | null => {
    let best: { away: number; place: Place } | null = null;
    for (const [other, place] of kept) {
      const away = Math.abs(other - x);
      if (place !== null && (best === null || away < best.away)) best = { away, place };
    }
    return best?.place ?? null;
  };
  const look = (x: number): Place | null => {
    const curve: FigureOfSetting = (y) => second(x, y);
    const before = nearestTo(x);
    const from = before?.at ?? b.now;
    const quick = secant(curve, other, from, b, before?.slope ?? null);
    if (quick !== 'out' && quick !== null) return quick;
    // The first is looked for everywhere; later ones lie beside a known one or not at all.
    if (before !== null && quick === 'out') return null;
    const least = before === null ? b.least : Math.max(b.least, from - BESIDE);
    const most = before === null ? b.most : Math.min(b.most, from + BESIDE);
    const { found } = searchSetting(curve, other, from, least, most);
    return found && { at: found.setting, slope: null };
  };
  return (x) => {
    if (!kept.has(x)) kept.set(x, look(x));
    return kept.get(x)?.at ?? null;
  };
}

/** Where a figure is as wanted, and its slope there; null for one not measured. */
interface Place {
  readonly at: number;
  readonly slope: number | null;
}

/** Where a figure is as wanted, by the secant method; `out` where that leads out of the room, null where it leads to no end. */
function secant(
  curve: FigureOfSetting,
  value: number,
  from: number,
  { least, most }: Room,
  known: number | null,
): Place | 'out' | null {
  let at = from;
  let read = curve(at);
  let slope = known;
  for (let round = 0; read !== null && round < ROUNDS; round++) {
    const lacks = value - read;
    if (Math.abs(lacks) <= HIT) return { at, slope };
    if (slope === null) {
      const beside = curve(at + STEP <= most ? at + STEP : at - STEP);
      slope = beside === null ? null : (beside - read) / (at + STEP <= most ? STEP : -STEP);
    }
    // A figure that does not change gives no direction.
    if (slope === null || Math.abs(slope) < 1e-9) return null;
    const aimed = at + lacks / slope;
    if (aimed < least - SAME_LENGTH || aimed > most + SAME_LENGTH) return 'out';
    const next = Math.min(most, Math.max(least, aimed));
    const after = curve(next);
    if (after === null) return null;
    // The two points are too near for a slope: keep the last one.
    if (Math.abs(next - at) > 1e-7) slope = (after - read) / (next - at);
    at = next;
    read = after;
  }
  return null;
}
