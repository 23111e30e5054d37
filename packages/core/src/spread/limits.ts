import type { FitLimits, Frame } from '../joint/frame.ts';
import type { Panel } from '../joint/panel.ts';
import type { Cut } from '../machining/cut.ts';
import type { Moisture } from '../wood/moisture.ts';

/** ± on each source: mm, points of % for moisture, radians for `square`. */
export interface SpreadLimits {
  readonly thickness: number;
  /** Spindle height, of each cut for itself. */
  readonly height: number;
  /** Fence, of each cut for itself. */
  readonly fence: number;
  readonly grooveWidth: number;
  /** Finish on each face of the tongue. */
  readonly film: number;
  /** Spacer between two heads on one spindle. */
  readonly spacer?: number;
  /** Moisture of the panel against what it was machined at. */
  readonly moisture?: number;
  /** From the frame's face to the groove. */
  readonly setback?: number;
  readonly grooveDepth?: number;
  /** Width and height of the panel as cut. */
  readonly panelSize?: number;
  /** How far fence and table are out of square, radians, of each cut for itself. */
  readonly square?: number;
}

/** The air or the moisture a panel is made in and lives through. */
export interface Season {
  readonly made: Moisture;
  readonly driest: Moisture;
  readonly dampest: Moisture;
  /**
   * How the panel is held: `true` at its centre, so that each edge takes half of what it moves; `edge` along one edge, so that the
   * other takes all of it; `false` not at all: it can slide.
   */
  readonly pinned: boolean | 'edge';
}

/** The part of a job that a joint is made of. */
export interface JointSizes {
  readonly panel: Panel;
  readonly frame: Frame;
  readonly cuts: readonly Cut[];
  readonly fit: FitLimits;
}
