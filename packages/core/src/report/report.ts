import type { Blank, DoorReport, LeftOver, Timber } from '../door/door-report.ts';
import type { CopeReport } from '../joint/cope.ts';
import type { FitReport, TongueReport } from '../joint/fit-report.ts';
import type { KnifeReport } from '../knife/knife-report.ts';
import type { Code } from '../problem/codes.ts';
import type { Language } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import type { Terms } from '../problem/terms.ts';
import type { ShapeName } from '../profile/profile.ts';
import type { SeasonReport } from '../season/seasons.ts';
import type { SpreadReport } from '../spread/report.ts';

export type { Opening, Size } from '../door/door.ts';
export type * from '../door/door-report.ts';
export type { HeadReport } from '../door/shaped-head-report.ts';
export type * from '../joint/fit-report.ts';
export type * from '../knife/knife-report.ts';

/** One cut as made. Lengths mm, areas mm². */
export interface CutReport {
  readonly name: string;
  readonly side: 'front' | 'back';
  readonly shape: ShapeName;
  readonly run: 'under' | 'over';
  /** Degrees of spindle tilt: 0 flat on the table, 90 on edge. */
  readonly presented: number;
  /** Where the spindle is set, from the worked face of stock of nominal thickness. */
  readonly depth: number;
  /** What the cut really takes below the worked face of the measured stock. */
  readonly depthCut: number;
  readonly reach: number;
  /** How far in from the edge it leaves the worked face: less than the reach where it is set less deep than drawn; null where it takes none. */
  readonly faceEnd: number | null;
  /** Flat at full depth from the edge, and upright step at the field, as cut; 0 for a free outline. */
  readonly land: number;
  readonly shoulder: number;
  /** What the cut would take from the full stock alone. */
  readonly removedArea: number;
  /** The part of that already gone when its turn comes. */
  readonly sharedArea: number;
  /** Wood that the drawn profile keeps and the sweep takes. */
  readonly takenFromDrawing: number;
  /** The profile as drawn, placed in the section: SVG path data, x in from the edge, y down from the front face. */
  readonly drawn: string;
  /** The edge of what the knife sweeps, same coordinates, from the panel's edge side to the worked face. */
  readonly swept: string;
}

export interface SectionReport {
  /** The thickness the section is computed on. */
  readonly thickness: number;
  readonly cuts: readonly CutReport[];
  readonly removedArea: number;
  /** null when nothing is removed. */
  readonly removedCentroid: { readonly fromEdge: number; readonly fromBack: number } | null;
  /** SVG path data of the section over 0 ≤ x ≤ greatest reach + 20, x right, y down from the front face, true arcs. */
  readonly outline: string;
  /** How far in the drawn section runs. */
  readonly width: number;
}

/**
 * The two statements that always stand together: does it fit, and can it be run. Only where both are true is a job right.
 */
export interface Statements {
  /** The tongue goes home and slides: the verdict is `sliding`. */
  readonly fits: boolean;
  /** false: an error stands against making it; null: nothing does, but not everything was checked; true: all was checked. */
  readonly canBeRun: boolean | null;
  /** Codes of the errors that stand against running it, each once. */
  readonly against: readonly Code[];
  /** How many errors these are. */
  readonly errors: number;
  /** What running it depends on and nobody said, by the place it has in its file: `cuts[0].head`, `shop.machines`. */
  readonly notChecked: readonly string[];
}

/** What `fielded check --json` prints; also everything a drawing needs. Lengths mm, areas mm². */
export interface Report {
  readonly fielded: 1;
  readonly title: string;
  readonly units: 'mm' | 'in';
  /** Whose trade terms its words use. */
  readonly terms: Terms;
  /** What its sentences are said in, where the job names another language than English. */
  readonly language?: Language;
  /** `width` across the grain and `film`, the finish on each face of the tongue, where the job gives them. */
  readonly panel: {
    readonly thickness: number;
    readonly measured: number;
    readonly width?: number;
    readonly film?: number;
  };
  readonly frame: {
    readonly thickness: number;
    readonly groove: { readonly width: number; readonly depth: number; readonly setback: number };
    readonly swellGap: number;
    /** The sticking's outline, SVG path data: x in from the sight edge, y down from the front face; null for a plain lip. */
    readonly sticking: string | null;
    /** The counter-profile of the rails' ends; left out for a plain lip, and where stiles and rails do not meet in a cope. */
    readonly cope?: CopeReport;
    /**
     * What is worked on the back's inside arris, in from the sight edge and up from the back; its outline in the sticking's
     * coordinates. Left out where there is none.
     */
    readonly backEdge?: { readonly reach: number; readonly depth: number; readonly outline: string };
  };
  readonly section: SectionReport;
  readonly tongue: TongueReport;
  /** How tongue and groove go together, and the clearances that part tight, sliding and loose, mm. */
  readonly fit: FitReport & { readonly snug: number; readonly loose: number };
  /** Does it fit, can it be run: always said together (see `stateFit` and `stateRun` for the words). */
  readonly statements: Statements;
  /** What to grind for each cut that names a head, in running order; left out where none does. */
  readonly knives?: readonly KnifeReport[];
  /** What ± on its sizes does to the joint; left out where the job gives none. */
  readonly spread?: SpreadReport;
  /** What dry and damp air do to the joint; left out where the job gives none, or not enough. */
  readonly season?: SeasonReport;
  /** The doors, their openings and panels; left out where the job gives none. */
  readonly doors?: readonly DoorReport[];
  /** Narrow panels glued up together for their end grain, and those that no blank takes; with doors only. */
  readonly blanks?: readonly Blank[];
  readonly leftOver?: readonly LeftOver[];
  /** Timber to order, by finished thickness; with doors only. */
  readonly timber?: readonly Timber[];
  readonly problems: readonly Problem[];
}
