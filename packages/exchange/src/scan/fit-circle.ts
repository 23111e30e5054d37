import type { Point } from '@fielded/geometry';

export interface Circle {
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
}

/** The circle nearest to points: Kåsa's for a start, then Gauss and Newton on the distances. Null where the points lie in a line. */
export function fitCircle(points: readonly Point[]): Circle | null {
  const n = points.length;
  const mx = points.reduce((sum, p) => sum + p.x, 0) / n;
  const my = points.reduce((sum, p) => sum + p.y, 0) / n;
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const p of points) {
    const [x, y] = [p.x - mx, p.y - my];
    const z = x * x + y * y;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  const det = 2 * (xx * yy - xy * xy);
  if (Math.abs(det) < 1e-9) return null;
  let cx = (xz * yy - yz * xy) / det;
  let cy = (yz * xx - xz * xy) / det;
  let r = Math.sqrt(cx * cx + cy * cy + (xx + yy) / n);
  for (let turn = 0; turn < 20; turn++) {
    // Normal equations of the distances' straight part in cx, cy and r.
    const a = [
      [0, 0, 0],
      [0, 0, 0],
      [0, 0, 0],
    ];
    const b = [0, 0, 0];
    for (const p of points) {
      const [dx, dy] = [p.x - mx - cx, p.y - my - cy];
      const d = Math.hypot(dx, dy);
      const row = [-dx / d, -dy / d, -1];
      for (let i = 0; i < 3; i++) {
        for (let k = 0; k < 3; k++) a[i]![k]! += row[i]! * row[k]!;
        b[i]! -= row[i]! * (d - r);
      }
    }
    const move = solveThree(a, b);
    if (move === null) break;
    cx += move[0]!;
    cy += move[1]!;
    r += move[2]!;
    if (Math.hypot(...move) < 1e-10) break;
  }
  return { cx: cx + mx, cy: cy + my, r: Math.abs(r) };
}

/** Cramer's rule; null where there is no one answer. */
function solveThree(a: readonly (readonly number[])[], b: readonly number[]): number[] | null {
  const det = (m: readonly (readonly number[])[]) =>
    m[0]![0]! * (m[1]![1]! * m[2]![2]! - m[1]![2]! * m[2]![1]!) -
    m[0]![1]! * (m[1]![0]! * m[2]![2]! - m[1]![2]! * m[2]![0]!) +
    m[0]![2]! * (m[1]![0]! * m[2]![1]! - m[1]![1]! * m[2]![0]!);
  const whole = det(a);
  if (Math.abs(whole) < 1e-12) return null;
  return [0, 1, 2].map((k) => det(a.map((row, i) => row.map((each, j) => (j === k ? b[i]! : each)))) / whole);
}
