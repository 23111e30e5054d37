import { type Chain, SAME_LENGTH } from '@fielded/geometry';
import type { Panel } from '../joint/panel.ts';
import { createJoint, type JointFigures, type Swelling } from '../spread/joint.ts';
import type { JointSizes, Season } from '../spread/limits.ts';
import { MOVE } from '../spread/moves.ts';
import { moistureContent } from '../wood/moisture.ts';
import { type Grain, type MovementFormula, movementFormula, moveWood } from '../wood/movement.ts';
import type { Species } from '../wood/species.ts';

/** A bare strip narrower than this, mm, is not seen. */
export const LEAST_BARE_SEEN = 0.05;

/** A joint at one moisture. Lengths mm; changes are against the panel as made. */
export interface SeasonState {
  /** Moisture content of the panel, %. */
  readonly moisture: number;
  /** Which formula of the handbook the change from `made` was computed by; null for `made` itself. */
  readonly formula: MovementFormula | null;
  readonly widthChange: number;
  readonly thicknessChange: number;
  /** How much the groove's width changes with the frame's wood. */
  readonly grooveChange: number;
  /**
   * How far the panel's long-grain edge goes into the stile, on the side where it goes in least: a free panel may have slid away
   * from it. 0 or less: it has left the groove.
   */
  readonly insertion: number;
  /** From the edge that has swelled to the groove's bottom, a free panel in its middle; negative: it is that much too wide. */
  readonly bottomGap: number;
  /**
   * The room that is left to swell: of the gap at the bottom and of what the tongue, as thick as it then is, still goes into the groove, as
   * wide as that then is, the less. Negative: it pushes.
   */
  readonly room: number;
  /** At that insertion, the groove's depth at most; null once the panel has left the groove. */
  readonly clearance: number | null;
  /** Strip that lay in the groove when the panel was made and now shows. */
  readonly bare: number;
}

/** What the seasons do to a joint. */
export interface SeasonReport {
  readonly species: string;
  /** Change per 1 % of moisture, Wood Handbook table 13-5. */
  readonly coefficients: { readonly across: number; readonly thickness: number };
  /** Width of the panel across the grain as made, mm. */
  readonly width: number;
  /** The door that this panel is of: the widest among all; left out where the job gives the width itself. */
  readonly door?: string;
  /** As the job has it: at its centre, along one `edge`, or free to slide. */
  readonly pinned: boolean | 'edge';
  readonly made: SeasonState;
  readonly driest: SeasonState;
  readonly dampest: SeasonState;
}

/** How a panel of this wood moves across its width and through its thickness, as it was sawn. */
function panelGrain(species: Species, sawn: Panel['sawn']): { across: Grain; thickness: Grain } {
  const grain = (way: 'radial' | 'tangential'): Grain => ({
    coefficient: species.coefficient[way],
    shrinkage: species.shrinkage[way],
    fibreSaturation: species.fibreSaturation,
  });
  // Flat-sawn boards have the growth rings along their width: they move tangentially across it, radially through it.
  const [across, thickness] =
    sawn === 'flat' ? (['tangential', 'radial'] as const) : (['radial', 'tangential'] as const);
  return { across: grain(across), thickness: grain(thickness) };
}

/** What 1 % more moisture does to a joint, for its spread; `width` across the grain in mm. */
export function swellingOf(
  species: Species,
  sawn: Panel['sawn'],
  width: number,
  pinned: Season['pinned'],
  frame?: FrameWood,
): Swelling {
  const { across, thickness } = panelGrain(species, sawn);
  return {
    thickness: thickness.coefficient,
    width: across.coefficient,
    insertion: width * across.coefficient * edgeShare(pinned),
    groove: frame === undefined ? 0 : panelGrain(frame.species, frame.sawn).thickness.coefficient,
    edge: edgeShare(pinned),
  };
}

/** The wood that stiles and rails are made of. */
export interface FrameWood {
  readonly species: Species;
  readonly sawn: Panel['sawn'];
}

/** The part of a panel's change in width that one edge takes: all of it where the other is pinned, else half. */
export function edgeShare(pinned: Season['pinned']): number {
  return pinned === 'edge' ? 1 : 0.5;
}

