/** Points along SVG path data of M, L and A with circles, worked out by SVG's own rules (implementation notes F.6.5). */
export function pathPoints(data: string, step = 0.05): { x: number; y: number }[] {
  const tokens = data.match(/[MLA]|-?[\d.]+(?:e-?\d+)?/g) ?? [];
  const points: { x: number; y: number }[] = [];
  let x = 0;
  let y = 0;
  for (let i = 0; i < tokens.length; ) {
    const letter = tokens[i++];
    const take = () => Number(tokens[i++]);
    if (letter === 'M') {
      x = take();
      y = take();
      points.push({ x, y });
      continue;
    }
    if (letter === 'L') {
      const [nx, ny] = [take(), take()];
      const n = Math.max(1, Math.ceil(Math.hypot(nx - x, ny - y) / step));
      for (let k = 1; k <= n; k++) points.push({ x: x + ((nx - x) * k) / n, y: y + ((ny - y) * k) / n });
      [x, y] = [nx, ny];
      continue;
    }
    const r = take();
    take();
    take();
    const [large, sweep, nx, ny] = [take(), take(), take(), take()];
    const [hx, hy] = [(x - nx) / 2, (y - ny) / 2];
    const half = hx * hx + hy * hy;
    const root = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, (r * r - half) / half));
    const cx = root * hy + (x + nx) / 2;
    const cy = -root * hx + (y + ny) / 2;
    const from = Math.atan2(y - cy, x - cx);
    let turn = Math.atan2(ny - cy, nx - cx) - from;
    if (sweep === 1 && turn < 0) turn += 2 * Math.PI;
    if (sweep === 0 && turn > 0) turn -= 2 * Math.PI;
    const n = Math.max(1, Math.ceil((Math.abs(turn) * r) / step));
    for (let k = 1; k <= n; k++)
      points.push({ x: cx + r * Math.cos(from + (turn * k) / n), y: cy + r * Math.sin(from + (turn * k) / n) });
    [x, y] = [nx, ny];
  }
  return points;
}
