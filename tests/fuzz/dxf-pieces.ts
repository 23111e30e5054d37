/** A line or an arc of a DXF file, run from start to end: mm; an arc runs anticlockwise by `angle`. */
export interface DxfPiece {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly arc?: {
    readonly cx: number;
    readonly cy: number;
    readonly r: number;
    readonly from: number;
    readonly angle: number;
  };
}

/** LINE and ARC entities straight from the group codes (DXF reference), by no reader of ours. */
export function dxfPieces(text: string): DxfPiece[] {
  const lines = text.split(/\r?\n/);
  const at = lines.findIndex((line, i) => line.trim() === 'ENTITIES' && lines[i - 1]!.trim() === '2');
  const pieces: DxfPiece[] = [];
  let open: { type: string; codes: Map<number, number> } | null = null;
  const close = () => {
    const piece = open && pieceOf(open.type, (code) => open!.codes.get(code) ?? 0);
    if (piece) pieces.push(piece);
  };
  for (let i = at + 1; i + 1 < lines.length; i += 2) {
    const [code, value] = [Number(lines[i]), lines[i + 1]!.trim()];
    if (code === 0) {
      close();
      if (value === 'ENDSEC') break;
      open = { type: value, codes: new Map() };
    } else open?.codes.set(code, Number(value));
  }
  return pieces;
}

function pieceOf(type: string, at: (code: number) => number): DxfPiece | null {
  if (type === 'LINE') return { x0: at(10), y0: at(20), x1: at(11), y1: at(21) };
  if (type !== 'ARC') return null;
  const [cx, cy, r] = [at(10), at(20), at(40)];
  const [from, to] = [at(50), at(51)].map((degrees) => (degrees * Math.PI) / 180) as [number, number];
  const angle = (to - from + 4 * Math.PI) % (2 * Math.PI);
  const point = (turn: number) => [cx + r * Math.cos(turn), cy + r * Math.sin(turn)] as const;
  const [[x0, y0], [x1, y1]] = [point(from), point(to)];
  return { x0, y0, x1, y1, arc: { cx, cy, r, from, angle } };
}

/** How far neighbours' ends lie apart at most in a ring of pieces, each run either way round, mm. */
export function widestGap(pieces: readonly DxfPiece[]): number {
  const away = (x0: number, y0: number, x1: number, y1: number) => Math.hypot(x0 - x1, y0 - y1);
  return Math.max(
    ...pieces.map((p, i) => {
      const q = pieces[(i + 1) % pieces.length]!;
      return Math.min(
        away(p.x0, p.y0, q.x0, q.y0),
        away(p.x0, p.y0, q.x1, q.y1),
        away(p.x1, p.y1, q.x0, q.y0),
        away(p.x1, p.y1, q.x1, q.y1),
      );
    }),
  );
}

/** Points along pieces, `each` to a piece. */
export function pointsAlong(pieces: readonly DxfPiece[], each: number): { x: number; y: number }[] {
  return pieces.flatMap(({ x0, y0, x1, y1, arc }) =>
    Array.from({ length: each + 1 }, (_, k) => {
      const u = k / each;
      if (arc === undefined) return { x: x0 + (x1 - x0) * u, y: y0 + (y1 - y0) * u };
      const turn = arc.from + arc.angle * u;
      return { x: arc.cx + arc.r * Math.cos(turn), y: arc.cy + arc.r * Math.sin(turn) };
    }),
  );
}

/** Distance of a point from the nearest of the pieces, mm. */
export function awayFrom(pieces: readonly DxfPiece[], x: number, y: number): number {
  return Math.min(...pieces.map((piece) => awayFromOne(piece, x, y)));
}

function awayFromOne({ x0, y0, x1, y1, arc }: DxfPiece, x: number, y: number): number {
  const ends = Math.min(Math.hypot(x - x0, y - y0), Math.hypot(x - x1, y - y1));
  if (arc !== undefined) {
    const turned = (Math.atan2(y - arc.cy, x - arc.cx) - arc.from + 6 * Math.PI) % (2 * Math.PI);
    return turned <= arc.angle ? Math.abs(Math.hypot(x - arc.cx, y - arc.cy) - arc.r) : ends;
  }
  const [dx, dy] = [x1 - x0, y1 - y0];
  const u = ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy);
  return u > 0 && u < 1 ? Math.abs((x - x0) * dy - (y - y0) * dx) / Math.hypot(dx, dy) : ends;
}