/**
 * Insertion, bottom gap, clearance and the bare strip of a joint as made, at the driest and at the dampest.
 *
 * `width` of the panel across the grain, mm, when made. Wood moves by Wood Handbook eq. 13-2 or 13-3 (see `moveWood`); along
 * the grain it does not, so this is about the edges in the stiles. The groove lies across the thickness of its part and changes as
 * that does: W·(1 + C·ΔM) (formula S4). A free panel that swells less than both gaps together does not push; at its least
 * it has slid as far as the other side's gap lets it. `deepest` is how far the tongue goes in as made; how far it does once it has swelled
 * or shrunk, with its groove, is found by halving, to 1e-9 mm.
 *
 * `swept` is what the cuts leave, where that is known already.
 *
 * @throws RangeError for a moisture outside 0–30 % or air that cannot be (see `equilibriumMoisture`).
 */
export function reportSeasons(
  job: JointSizes,
  season: Season,
  species: Species,
  width: number,
  swept?: readonly Chain[],
  frame: FrameWood = { species, sawn: job.panel.sawn },
  deepest: number = job.frame.groove.depth,
): SeasonReport {
  const grain = panelGrain(species, job.panel.sawn);
  const frameGrain = panelGrain(frame.species, frame.sawn);
  const made = moistureContent(season.made);
  const state = (moisture: number): SeasonState => {
    const across = moveWood(1, made, moisture, grain.across);
    const thickness = moveWood(1, made, moisture, grain.thickness);
    const further = width * across * edgeShare(season.pinned);
    const { groove, swellGap } = job.frame;
    const design = groove.depth - swellGap;
    const middle = design + further;
    const reached = Math.min(middle, groove.depth);
    const free = season.pinned === false && moisture !== made;
    // A free panel that has slid over lies at the bottom of the other groove.
    const insertion = free ? Math.min(groove.depth, design - swellGap + width * across) : middle;
    const grooveChange = groove.width * moveWood(1, made, moisture, frameGrain.thickness);
    const clearanceAt = swollenClearance(job, { thickness, width: across, insertion: 0, groove: 0, edge: 0 }, swept);
    const goesIn = moisture === made ? deepest : deepestAt((into) => grooveChange + clearanceAt(into), groove.depth);
    return {
      moisture,
      formula: moisture === made ? null : movementFormula(made, moisture),
      widthChange: width * across,
      thicknessChange: job.panel.measured * thickness,
      grooveChange,
      insertion,
      bottomGap: swellGap - further,
      room: Math.min(swellGap, goesIn - design) - further,
      clearance: middle > 0 ? grooveChange + clearanceAt(reached) : null,
      // A panel that has left the groove shows its whole tongue, and no more.
      bare: Math.max(0, design - Math.max(0, insertion)),
    };
  };
  return {
    species: species.name,
    coefficients: { across: grain.across.coefficient, thickness: grain.thickness.coefficient },
    width,
    pinned: season.pinned,
    made: state(made),
    driest: state(moistureContent(season.driest)),
    dampest: state(moistureContent(season.dampest)),
  };
}

/** The clearance of the joint once its panel has moved so, mm, in a groove that has not, by how far the panel then goes in. */
function swollenClearance(job: JointSizes, swelling: Swelling, swept?: readonly Chain[]): (into: number) => number {
  const joint = createJoint(job, undefined, swelling, swept);
  const moves = new Float64Array(joint.moveCount);
  moves[MOVE.moisture] = 1;
  const figures: JointFigures = { clearance: 0, frontMost: 0, frontLeast: 0, bottomGap: 0 };
  return (into) => {
    joint.measure(moves, figures, into);
    return figures.clearance;
  };
}

/** Halvings after which a depth is known to 1e-9 mm. */
const HALVINGS = 36;

/** How far in there is still clearance, up to `depth`, mm: it only lessens on the way in. */
function deepestAt(clearanceAt: (into: number) => number, depth: number): number {
  const fits = (into: number) => clearanceAt(into) >= -SAME_LENGTH;
  if (fits(depth)) return depth;
  let [inside, outside] = [0, depth];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (inside + outside) / 2;
    if (fits(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}
