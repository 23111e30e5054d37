import { type BoxFunction, greatest, type PartsLeft } from './branch.ts';
import { createReader, type Joint } from './joint.ts';
import { MOVE } from './moves.ts';
import { seekWorst } from './seek-worst.ts';
import type { PanelSide } from './side.ts';
import { extremeDepth } from './side-extremes.ts';
import type { Source, SpreadFigure } from './sources.ts';

/** Worst cases are found to this, mm. */
const CLOSE = 1e-8;
/** Parts that are looked at for one worst case, all searches in it together. */
const MOST_PARTS = 1500;
/** Pieces that may be looked at, and how many parts are looked at however many pieces there are. */
const MOST_LOOKS = 40_000;
const LEAST_PARTS = 40;

/** How a figure follows from both depths, the stock, the coat, the groove's width and setback: its factors (formulas 9 and S1). */
interface Factors {
  readonly front: number;
  readonly back: number;
  readonly stock: number;
  readonly coat: number;
  readonly width: number;
  readonly setback: number;
}

const FACTORS: Readonly<Record<Exclude<SpreadFigure, 'bottomGap'>, Factors>> = {
  clearance: { front: 1, back: 1, stock: -1, coat: -2, width: 1, setback: 0 },
  frontMost: { front: 1, back: 0, stock: 0, coat: -1, width: 0, setback: -1 },
  frontLeast: { front: 0, back: -1, stock: 1, coat: 1, width: -1, setback: -1 },
};

/**
 * How a worst case is known: by `proof`, a joint that is that bad and none worse by more than 1e-7 mm; by a `bound` that no joint exceeds and
 * none may reach, where the search was cut short; or by `search` alone: the worst of many joints, and there may be a worse one.
 */
export type FoundBy = 'proof' | 'bound' | 'search';

/** The least (`way` -1) or most (+1) a figure can be, mm, with every source anywhere within its ± (see `findWorst`). */
export function worstCase(
  joint: Joint,
  sources: readonly Source[],
  figure: SpreadFigure,
  way: -1 | 1,
  parts: number = MOST_PARTS,
): number {
  return findWorst(joint, sources, figure, way, parts).worst;
}

/**
 * The least (`way` -1) or most (+1) a figure can be, mm, with every source anywhere within its ± (formula S7), and how that is known.
 *
 * Both sides' cuts move each for itself, so each side's extreme depth is sought alone; stock thickness and moisture, which act on
 * everything at once, are searched over together. Joints whose surfaces cannot be slid, or whose cuts are tied, are tried at the ends and middles of every source.
 */
export function findWorst(
  joint: Joint,
  sources: readonly Source[],
  figure: SpreadFigure,
  way: -1 | 1,
  parts: number = MOST_PARTS,
): { readonly worst: number; readonly by: FoundBy } {
  if (joint.sides === undefined)
    return { worst: seekWorst(createReader(joint, figure), joint, sources, figure, way), by: 'search' };
  const off = new Float64Array(joint.moveCount);
  for (const { place, plusMinus } of sources) off[place] = plusMinus;
  if (figure === 'bottomGap') return { worst: worstGap(joint, off, way), by: 'proof' };
  // The more pieces there are to look at, the fewer times.
  const effort = { parts: Math.min(parts, Math.max(LEAST_PARTS, MOST_LOOKS / joint.pieces)) };
  const search = createSearch(joint, joint.sides, off, FACTORS[figure], way, effort);
  const [thickness, moisture] = [off[MOVE.thickness]!, off[MOVE.moisture]!];
  const low = [-thickness, -moisture];
  const high = [thickness, moisture];
  const worst = way * greatest({ low, high, ...search }, CLOSE, effort);
  return { worst, by: effort.parts > 0 ? 'proof' : 'bound' };
}

function worstGap({ sizes, insertion, swelling }: Joint, off: ArrayLike<number>, way: -1 | 1): number {
  const moved = swelling.edge * off[MOVE.panelSize]! + Math.abs(swelling.insertion) * off[MOVE.moisture]!;
  return sizes.depth - insertion + way * (off[MOVE.grooveDepth]! + moved);
}

