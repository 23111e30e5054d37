import {
  createJobReader,
  type Fault,
  type Job,
  type Problem,
  type ReadJob,
  type Report,
  type Units,
} from '@fielded/core';
import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { applyChanges, type JobChange } from '../job/changes.ts';
import { type Data, getAt, type Keys, setAtKeys } from '../job/data.ts';
import type { Doc, ShopDoc } from './doc.ts';
import { advance, beginHistory, type History, redo, settle, undo } from './history.ts';
import { followJob } from './live-report.ts';
import type { Notice } from './notice.ts';

/** Whether the job is kept in this browser; if not, storage is forbidden or full. */
type Saving = 'saved' | 'blocked' | 'full';

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

const NOTHING: Notice = { text: '', kind: 'note' };

/** A desk with a readable job on it. Throws RangeError for one that cannot be read. */
export function createDesk(first: Doc): Desk {
  const readJob = createJobReader();
  const readDoc = createDocReader(readJob);
  const start = readDoc(first);
  if (start.job === null) throw new RangeError(`the first job cannot be read: ${start.faults[0]?.message}`);
  const history = signal<History<Doc>>(beginHistory(first));
  const doc = computed(() => history.value.present);
  const job = computed(() => readDoc(doc.value).job!);
  const units = signal<Units>(start.job.units);
  const notice = signal<Notice>(NOTHING);
  const moving = signal<readonly string[] | null>(null);
  const late = signal(false);
  const busy = computed(() => moving.value !== null || late.value);
  const dragged = signal(false);
  // What stands round a drawing that is dragged shows the problems from before.
  const mute = computed(() => dragged.value || late.value);
  const { report, lookAhead } = followJob({ job, units, busy, mute, notice });
  const { put, ...steps } = createSteps(history);
  return {
    doc,
    units,
    job,
    report,
    problems: computed(() => report.value.problems),
    history,
    canUndo: computed(() => history.value.past.length > 0),
    canRedo: computed(() => history.value.future.length > 0),
    moving,
    late,
    lookAhead,
    beforeRest: new Set(),
    asideLate: signal(false),
    busy,
    dragged,
    typing: signal<readonly string[] | null>(null),
    trace: signal<Report | null>(null),
    proposal: signal<readonly JobChange[] | null>(null),
    saving: signal<Saving>('saved'),
    tries: signal(0),
    notice,
    ...steps,
    ...createChanges(doc, readDoc, put),
    readDoc,
    read: (data) => readJob(data, doc.peek().shop?.data),
    value: (path) => getAt(doc.value.data, path),
  };
}

/** Reads the job of a state, once for each. */
function createDocReader(readJob: ReturnType<typeof createJobReader>): (doc: Doc) => ReadJob {
  const jobs = new WeakMap<Doc, ReadJob>();
  return (doc) => {
    const read = jobs.get(doc) ?? readJob(doc.data, doc.shop?.data);
    jobs.set(doc, read);
    return read;
  };
}

/** Makes the next state of the desk, as a step of undo; steps with the same key in a row are one. */
type Put = (next: Doc, key?: string) => void;

type Steps = Pick<Desk, 'drafts' | 'sumFaults' | 'settle' | 'undo' | 'redo' | 'replace' | 'lay'> & {
  readonly put: Put;
};

/** The steps of undo, and what was half typed meanwhile. */
function createSteps(history: Signal<History<Doc>>): Steps {
  const drafts = signal<Readonly<Record<string, string>>>({});
  const sumFaults = signal<Readonly<Record<string, string>>>({});
  // A job is told by the state it was laid on the desk in: changes keep the job, another file does not.
  const firsts = new WeakMap<Doc, Doc>();
  const firstOf = (state: Doc) => firsts.get(state) ?? state;
  const layWith = (next: History<Doc>, typed: Readonly<Record<string, string>>) =>
    batch(() => {
      drafts.value = typed;
      sumFaults.value = {};
      history.value = next;
    });
  const step = (next: History<Doc> | null) => {
    if (next === null) return;
    // What was half typed belongs to the job that was on the desk.
    if (firstOf(next.present) === firstOf(history.peek().present)) history.value = next;
    else layWith(next, {});
  };
  return {
    drafts,
    sumFaults,
    put(next, key) {
      const { present } = history.peek();
      firsts.set(next, firstOf(present));
      history.value = advance(history.peek(), next, key);
    },
    settle() {
      history.value = settle(history.value);
    },
    undo: () => step(undo(history.value)),
    redo: () => step(redo(history.value)),
    replace: (next) => layWith(advance(history.value, next), {}),
    lay: (next, typed = {}) => layWith(next, typed),
  };
}

/** Changes of job and shop: each is read first, and put on the desk where it has no faults. */
function createChanges(
  doc: ReadonlySignal<Doc>,
  readDoc: (doc: Doc) => ReadJob,
  put: Put,
): Pick<Desk, 'change' | 'changeShop' | 'setLogo' | 'check'> {
  const changed = (changes: readonly JobChange[]): Doc => ({
    ...doc.peek(),
    data: applyChanges(doc.peek().data, changes),
  });
  const putIfRead = (next: Doc, key?: string): readonly Fault[] => {
    const { faults } = readDoc(next);
    if (faults.length === 0) put(next, key);
    return faults;
  };
  return {
    change(changes, key) {
      const next = changed(changes);
      const { data } = doc.peek();
      return changes.every(([path, value]) => sameData(getAt(data, path), value)) ? [] : putIfRead(next, key);
    },
    changeShop(keys, value, key) {
      const { shop } = doc.peek();
      const before = shop ?? newShop(readDoc(doc.peek()).job!.units);
      const next = { ...before, data: setAtKeys(before.data, keys, value) };
      return JSON.stringify(next) === JSON.stringify(shop) ? [] : putIfRead({ ...doc.peek(), shop: next }, key);
    },
    setLogo(logo) {
      const { shop, ...others } = doc.peek();
      if (shop === null) return;
      const { logo: _, ...before } = shop;
      const data = setAtKeys(before.data, ['logo'], logo?.name);
      putIfRead({ ...others, shop: { ...before, data, ...(logo !== null && { logo: logo.id }) } });
    },
    check: (changes) => readDoc(changed(changes)).faults,
  };
}

/** A shop begun on the page. */
function newShop(units: Units): ShopDoc {
  return { name: 'shop.yaml', data: { fielded: 1, units }, text: '' };
}

function sameData(one: Data | undefined, other: Data | undefined): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}
