import type { Guide } from '../door/guide.ts';
import type { Shoulder } from '../door/shaped-head-report.ts';
import type { Code } from '../problem/codes.ts';
import type { Problem } from '../problem/problem.ts';

export type Run = 'under' | 'over';
export type Rotation = 'clockwise' | 'counterclockwise';
/** As seen by the operator, who faces the fence. */
export type FeedDirection = 'right to left' | 'left to right';

/** One way of making a cut: a machine, cutter below or above, and the way the spindle turns as seen from above. */
export interface Way {
  readonly cut: string;
  readonly machine: string;
  readonly head: string;
  readonly run: Run;
  readonly rotation: Rotation;
  readonly works: boolean;
  /** Codes of what stands against it. A figure that nobody knows never stands against a way. */
  readonly against: readonly Code[];
  /** The same in words, with the figure wanted and the figure there is; and what only spoils the work. */
  readonly problems: readonly Problem[];
  /** How much the tongue's thickness changes for each mm that the stock is thicker, the other cuts run as planned. */
  readonly tonguePerStock: number | null;
}

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
   * What a test piece of the stock as measured should be thick, `at` mm in from the edge, after this cut and those before it; `alone`, a
   * fresh piece after this set-up only. Null on the frame.
   */
  readonly testPiece: { readonly at: number; readonly thickness: number; readonly alone: number } | null;
  /** What the set-up depends on and nobody said, by the place it has in its file. */
  readonly notChecked: readonly string[];
  readonly problems: readonly Problem[];
}

/** Two heads on one spindle: the tongue is then the same whatever the stock and the height. */
export interface StackReport {
  readonly works: boolean;
  readonly against: readonly Code[];
  readonly machine: string | null;
  readonly rotation: Rotation | null;
  /** Between the two heads, mm; null where a knife's place in its head is not known. */
  readonly spacer: number | null;
  /** Names of the cuts, the lower first. */
  readonly lower: string | null;
  readonly upper: string | null;
  readonly speed: number | null;
  readonly problems: readonly Problem[];
  readonly notChecked: readonly string[];
}

export type StepKind =
  | 'set-up'
  | 'test-piece'
  | 'measure'
  | 'run-ends'
  | 'rip'
  | 'run-edges'
  | 'run-heads'
  | 'sand'
  | 'finish'
  | 'glue-up';

/** One step of the work, in the order it is done. */
export interface Step {
  readonly kind: StepKind;
  /** Cuts it is for, by name; empty where it is for none. */
  readonly cuts: readonly string[];
  /** Place among `setups` of the one it needs. */
  readonly setUp: number | null;
  readonly machine: string | null;
  /** What goes through: all panels, those that are wide enough, or those that ride in blanks; parts of the frame. */
  readonly panels: 'all' | 'wide' | 'narrow' | 'frame' | 'none';
  /** Names of the doors whose panels these are; empty where the job has no doors. */
  readonly doors: readonly string[];
  /** Those of them whose panels still ride in blanks in this step. */
  readonly blanks: readonly string[];
  /** Those of them whose narrow panels are in no blank: their ends need a carrier or a spare beside them. */
  readonly carrier: readonly string[];
  /** In `run-heads`: the half that is run, seen from the front; null in every other step. */
  readonly shoulder: Shoulder | 'both' | null;
  /** Those of them with a shaped head, of which the straight fence only takes the square end. */
  readonly shaped: readonly string[];
}

/** The calliper reads `reads` too much on the tongue: move the spindle up and the knives out by so much, mm. */
export interface Correction {
  readonly reads: number;
  /** null: moving it does not change the tongue. */
  readonly spindle: number | null;
  readonly fence: number | null;
}

/** The set-up of every cut, and the order of work. */
export interface Plan {
  readonly setups: readonly SetUp[];
  readonly ways: readonly Way[];
  readonly steps: readonly Step[];
  readonly setUpCount: number;
  /** null where the cuts are not two of opposite sides. */
  readonly stack: StackReport | null;
  /** For cuts that nothing can make in their own head: how they would be set up in other heads of the shop. */
  readonly otherHeads: readonly SetUp[];
  /** For each set-up, in the same order. */
  readonly correction: readonly (readonly Correction[])[];
}
