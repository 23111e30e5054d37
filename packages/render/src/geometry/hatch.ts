import { arcAngles, type Curve, type Loop, line, quarterAngles } from '@fielded/geometry';

/** A stretch of a boundary along which the distance across the hatch only grows or only falls. */
interface Run {
  readonly q0: number;
  readonly q1: number;
  /** Where along the hatch line at distance q the run is met. */
  readonly along: (q: number) => number;
}

const ROOT_2 = Math.SQRT2;
const LEAST_STROKE = 0.2;

/**
 * Hatches the inside of closed loops with parallel lines at 45°, exactly clipped against lines and arcs.
 *
 * Inside is by the even-odd rule. `rising` lines climb to the right, the others fall. Lines are `spacing` apart, square to
 * themselves, and one passes through the origin, so equal parts are hatched equally wherever they stand. Where a line just
 * touches a boundary it does not cross it: each run counts its lower end and not its upper one. Strokes under 0.2 mm are
 * left out. Work grows with the number of crossings.
 *
 * @throws RangeError unless spacing is above 0.
 */
export function hatchLoops(loops: readonly Loop[], spacing: number, rising: boolean): Curve[] {
  if (!(spacing > 0)) throw new RangeError(`hatch spacing ${spacing}`);
  const sign = rising ? 1 : -1;
  const rows = new Map<number, number[]>();
  for (const loop of loops) {
    if (!loop.closed) continue;
    for (const curve of loop.curves) {
      for (const run of runsAcross(curve, sign)) {
        const low = Math.min(run.q0, run.q1);
        const high = Math.max(run.q0, run.q1);
        for (let k = Math.ceil(low / spacing); k * spacing < high; k += 1) {
          const row = rows.get(k);
          const met = run.along(k * spacing);
          if (row) row.push(met);
          else rows.set(k, [met]);
        }
      }
    }
  }
  const strokes: Curve[] = [];
  for (const k of [...rows.keys()].sort((a, b) => a - b)) {
    const row = rows.get(k)!.sort((a, b) => a - b);
    for (let i = 0; i + 1 < row.length; i += 2) {
      if (row[i + 1]! - row[i]! < LEAST_STROKE) continue;
      const q = k * spacing;
      const [from, to] = [row[i]!, row[i + 1]!];
      strokes.push(
        line((q + from) / ROOT_2, (sign * (q - from)) / ROOT_2, (q + to) / ROOT_2, (sign * (q - to)) / ROOT_2),
      );
    }
  }
  return strokes;
}

/** Splits a curve where it runs along the hatch. With q = (x ± y)/√2 across the hatch and p = (x ∓ y)/√2 along it. */
function runsAcross(curve: Curve, sign: number): Run[] {
  const across = (x: number, y: number) => (x + sign * y) / ROOT_2;
  const along = (x: number, y: number) => (x - sign * y) / ROOT_2;
  const q0 = across(curve.x0, curve.y0);
  const q1 = across(curve.x1, curve.y1);
  if (curve.turn === 0) {
    const p0 = along(curve.x0, curve.y0);
    const slope = (along(curve.x1, curve.y1) - p0) / (q1 - q0);
    return [{ q0, q1, along: (q) => p0 + (q - q0) * slope }];
  }
  const { from, sweep } = arcAngles(curve);
  const centreQ = across(curve.cx, curve.cy);
  const centreP = along(curve.cx, curve.cy);
  const ends = [from, ...quarterAngles(from, sweep, Math.PI / 4), from + sweep];
  const runs: Run[] = [];
  let low = q0;
  for (let i = 1; i < ends.length; i += 1) {
    const angle = ends[i]!;
    const last = i === ends.length - 1;
    const high = last ? q1 : across(curve.cx + curve.r * Math.cos(angle), curve.cy + curve.r * Math.sin(angle));
    const middle = (ends[i - 1]! + angle) / 2;
    const side = along(Math.cos(middle), Math.sin(middle)) < 0 ? -1 : 1;
    runs.push({
      q0: low,
      q1: high,
      along: (q) => centreP + side * Math.sqrt(Math.max(0, curve.r * curve.r - (q - centreQ) ** 2)),
    });
    low = high;
  }
  return runs;
}
