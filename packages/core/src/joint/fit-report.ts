/** The verdicts on a fit, from worst to loosest. */
export type Verdict = 'will-not-enter' | 'stops-short' | 'tight' | 'sliding' | 'loose';

/** Least and most over the panel's float, mm; positive stands proud of the frame, negative is recessed. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

/** The inserted part of the panel. Every figure but `insertion` is null where the cuts leave no tongue. */
export interface TongueReport {
  readonly insertion: number;
  readonly thicknessAtTip: number | null;
  readonly thicknessAtMouth: number | null;
  readonly thinnest: number | null;
  readonly thickest: number | null;
  readonly grooveNeeded: number | null;
}

/** How tongue and groove go together. All null where the cuts leave no tongue. */
export interface FitReport {
  /** Groove width less what the tongue needs at the design insertion; negative: too thick. */
  readonly clearance: number | null;
  readonly deepestInsertion: number | null;
  /** This and the faces are at the insertion reached; null when the tongue will not enter. */
  readonly bottomGap: number | null;
  /**
   * From the frame's sight edge to where the raise really leaves the face, at the insertion reached (at the design insertion
   * for a tongue that will not enter); null without a front cut.
   */
  readonly visibleMargin: number | null;
  readonly frontFace: Range | null;
  readonly backFace: Range | null;
  readonly verdict: Verdict | null;
}
