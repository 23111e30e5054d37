import {
  createJobReader,
  type Fault,
  type Job,
  type Problem,
  type ReadJob,
  type Report,
  type Units,
} from '@fielded/core';
import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { reportJoint } from '../job/answer-joint.ts';
import { applyChanges, type JobChange } from '../job/changes.ts';
import { type Data, getAt, type Keys, setKeys } from '../job/data.ts';
import type { Doc } from './doc.ts';
import { attempt, fetchPart } from './fetch-part.ts';
import { advance, beginHistory, type History, redo, settle, undo } from './history.ts';
import type { Notice } from './notice.ts';

/** How the job is kept: written, or not: the browser forbids it, or has no room left. */
type Saving = 'saved' | 'blocked' | 'full';

/** Everything on the page, and what can be done to it. */
export interface Desk {
  readonly doc: ReadonlySignal<Doc>;
  /** What lengths are shown in; the job is the same in both. */
  readonly units: Signal<Units>;
  /** The job read; what lies on the desk can always be read. */
  readonly job: ReadonlySignal<Job>;
  readonly report: ReadonlySignal<Report>;
  readonly problems: ReadonlySignal<readonly Problem[]>;
  /** Texts typed and not yet readable, by the path of their field. */
  readonly drafts: Signal<Readonly<Record<string, string>>>;
  /** What is wrong with sums, by the path of their field. */
  readonly sumFaults: Signal<Readonly<Record<string, string>>>;
  /** What undo and redo go through. */
  readonly history: ReadonlySignal<History<Doc>>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** While a size is moved by hand the drawing keeps its scale and place, and shows these sizes only. */
  readonly moving: Signal<readonly string[] | null>;
  /** Whether a hand has just let go: what is asked beyond the joint waits for the next task, so that a touch is answered first. */
  readonly late: Signal<boolean>;
  /** Works out what is asked beyond the joint, to be at hand when it is shown. */
  lookAhead(): void;
  /** Whether what stands at the side waits still: it is gone over in a task after that. */
  readonly asideLate: Signal<boolean>;
  /** Whether the report is that of the joint alone, which what stands beside the drawing does not follow. */
  readonly busy: ReadonlySignal<boolean>;
  /** Whether a hand drags it: at every frame of that only the sheet and its figures follow. */
  readonly dragged: Signal<boolean>;
  /** The dimensions that show the size being typed; null while nothing is. */
  readonly typing: Signal<readonly string[] | null>;
  /** An earlier joint to compare with. */
  readonly trace: Signal<Report | null>;
  /** Changes proposed and not made, whose joint is drawn faintly. */
  readonly proposal: Signal<readonly JobChange[] | null>;
  readonly saving: Signal<Saving>;
  /** Counts the times that the panel was tried in the groove. */
  readonly tries: Signal<number>;
  /** One line of what just happened; '' for nothing. */
  readonly notice: Signal<Notice>;
  /** Makes changes, one step of undo; those with the same key in a row are one. A job that could not be read is refused, with its faults. */
  change(changes: readonly JobChange[], key?: string): readonly Fault[];
  /** Makes a change to the shop, as `change` does to the job; the job has a shop of its own from then on. */
  changeShop(keys: Keys, value: Data | undefined, key?: string): readonly Fault[];
  /** Gives the shop a logo: the name that its file has it by, and the id of the picture kept here; null takes it out. */
  setLogo(logo: { readonly name: string; readonly id: string } | null): void;
  /** Another job's data read with the shop of this one. */
  read(data: Data): ReadJob;
  /** What would be wrong with changes. */
  check(changes: readonly JobChange[]): readonly Fault[];
  /** Ends a change made in one go. */
  settle(): void;
  undo(): void;
  redo(): void;
  /** Puts another job on the desk; the one before is one undo away. */
  replace(doc: Doc): void;
  /** Lays a job on the desk with the history that it was kept with, and what was half typed. */
  lay(history: History<Doc>, drafts?: Readonly<Record<string, string>>): void;
  value(path: string): Data | undefined;
}

const NOTHING: Notice = { text: '', kind: 'note' };

/** Whether a job has more to say than its joint does, or a problem that wants advice. */
function asksForMore({ spread, season, doors, cuts }: Job, joint: Report): boolean {
  const headed = cuts.some(({ head }) => head !== undefined);
  const more = spread !== undefined || season !== undefined || (doors ?? []).length > 0;
  return headed || more || joint.problems.length > 0;
}

type Answer = (job: Job) => Report;

/** What answers a whole job; null until it is fetched, and then everything that asked is told. */
interface WholeAnswer {
  readonly ready: ReadonlySignal<Answer | null>;
  /** Fetches it, once at a time; where that fails a notice says so, and the next call tries again. */
  fetch(): void;
}

const JOINT_ALONE =
  'The part of the page that checks knives, spread, seasons and doors could not be fetched. What you see is the joint alone.';

function fetchWholeAnswer(notice: Signal<Notice>): WholeAnswer {
  const ready = signal<Answer | null>(null);
  let fetching = false;
  return {
    ready,
    fetch() {
      if (fetching || ready.peek() !== null) return;
      fetching = true;
      void attempt(
        { notice },
        async () => {
          const { createWholeAnswer } = await fetchPart(() => import('./whole-report.ts'));
          ready.value = createWholeAnswer();
        },
        { missing: JOINT_ALONE },
      ).finally(() => {
        fetching = false;
      });
    },
  };
}

