/** How finely path data is written, mm. */
const WRITTEN_TO = 1e-9;

/**
 * Area inside SVG path data made of absolute M, L, A and Z, by Green's theorem; also whether every subpath closes, and `slack`:
 * how far the area may be off because ends and radii are written to 1e-9 mm. That is next to nothing but for arcs of nearly
 * half a turn, whose angle ends and radius hardly tell.
 */
export function pathArea(data: string): { area: number; closed: boolean; finite: boolean; slack: number } {
  const tokens = data.split(' ').filter((token) => token !== '');
  let area = 0;
  let slack = 0;
  let closed = true;
  let finite = true;
  let [x, y, startX, startY] = [0, 0, 0, 0];
  let open = false;
  for (let i = 0; i < tokens.length; ) {
    const command = tokens[i++]!;
    const take = () => {
      const value = Number(tokens[i++]);
      if (!Number.isFinite(value)) finite = false;
      return value;
    };
    if (command === 'M') {
      if (open) closed = false;
      [x, y] = [take(), take()];
      [startX, startY] = [x, y];
      open = true;
    } else if (command === 'L') {
      const [toX, toY] = [take(), take()];
      area += crossHalf(x, y, toX, toY);
      [x, y] = [toX, toY];
    } else if (command === 'A') {
      const r = take();
      take();
      take();
      const large = take();
      const sweep = take();
      const [toX, toY] = [take(), take()];
      const chord = Math.hypot(toX - x, toY - y);
      const bow = bowArea(r, chord, large === 1);
      area += crossHalf(x, y, toX, toY) + bow * (sweep === 1 ? 1 : -1);
      const [tighter, wider] = [
        bowArea(r + WRITTEN_TO, chord - 2 * WRITTEN_TO, large === 1),
        bowArea(r - WRITTEN_TO, chord + 2 * WRITTEN_TO, large === 1),
      ];
      slack += Math.max(Math.abs(tighter - bow), Math.abs(wider - bow));
      [x, y] = [toX, toY];
    } else if (command === 'Z') {
      area += crossHalf(x, y, startX, startY);
      [x, y] = [startX, startY];
      open = false;
    } else finite = false;
  }
  return { area: Math.abs(area), closed: closed && !open, finite, slack };
}

function crossHalf(x0: number, y0: number, x1: number, y1: number): number {
  return (x0 * y1 - x1 * y0) / 2;
}

function bowArea(r: number, chord: number, large: boolean): number {
  const half = Math.asin(Math.min(1, chord / (2 * r)));
  const angle = large ? 2 * (Math.PI - half) : 2 * half;
  return (r * r * (angle - Math.sin(angle))) / 2;
}
