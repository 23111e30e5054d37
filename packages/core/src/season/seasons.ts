import type { Chain } from '@fielded/geometry';
import type { Panel } from '../joint/panel.ts';
import { createJoint, type JointFigures, type Swelling } from '../spread/joint.ts';
import type { JointSizes, Season } from '../spread/limits.ts';
import { MOVE } from '../spread/moves.ts';
import { moistureContent } from '../wood/moisture.ts';
import { type Grain, type MovementFormula, movementFormula, moveWood } from '../wood/movement.ts';
import type { Species } from '../wood/species.ts';

/** A joint at one moisture. Lengths mm; changes are against the panel as made. */
export interface SeasonState {
  /** Moisture content of the panel, %. */
  readonly moisture: number;
  /** Which formula of the handbook the change from `made` was computed by; null for `made` itself. */
  readonly formula: MovementFormula | null;
  readonly widthChange: number;
  readonly thicknessChange: number;
  /** How far the panel's long-grain edge goes into the stile; 0 or less: it has left the groove. */
  readonly insertion: number;
  /** From that edge to the groove's bottom; negative: it is that much too wide. */
  readonly bottomGap: number;
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
  readonly pinned: boolean;
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
export function swellingOf(species: Species, sawn: Panel['sawn'], width: number, pinned: boolean): Swelling {
  const { across, thickness } = panelGrain(species, sawn);
  return {
    thickness: thickness.coefficient,
    width: across.coefficient,
    insertion: width * across.coefficient * edgeShare(pinned),
  };
}

/** The part of a panel's change in width that one edge takes: half when pinned at its centre, all of it in the worst case when not. */
function edgeShare(pinned: boolean): number {
  return pinned ? 0.5 : 1;
}

/**
 * Insertion, bottom gap, clearance and the bare strip of a joint as made, at the driest and at the dampest.
 *
 * `width` of the panel across the grain, mm, when made. Wood moves by Wood Handbook eq. 13-2 or 13-3 (see `moveWood`); along
 * the grain it does not, so this is about the edges in the stiles. The frame is taken to stay as it is: its lips are narrow (formula S4).
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
): SeasonReport {
  const grain = panelGrain(species, job.panel.sawn);
  const made = moistureContent(season.made);
  const state = (moisture: number): SeasonState => {
    const across = moveWood(1, made, moisture, grain.across);
    const thickness = moveWood(1, made, moisture, grain.thickness);
    const further = width * across * edgeShare(season.pinned);
    const { groove, swellGap } = job.frame;
    const design = groove.depth - swellGap;
    const insertion = design + further;
    const reached = Math.min(insertion, groove.depth);
    return {
      moisture,
      formula: moisture === made ? null : movementFormula(made, moisture),
      widthChange: width * across,
      thicknessChange: job.panel.measured * thickness,
      insertion,
      bottomGap: swellGap - further,
      clearance:
        insertion > 0 ? swollenClearance(job, { thickness, width: across, insertion: reached - design }, swept) : null,
      bare: Math.max(0, -further),
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

function swollenClearance(job: JointSizes, swelling: Swelling, swept?: readonly Chain[]): number {
  const joint = createJoint(job, undefined, swelling, swept);
  const moves = new Float64Array(joint.moveCount);
  moves[MOVE.moisture] = 1;
  const figures: JointFigures = { clearance: 0, frontMost: 0, frontLeast: 0 };
  joint.measure(moves, figures);
  return figures.clearance;
}
