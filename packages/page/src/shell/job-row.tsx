import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import type { Desk } from '../desk/desk.ts';
import type { Keeper } from '../desk/keeper.ts';
import { type Done, type EarlierJob, keptJobs } from '../desk/kept-jobs.ts';
import { useOpenedPart } from '../entry/opened-part.ts';
import { handOver } from '../files/hand-over.ts';
import { JointThumb } from '../stage/joint-thumb.tsx';
import type { Places } from '../stage/places.ts';
import { goToJob, sayWhen } from './job-menu.tsx';

/** A kept job in the list: its picture, title, file and date, and what can be done with it. `reload` reads the list again. */
export function JobRow({
  job,
  keeper,
  places,
  reload,
}: {
  job: EarlierJob;
  keeper: Keeper;
  places: Places;
  reload: () => void;
}): JSX.Element {
  const desk = useDesk();
  const naming = useSignal(false);
  const endNaming = () => {
    naming.value = false;
  };
  const rename = async (title: string) => {
    endNaming();
    if (title !== '' && title !== job.title)
      sayDone(desk, await keptJobs(keeper.shelf).rename(job.id, title), `${job.title} is called ${title} now.`);
    reload();
  };
  return (
    <li>
      {naming.value ? (
        <RenameForm title={job.title} rename={rename} cancel={endNaming} />
      ) : (
        <button
          type="button"
          class="job"
          disabled={job.doc === null}
          onClick={() => goToJob(desk, keeper, places, job)}
        >
          {job.doc && <JointThumb doc={job.doc} />}
          <span dir="auto">{job.title}</span>
          <small>{[job.fileName, sayWhen(job)].filter(Boolean).join(' · ')}</small>
        </button>
      )}
      <JobDeeds
        job={job}
        save={() => handOver('kept-job.json', keptJobs(keeper.shelf).textOf(job.id) ?? '', 'application/json')}
        rename={() => {
          naming.value = !naming.value;
        }}
        copy={() => {
          sayDone(desk, keptJobs(keeper.shelf).copy(job.id), `${job.title} is copied.`);
          reload();
        }}
        remove={() => removeJob(desk, keeper, job, reload)}
      />
    </li>
  );
}

const NOT_DONE = {
  open: 'Another tab has that job open: do it there.',
  full: 'That could not be kept: this browser has no room left.',
} as const;

/** Says in a notice that an act on a kept job was done, or why it was not. */
export function sayDone(desk: Desk, done: Done, words: string): void {
  desk.notice.value = done === 'done' ? { kind: 'note', text: words } : { kind: 'fault', text: NOT_DONE[done] };
}

/** Deletes a job; the notice of it has a button that brings it back. */
async function removeJob(desk: Desk, keeper: Keeper, { id, title }: EarlierJob, reload: () => void): Promise<void> {
  const { done, restore } = await keptJobs(keeper.shelf).remove(id);
  if (done !== 'done') return sayDone(desk, done, '');
  reload();
  const bringBack = () => {
    restore();
    reload();
    desk.notice.value = { kind: 'note', text: `${title} is back.` };
  };
  desk.notice.value = {
    kind: 'note',
    text: `${title} is deleted.`,
    action: { name: 'Bring it back', run: bringBack, undoes: true },
  };
}

/** Asks for a job's new name. */
function RenameForm({
  title,
  rename,
  cancel,
}: {
  title: string;
  rename: (name: string) => Promise<void>;
  cancel: () => void;
}): JSX.Element {
  const form = useRef<HTMLFormElement>(null);
  const field = useRef<HTMLInputElement>(null);
  useOpenedPart(form, cancel);
  useLayoutEffect(() => field.current?.select(), []);
  return (
    <form
      class="naming"
      ref={form}
      onSubmit={(event) => {
        event.preventDefault();
        void rename(field.current?.value.trim() ?? '');
      }}
    >
      <input ref={field} type="text" aria-label={`New name of ${title}`} defaultValue={title} />
      <button type="submit">Keep the name</button>
    </form>
  );
}

/** What can be done with a kept job; one that cannot be read can only be saved as it is, or deleted. */
function JobDeeds({
  job,
  save,
  rename,
  copy,
  remove,
}: {
  job: EarlierJob;
  save: () => void;
  rename: () => void;
  copy: () => void;
  remove: () => void;
}): JSX.Element {
  return (
    <div class="deeds">
      {job.doc === null ? (
        <button type="button" class="quiet" onClick={save}>
          Save it as it is
        </button>
      ) : (
        <>
          <button type="button" class="quiet" aria-label={`Rename ${job.title}`} onClick={rename}>
            Rename
          </button>
          <button type="button" class="quiet" aria-label={`Copy ${job.title}`} onClick={copy}>
            Copy
          </button>
        </>
      )}
      <button type="button" class="quiet" aria-label={`Delete ${job.title}`} onClick={remove}>
        Delete
      </button>
    </div>
  );
}
