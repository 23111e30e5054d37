import type { Fault, Job, Problem, ReadJob, Report, Units } from '@fielded/core';
import type { ReadonlySignal, Signal } from '@preact/signals';
import type { JobChange } from '../job/changes.ts';
import type { Data, Keys } from '../job/data.ts';
import type { Doc } from './doc.ts';
import type { History } from './history.ts';
import type { Notice } from './notice.ts';

/** Whether the job is kept in this browser; if not, storage is forbidden or full. */
export type Saving = 'saved' | 'blocked' | 'full';

/** The state of the page, and what can be done to it. */
export interface Desk {
  readonly doc: ReadonlySignal<Doc>;
  /** The unit that lengths are shown in; the job stays the same. */
  readonly units: Signal<Units>;
  /** The job read from `doc`: what lies on the desk can always be read. */
  readonly job: ReadonlySignal<Job>;
  /** What the engine answers to the job. While `busy` it is the joint alone. */
  readonly report: ReadonlySignal<Report>;
  readonly problems: ReadonlySignal<readonly Problem[]>;
  /** Texts that were typed and cannot be read yet, by the path of their field. */
  readonly drafts: Signal<Readonly<Record<string, string>>>;
  /** What is wrong with sums, by the path of their field. */
  readonly sumFaults: Signal<Readonly<Record<string, string>>>;
  /** What undo and redo go through. */
  readonly history: ReadonlySignal<History<Doc>>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** The dimensions shown while a size is moved by hand, when the drawing keeps its scale and place; null while none is. */
  readonly moving: Signal<readonly string[] | null>;
  /** Whether a hand has just let go: the whole report waits for a later task, so that a touch is answered first. */
  readonly late: Signal<boolean>;
  /** Works the whole report out in steps of a few milliseconds, so that it is ready when it is shown. */
  lookAhead(): Generator<void, void>;
  /** What each drawing works out in steps after a hand has let go, before it settles. */
  readonly beforeRest: Set<() => Generator<void, void>>;
  /** Whether the panel at the side still shows the job before a drag: it follows one task after the drawing. */
  readonly asideLate: Signal<boolean>;
  /** Whether the report is the joint alone: a size is moved, or a hand has just let go. */
  readonly busy: ReadonlySignal<boolean>;
  /** Whether a hand drags a size: in these frames only the sheet and its figures follow. */
  readonly dragged: Signal<boolean>;
  /** The dimensions that show the size being typed; null while nothing is. */
  readonly typing: Signal<readonly string[] | null>;
  /** An earlier joint to compare with. */
  readonly trace: Signal<Report | null>;
  /** Changes proposed and not made, whose joint is drawn dashed. */
  readonly proposal: Signal<readonly JobChange[] | null>;
  readonly saving: Signal<Saving>;
  /** How often the panel was slid into the groove: each count starts the motion. */
  readonly tries: Signal<number>;
  /** What just happened, in one line; its text is '' for nothing. */
  readonly notice: Signal<Notice>;
  /** Makes changes in one step of undo; changes in a row with the same key share a step. Refuses a job that could not be read, and returns its faults. */
  change(changes: readonly JobChange[], key?: string): readonly Fault[];
  /** Changes the shop as `change` changes the job; a job without a shop gets one. */
  changeShop(keys: Keys, value: Data | undefined, key?: string): readonly Fault[];
  /** Gives the shop a logo: the name that its file has it by, and the id of the picture kept here; null takes it out. */
  setLogo(logo: { readonly name: string; readonly id: string } | null): void;
  /** Reads a job with its shop; the same state is read once. */
  readDoc(doc: Doc): ReadJob;
  /** Reads other data with the shop of this job. */
  read(data: Data): ReadJob;
  /** The faults that changes would bring; none are made. */
  check(changes: readonly JobChange[]): readonly Fault[];
  /** Ends a step of undo: the next change is a step of its own, whatever its key. */
  settle(): void;
  undo(): void;
  redo(): void;
  /** Puts another job on the desk; the one before is one undo away. */
  replace(doc: Doc): void;
  /** Lays a job on the desk with the history that it was kept with, and what was half typed. */
  lay(history: History<Doc>, drafts?: Readonly<Record<string, string>>): void;
  /** The value at a path of the job's data; undefined where there is none. */
  value(path: string): Data | undefined;
}
