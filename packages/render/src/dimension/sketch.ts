import type { Box, Curve, Loop } from '@fielded/geometry';
import type { Item } from '../scene.ts';
import type { AngleDimension } from './angle.ts';
import type { InteriorDimension } from './interior.ts';
import type { LeaderDimension } from './leader.ts';
import type { LinearDimension } from './linear.ts';
import type { OrdinateDimension } from './ordinate.ts';

/** A part of a drawing before its dimensions are laid out: what is drawn, and what has to be said about it. Paper mm. */
export interface Sketch {
  readonly items: readonly Item[];
  /** Lines that no text may cross. */
  readonly outlines: readonly Curve[];
  /** Closed loops of hatched wood. */
  readonly woods: readonly Loop[];
  /** Tiers of dimensions stand round this. */
  readonly around: Box;
  readonly tiers: readonly LinearDimension[];
  readonly interiors: readonly InteriorDimension[];
  readonly leaders: readonly LeaderDimension[];
  readonly angles?: readonly AngleDimension[];
  readonly ordinates?: readonly OrdinateDimension[];
}
