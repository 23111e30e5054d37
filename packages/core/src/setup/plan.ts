import type { Shoulder } from '../door/shaped-head-report.ts';
import type { Code } from '../problem/codes.ts';
import type { Problem } from '../problem/problem.ts';
import type { Rotation, Run, SetUp } from './set-up-report.ts';

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
