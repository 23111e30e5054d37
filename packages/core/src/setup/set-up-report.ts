import type { Guide } from '../door/guide.ts';
import type { Shoulder } from '../door/shaped-head-report.ts';
import type { Problem } from '../problem/problem.ts';

export type Run = 'under' | 'over';
export type Rotation = 'clockwise' | 'counterclockwise';
/** As seen by the operator, who faces the fence. */
export type FeedDirection = 'right to left' | 'left to right';

/** From one height above the table to another, mm; `to` is null where only the panel's own size ends it. */
export interface Heights {
  readonly from: number;
  readonly to: number | null;
}

/** Lengths mm. */
export interface FenceSetting {
  /** From the fence's line to the spindle's axis, along the table. */
  readonly toAxis: number;
  /** How far the knives stand out beyond the fence. */
  readonly standsOut: number;
  /** Opening between the halves of the fence, clearance included. */
  readonly gap: number;
  /** Where a bar or a false fence may stand across the gap: wood stands there before and after the cut. null: nowhere. */
  readonly bar: Heights | null;
  /** The same for the long edges, where the second round leaves another height; left out where it is the same. */
  readonly barEdges?: Heights | null;
}

/** The wanted hole in the table, and the smallest ring that has it; null where none is large enough. */
export interface Hole {
  readonly needed: number;
  readonly ring: number | null;
}

/** Power at the cutter, W: half, likely, double. */
export interface PowerBand {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
}

/** One pass: depth and reach are settings, `area` what it takes, mm². */
export interface Pass {
  readonly depth: number;
  readonly reach: number;
  readonly area: number;
}

/** What turns: diameters and heights mm, angles degrees. */
export interface Tool {
  readonly cuttingDiameter: number;
  readonly bodyDiameter: number;
  readonly height: number;
  readonly knives: number;
  readonly rake: number;
  readonly wedge: number;
  readonly nutDiameter: number;
  /** Of the spindle; null where it is not known. */
  readonly spindle: number | null;
}

/** What a cut on the frame is for, with the sizes that go with it, mm. */
export type FrameCut =
  | {
      readonly kind: 'cope';
      readonly tenon: { readonly length: number; readonly thickness: number };
      /** Square, behind the tenon: a rebate of its own. */
      readonly shoulder: { readonly length: number; readonly depth: number };
    }
  | {
      readonly kind: 'sticking';
      readonly groove: { readonly width: number; readonly depth: number; readonly setback: number };
      /** Whether the rails' ends are coped to it. */
      readonly coped: boolean;
    }
  | {
      readonly kind: 'back edge';
      /** Radius of the bearing that follows the sight edge. */
      readonly bearing: number;
      /** Radius that the inside corners keep at the back's face. */
      readonly corner: number;
    };

/** How the shaped heads run in a set-up, against a bearing or a ring fence. Shoulders as seen from the door's front. */
export interface CurveSetting {
  /** The half of the heads that is run here, from the side up to the apex; both where no other set-up has the other. */
  readonly shoulder: Shoulder | 'both';
  /** The half that this rotation cuts against the grain. */
  readonly tears: Shoulder;
  /** Set up for the heads alone: the second rotation, without the straight fence. */
  readonly alone: boolean;
  readonly guide: Guide;
}

/** How a cut is set up. Lengths mm from the table, angles degrees, speeds rpm, rim m/s, feed m/min. */
export interface SetUp {
  readonly cut: string;
  /** What is run: the panel, or a part of the frame. */
  readonly of: 'panel' | 'frame';
  /** What it is for on the frame; left out on the panel. */
  readonly frame?: FrameCut;
  readonly machine: string;
  readonly head: string;
  /** A knife of the shop; null for one that is to be ground. */
  readonly knife: string | null;
  /** The face it works. */
  readonly side: 'front' | 'back';
  readonly run: Run;
  readonly rotation: Rotation;
  readonly feedDirection: FeedDirection;
  /** The head stands the other way up than its knife was ground for. */
  readonly turnedOver: boolean;
  /** What the knife was ground for was not given: the job's run, turning counterclockwise, was assumed. */
  readonly assumed: boolean;
  readonly tool: Tool;
  /** The run whose slot the knife goes into; null where the head has no such mark. */
  readonly slot: Run | null;
  /** Degrees: 0 flat on the table, 90 on edge. */
  readonly presented: number;
  /** The station cut deepest, above the table. */
  readonly cuttingPoint: number;
  /** Lower face of the head above the table, along the spindle; null where the knife's place in the head is not known. */
  readonly seat: number | null;
  /** null: nothing of the tool stands in the table. */
  readonly hole: Hole | null;
  readonly fence: FenceSetting;
  readonly speed: number;
  readonly rim: number;
  /** By the power feed, or the greatest by hand. */
  readonly feedRate: number;
  readonly feedBy: 'feeder' | 'hand';
  /** Distance of the knife marks, and the height of the wave where it is worst. */
  readonly mark: { readonly pitch: number; readonly height: number };
  /** For the greatest pass along the grain, and on end grain. */
  readonly power: PowerBand;
  readonly powerEnd: PowerBand;
  readonly passes: readonly Pass[];
  /** The edge of what it leaves of stock of nominal thickness: SVG path data, x in from the edge, y down from the front face. */
  readonly swept: string;
  /** Left out where no shaped head is run. */
  readonly curve?: CurveSetting;
  /**
   * What a test piece of the stock as measured should be thick, `at` mm in from the edge (the groove's mouth, or the middle of a cut that ends before it), after this cut and those before it; `alone`, a
   * fresh piece after this set-up only. Null on the frame.
   */
  readonly testPiece: { readonly at: number; readonly thickness: number; readonly alone: number } | null;
  /** What the set-up depends on and nobody said, by the place it has in its file. */
  readonly notChecked: readonly string[];
  readonly problems: readonly Problem[];
}
