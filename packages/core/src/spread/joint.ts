import { type Chain, runsForward } from '@fielded/geometry';
import type { Cut } from '../machining/cut.ts';
import { depthTaken } from '../machining/datum.ts';
import { sweepCut } from '../machining/sweep.ts';
import type { JointSizes } from './limits.ts';
import { MOVE, movePlace } from './moves.ts';
import { recutDepths } from './recut.ts';
import { createSide, type PanelSide } from './side.ts';
import { movedDepth, type SideDepths } from './side-depth.ts';
import { cutSurface } from './surface.ts';

/** How the wood answers to 1 % more moisture: parts of its thickness and of its width, and mm of insertion. */
export interface Swelling {
  readonly thickness: number;
  readonly width: number;
  readonly insertion: number;
  /** The groove's width, by the frame's wood. */
  readonly groove: number;
  /** The part of a change in the panel's size that one edge takes. */
  readonly edge: number;
}

/** Wood whose moisture does not change. */
export const NO_SWELLING: Swelling = { thickness: 0, width: 0, insertion: 0, groove: 0, edge: 0.5 };

/** Figures of a moved joint, mm; proud of the frame is positive. */
export interface JointFigures {
  clearance: number;
  /** Front face against the frame's with the panel hard against the groove's front wall. */
  frontMost: number;
  /** The same, hard against the back wall. */
  frontLeast: number;
  /** From the panel's edge to the groove's bottom; negative: the panel is that much too large on this side. */
  bottomGap: number;
}

/** A joint ready to be moved: its surfaces computed once, so that asking again costs no section. */
export interface Joint {
  /** Design insertion, mm. */
  readonly insertion: number;
  readonly cuts: readonly Cut[];
  readonly swelling: Swelling;
  /** How long a list of moves is. */
  readonly moveCount: number;
  /** Whether its surfaces can be slid, or the section has to be cut anew for every move; and how many lines and arcs they have. */
  readonly slides: boolean;
  readonly pieces: number;
  /** What each cut leaves at its setting, in running order. */
  readonly edges: readonly Chain[];
  /** Both sides' surfaces, where they can be slid. */
  readonly sides?: { readonly front: PanelSide; readonly back: PanelSide };
  /** What the figures follow from besides the depths of both sides: sizes as given, mm. */
  readonly sizes: {
    readonly thickness: number;
    readonly width: number;
    readonly depth: number;
    readonly setback: number;
    readonly film: number;
  };
  /**
   * Writes into `figures` what the joint is when its sizes are off by `moves` (mm, moisture in points of %), the panel going
   * `insertion` in.
   */
  readonly measure: (moves: ArrayLike<number>, figures: JointFigures, insertion?: number) => void;
}

/**
 * The joint of a job, ready to be moved.
 *
 * `runs` overrides which cuts go under and over. A cut run over goes deeper by what the stock is thicker than the cutters
 * are set for; a cut run under does not. Spindle height moves a cut along the spindle's axis, the fence across it. Film
 * lies on both faces of the tongue. Moisture swells the tongue and pushes it further in. With m the least depth of each
 * surface over the inserted tongue, clearance = groove − (T − m_front − m_back) (formula S1). Exact for lines and
 * arcs. `swept` is what the cuts leave, as run so, where that is known. Surfaces are slid; only a cut that leaves a lip over wood it clears has its section cut anew every time.
 */
export function createJoint(
  job: JointSizes,
  runs: readonly ('under' | 'over')[] = job.cuts.map((cut) => cut.run),
  swelling: Swelling = NO_SWELLING,
  swept: readonly Chain[] | undefined = undefined,
): Joint {
  const cuts = job.cuts.map((cut, index) => ({ ...cut, run: runs[index] ?? cut.run }));
  const { groove, swellGap } = job.frame;
  const designInsertion = groove.depth - swellGap;
  const film = job.panel.film ?? 0;
  const edges = swept ?? cuts.map((cut) => sweepCut(cut, depthTaken(cut, job.panel)).swept);
  const slides = edges.every((edge) => runsForward(edge, 1, 0));
  const sides = slides ? createSides(cuts, edges) : undefined;
  const depthsOf = sides === undefined ? recutDepths(job, cuts) : slideDepths(sides);
  const depths: SideDepths = { front: 0, back: 0 };
  return {
    insertion: designInsertion,
    cuts,
    swelling,
    moveCount: movePlace(cuts.length),
    slides,
    edges,
    pieces: edges.reduce((sum, edge) => sum + edge.length, 0),
    ...(sides && { sides }),
    sizes: { thickness: job.panel.measured, ...groove, film },
    measure(moves, figures, insertion = designInsertion) {
      const moisture = moves[MOVE.moisture]!;
      const swell = 1 + swelling.thickness * moisture;
      const bottom = groove.depth + moves[MOVE.grooveDepth]!;
      const meant = insertion + swelling.edge * moves[MOVE.panelSize]! + swelling.insertion * moisture;
      // The bottom of the groove stops a panel that is too large or swells; a tip that is only set to the groove goes no further in.
      const reached = insertion > 0 ? Math.min(meant, bottom) : 0;
      // The tongue's surfaces are those cut before it swelled: how far in is measured on the wood as it was.
      const into = Math.max(0, reached / (1 + swelling.width * moisture));
      depthsOf(moves, into, depths);
      const thickness = job.panel.measured + moves[MOVE.thickness]!;
      // The finish cannot be thinner than nothing.
      const coat = Math.max(0, film + moves[MOVE.film]!);
      const tongue = swell * (thickness - depths.front - depths.back) + 2 * coat;
      const width = (groove.width + moves[MOVE.grooveWidth]!) * (1 + swelling.groove * moisture);
      figures.clearance = width - tongue;
      figures.frontMost = swell * depths.front - coat - groove.setback - moves[MOVE.setback]!;
      figures.frontLeast = figures.frontMost - figures.clearance;
      figures.bottomGap = bottom - meant;
    },
  };
}

/** Reads one figure of a joint for a list of moves. */
export function createReader(joint: Joint, figure: keyof JointFigures): (moves: ArrayLike<number>) => number {
  const figures: JointFigures = { clearance: 0, frontMost: 0, frontLeast: 0, bottomGap: 0 };
  return (moves) => {
    joint.measure(moves, figures);
    return figures[figure];
  };
}

function createSides(cuts: readonly Cut[], edges: readonly Chain[]): NonNullable<Joint['sides']> {
  const surfaces = edges.map(cutSurface);
  return { front: createSide('front', cuts, surfaces), back: createSide('back', cuts, surfaces) };
}

/** The way to get both sides' depths by sliding surfaces: every cut has one depth at each distance in. */
function slideDepths({
  front,
  back,
}: NonNullable<Joint['sides']>): (moves: ArrayLike<number>, into: number, depths: SideDepths) => void {
  return (moves, into, depths) => {
    depths.front = movedDepth(front, moves, into);
    depths.back = movedDepth(back, moves, into);
  };
}
