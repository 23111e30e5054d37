import { createJobReader, type ReadJob, type Report, type Units } from '@fielded/core';
import { batch, computed, signal } from '@preact/signals';
import type { JobChange } from '../job/changes.ts';
import { getAt } from '../job/data.ts';
import type { Desk, Saving } from './desk.ts';
import type { Doc } from './doc.ts';
import { beginHistory, type History } from './history.ts';
import { followJob } from './live-report.ts';
import { createChanges } from './make-changes.ts';
import type { Notice } from './notice.ts';
import { createSteps } from './undo-steps.ts';

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
  const { put, undo, redo, ...steps } = createSteps(history);
  /** A step to a job in another unit shows that job in its own, as opening it did: what is typed next is read in it. */
  const showInItsUnit = (step: () => void) => () =>
    batch(() => {
      const before = job.peek().units;
      step();
      const now = job.peek().units;
      if (now !== before) units.value = now;
    });
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
    undo: showInItsUnit(undo),
    redo: showInItsUnit(redo),
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
