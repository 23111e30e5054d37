import type { KnifeReport, Language, Report } from '@fielded/core';
import type { Theme } from '../style.ts';

/** A knife to be drawn, and for whom. */
export interface KnifeDrawing {
  readonly knife: KnifeReport;
  readonly units: Report['units'];
  /** What its words are in; English unless told. */
  readonly language?: Language;
  /** What it belongs to: the job's title, or the shop. */
  readonly title: string;
  /** What is to be ground: the knife, or the limiter in front of which it stands. */
  readonly part: 'knife' | 'limiter';
  readonly theme?: Theme;
  /** Paper as wide as this at most, mm: the ordinates then stand under the outline. Left out, they stand beside it. */
  readonly across?: number;
}

/** Empty paper round the drawing, mm. */
export const MARGIN = 8;
export const LEAST_WIDTH = 172;