/** The figure, signed so that more is worse, at a thickness and a moisture, and a bound of it between two of each. */
function createSearch(
  joint: Joint,
  sides: { readonly front: PanelSide; readonly back: PanelSide },
  off: ArrayLike<number>,
  factors: Factors,
  way: -1 | 1,
  effort: PartsLeft,
): Pick<BoxFunction, 'at' | 'look'> {
  const { sizes, swelling } = joint;
  const depthOf = {
    front: createDepth(sides.front, off, way * factors.front, effort),
    back: createDepth(sides.back, off, way * factors.back, effort),
  };
  // What moves the figure one way only stands at its end.
  const end = (factor: number, plusMinus: number) => Math.sign(way * factor) * plusMinus;
  const coat = Math.max(0, sizes.film + end(factors.coat, off[MOVE.film]!));
  const width = sizes.width + end(factors.width, off[MOVE.grooveWidth]!);
  const setback = sizes.setback + end(factors.setback, off[MOVE.setback]!);
  // Further in, no surface is deeper: whether that is worse follows from what depth does.
  const deeperIsWorse = way * (factors.front + factors.back) > 0;
  const into = createInsertion(joint, off, deeperIsWorse ? -1 : 1);

  const figure = (thicker: number, moisture: number, front: number, back: number) => {
    const wood = factors.front * front + factors.back * back + factors.stock * (sizes.thickness + thicker);
    const groove = factors.width * width * (1 + swelling.groove * moisture);
    return (
      way * ((1 + swelling.thickness * moisture) * wood + factors.coat * coat + groove + factors.setback * setback)
    );
  };
  const at = ([thicker, moisture]: readonly number[]) => {
    const far = into(moisture!, moisture!);
    return figure(thicker!, moisture!, depthOf.front(far, thicker!), depthOf.back(far, thicker!));
  };
  return {
    at,
    look: ([t0, m0], [t1, m1]) => {
      const far = into(m0!, m1!);
      const front = { low: depthOf.front(far, t0!), high: depthOf.front(far, t1!) };
      const back = { low: depthOf.back(far, t0!), high: depthOf.back(far, t1!) };
      let most = Number.NEGATIVE_INFINITY;
      for (const thicker of [t0!, t1!, ...kinks(front, t0!, t1!), ...kinks(back, t0!, t1!)]) {
        const f = boundDepth(front, t0!, t1!, thicker, way * factors.front);
        const b = boundDepth(back, t0!, t1!, thicker, way * factors.back);
        for (const moisture of [m0!, m1!]) most = Math.max(most, figure(thicker, moisture, f, b));
      }
      return { value: at([(t0! + t1!) / 2, (m0! + m1!) / 2]), bound: most };
    },
  };
}

interface Ends {
  readonly low: number;
  readonly high: number;
}

/**
 * A depth between two thicknesses, from those at both: it grows with the stock, and by no more than the stock does. `way` says whether the
 * most (above 0) or the least is wanted.
 */
function boundDepth({ low, high }: Ends, t0: number, t1: number, thicker: number, way: number): number {
  return way > 0 ? Math.min(high, low + thicker - t0) : Math.max(low, high - (t1 - thicker));
}

/** Thicknesses at which those bounds turn. */
function kinks({ low, high }: Ends, t0: number, t1: number): number[] {
  const grown = Math.min(high - low, t1 - t0);
  return [t0 + grown, t1 - grown];
}

/**
 * A side's extreme depth for an insertion and a thickness, mm, the face itself at the least: the most where `way` is above 0, the
 * least below. Worked out once for each insertion where the stock moves all of its cuts alike.
 */
function createDepth(
  side: PanelSide,
  off: ArrayLike<number>,
  way: number,
  effort: PartsLeft,
): (into: number, thicker: number) => number {
  if (way === 0) return () => 0;
  const towards = way > 0 ? 1 : -1;
  const overs = side.cuts.filter(({ over }) => over).length;
  const mixed = overs > 0 && overs < side.cuts.length;
  const known = new Map<string, number>();
  return (into, thicker) => {
    const alone = mixed ? thicker : 0;
    const key = `${into} ${alone}`;
    let depth = known.get(key);
    if (depth === undefined) {
      depth = extremeDepth(side, off, into, alone, towards, effort);
      known.set(key, depth);
    }
    return Math.max(0, depth + (!mixed && overs > 0 ? thicker : 0));
  };
}

/** The least (`way` -1) or most insertion, mm on the wood as it was made, at any moisture between two. */
function createInsertion(
  { sizes, insertion, swelling }: Joint,
  off: ArrayLike<number>,
  way: -1 | 1,
): (m0: number, m1: number) => number {
  const bottom = sizes.depth + way * off[MOVE.grooveDepth]!;
  const meant = insertion + way * swelling.edge * off[MOVE.panelSize]!;
  const at = (moisture: number) => {
    const reached = Math.min(meant + swelling.insertion * moisture, bottom);
    return Math.max(0, reached / (1 + swelling.width * moisture));
  };
  // From the moisture at which it meets the bottom on, it only shrinks against the wood that has swelled.
  const meets = swelling.insertion === 0 ? Number.NaN : (bottom - meant) / swelling.insertion;
  return (m0, m1) => {
    if (way < 0) return Math.min(at(m0), at(m1));
    const most = Math.max(at(m0), at(m1));
    return meets > m0 && meets < m1 ? Math.max(most, at(meets)) : most;
  };
}
