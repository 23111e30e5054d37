import type { Timber } from './door-report.ts';

/** One board foot, m³: 144 in³ of 25.4 mm exactly. */
export const BOARD_FOOT = 0.002359737216;

/** The shop's allowances for timber, mm; `yield` is the share of what is ordered that ends in rough pieces. */
export interface TimberRules {
  readonly overLength: number;
  readonly overWidth: number;
  readonly stripWidth: number;
  readonly yield: number;
}

/** Finished pieces of one size, mm. */
export interface FinishedPiece {
  readonly what: string;
  readonly wood: string;
  readonly quantity: number;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/**
 * Timber to order, by wood and finished thickness, thickest first (formula D6): rough pieces are longer and wider by the
 * shop's allowances, thickness as planed; pieces wider than a strip are glued up from ⌈rough width/strip width⌉ equal ones;
 * order = rough/yield. Finished timber is rectangular: what the cuts take was bought too.
 */
export function listTimber(pieces: readonly FinishedPiece[], rules: TimberRules): Timber[] {
  const groups = new Map<string, FinishedPiece[]>();
  for (const piece of pieces) {
    const key = `${piece.thickness} ${piece.wood}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [piece]);
    else group.push(piece);
  }
  return [...groups.values()]
    .map((group) => sumTimber(group, rules))
    .sort((p, q) => q.thickness - p.thickness || p.wood.localeCompare(q.wood));
}

function sumTimber(group: readonly FinishedPiece[], rules: TimberRules): Timber {
  const { thickness, wood } = group[0]!;
  let [finished, rough] = [0, 0];
  const pieces = group.map(({ what, quantity, length, width }) => {
    const size = { length: length + rules.overLength, width: width + rules.overWidth };
    finished += cubicMetres(length, width, thickness) * quantity;
    rough += cubicMetres(size.length, size.width, thickness) * quantity;
    const strips = Math.max(1, Math.ceil(size.width / rules.stripWidth - 1e-9));
    return { what, quantity, ...size, strips, stripWidth: size.width / strips };
  });
  const order = rough / rules.yield;
  const boardFeet = { finished: finished / BOARD_FOOT, rough: rough / BOARD_FOOT, order: order / BOARD_FOOT };
  return { thickness, wood, pieces, finished, rough, order, boardFeet };
}

function cubicMetres(length: number, width: number, thickness: number): number {
  return (length * width * thickness) / 1e9;
}