/** A joint of which the rest is not known yet: nothing says so far that it can be run. */
function withRestOpen(joint: Report): Report {
  const { statements } = joint;
  return statements.canBeRun === true ? { ...joint, statements: { ...statements, canBeRun: null } } : joint;
}

function sameData(one: Data | undefined, other: Data | undefined): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

/** A desk with a readable job on it. Throws RangeError for one that is not. */
export function createDesk(first: Doc, firstUnits?: Units): Desk {
  const jobs = new WeakMap<Doc, ReadJob>();
  const readJob = createJobReader();
  const read = (doc: Doc): ReadJob => {
    const known = jobs.get(doc) ?? readJob(doc.data, doc.shop?.data);
    jobs.set(doc, known);
    return known;
  };
  const start = read(first);
  if (start.job === null) throw new RangeError(`the first job cannot be read: ${start.faults[0]?.message}`);
  const notice = signal<Notice>(NOTHING);
  const whole = fetchWholeAnswer(notice);
  const history = signal<History<Doc>>(beginHistory(first));
  const doc = computed(() => history.value.present);
  const units = signal<Units>(firstUnits ?? start.job.units);
  const moving = signal<readonly string[] | null>(null);
  const job = computed(() => read(doc.value).job!);
  const late = signal(false);
  const busy = computed(() => moving.value !== null || late.value);
  const shownJob = computed(() => ({ ...job.value, units: units.value }));
  const report = computed(() => {
    const shown = shownJob.value;
    const joint = reportJoint(shown);
    if (busy.value || !asksForMore(shown, joint)) return joint;
    return whole.ready.value?.(shown) ?? withRestOpen(joint);
  });
  effect(() => {
    if (asksForMore(job.value, report.value)) whole.fetch();
  });

  const changed = (changes: readonly JobChange[]): Doc => ({
    ...doc.peek(),
    data: applyChanges(doc.peek().data, changes),
  });
  // The same job goes on through its changes; one that is laid on the desk is another.
  const firsts = new WeakMap<Doc, Doc>();
  const firstOf = (state: Doc) => firsts.get(state) ?? state;
  const put = (next: Doc, key: string | null = null) => {
    firsts.set(next, firstOf(doc.peek()));
    history.value = advance(history.peek(), next, key);
  };
  const drafts = signal<Readonly<Record<string, string>>>({});
  const sumFaults = signal<Readonly<Record<string, string>>>({});
  const step = (next: History<Doc> | null) => {
    if (next === null) return;
    // What was half typed, a sum still to be worked out too, was typed for the job that goes.
    const goes = firstOf(next.present) !== firstOf(doc.peek());
    batch(() => {
      if (goes) {
        drafts.value = {};
        sumFaults.value = {};
      }
      history.value = next;
    });
  };
  return {
    doc,
    units,
    job,
    report,
    problems: computed(() => report.value.problems),
    drafts,
    sumFaults,
    history,
    canUndo: computed(() => history.value.past.length > 0),
    canRedo: computed(() => history.value.future.length > 0),
    moving,
    late,
    lookAhead() {
      const shown = shownJob.peek();
      if (asksForMore(shown, reportJoint(shown))) whole.ready.peek()?.(shown);
    },
    asideLate: signal(false),
    busy,
    dragged: signal(false),
    typing: signal<readonly string[] | null>(null),
    trace: signal<Report | null>(null),
    proposal: signal<readonly JobChange[] | null>(null),
    saving: signal<Saving>('saved'),
    tries: signal(0),
    notice,
    change(changes, key) {
      const next = changed(changes);
      if (changes.every(([path, value]) => sameData(getAt(doc.peek().data, path), value))) return [];
      const { faults } = read(next);
      if (faults.length === 0) put(next, key);
      return faults;
    },
    changeShop(keys, value, key) {
      const before = doc.peek().shop ?? { name: 'shop.yaml', data: { fielded: 1, units: job.peek().units }, text: '' };
      const next = { ...doc.peek(), shop: { ...before, data: setKeys(before.data, keys, value) } };
      if (JSON.stringify(next.shop) === JSON.stringify(doc.peek().shop)) return [];
      const { faults } = read(next);
      if (faults.length === 0) put(next, key);
      return faults;
    },
    setLogo(logo) {
      const { shop, ...others } = doc.peek();
      if (shop === null) return;
      const { logo: _, ...before } = shop;
      const data = setKeys(before.data, ['logo'], logo?.name);
      const next = { ...others, shop: { ...before, data, ...(logo !== null && { logo: logo.id }) } };
      if (read(next).faults.length === 0) put(next);
    },
    read: (data) => readJob(data, doc.peek().shop?.data),
    check: (changes) => read(changed(changes)).faults,
    settle() {
      history.value = settle(history.value);
    },
    undo: () => step(undo(history.value)),
    redo: () => step(redo(history.value)),
    replace(next) {
      history.value = advance(history.value, next);
      drafts.value = {};
    },
    lay(next, typed = {}) {
      history.value = next;
      drafts.value = typed;
    },
    value: (path) => getAt(doc.value.data, path),
  };
}
