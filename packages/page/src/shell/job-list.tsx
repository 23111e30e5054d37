import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import type { Keeper } from '../desk/keeper.ts';
import type { Done, EarlierJob } from '../desk/kept-jobs.ts';
import { handOver } from '../files/hand-over.ts';
import { JointThumb } from '../stage/joint-thumb.tsx';
import type { Places } from '../stage/places.ts';
import { goToJob, sayWhen } from './job-menu.tsx';

/** Every job in this browser, each with its picture, under its own name; to open, rename, copy or delete. */
export function JobList({ keeper, places }: { keeper: Keeper; places: Places }): JSX.Element {
  const jobs = useSignal(keeper.earlier());
  const reload = () => {
    jobs.value = keeper.earlier();
  };
  // Another tab may put a job there or take one away.
  useEffect(() => {
    addEventListener('storage', reload);
    return () => removeEventListener('storage', reload);
  });
  return (
    <section class="jobs" aria-labelledby="jobs-name">
      <h2 id="jobs-name">Jobs kept in this browser</h2>
      <ul>
        <BoardRow keeper={keeper} reload={reload} />
        {jobs.value.map((job) => (
          <JobRow key={job.id} job={job} keeper={keeper} places={places} reload={reload} />
        ))}
      </ul>
      <button
        type="button"
        class="main"
        onClick={() => {
          places.place.value = 'joint';
        }}
      >
        Back to the board
      </button>
    </section>
  );
}

/** The job on the board: it is named above, and can be copied here. */
function BoardRow({ keeper, reload }: { keeper: Keeper; reload: () => void }): JSX.Element {
  const desk = useDesk();
  const title = String(desk.value('title') ?? 'Untitled job');
  return (
    <li>
      <div class="job">
        <JointThumb doc={desk.doc.value} />
        <span>{title}</span>
        <small>On the board</small>
      </div>
      <div class="deeds">
        <button
          type="button"
          class="quiet"
          aria-label={`Copy ${title}`}
          onClick={() => {
            const done = keeper.copy(keeper.jobId());
            if (done !== 'done') desk.notice.value = { kind: 'fault', text: NOT_DONE[done] };
            reload();
          }}
        >
          Copy
        </button>
      </div>
    </li>
  );
}

const NOT_DONE = {
  open: 'Another tab has that job open: do it there.',
  full: 'That could not be kept: this browser has no room left.',
} as const;

function JobRow({
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
  /** Says why something was not done; whether it was. */
  const sayDone = (done: Done): boolean => {
    if (done !== 'done') desk.notice.value = { kind: 'fault', text: NOT_DONE[done] };
    return done === 'done';
  };
  const rename = async (title: string) => {
    naming.value = false;
    if (title !== '' && title !== job.title) sayDone(await keeper.rename(job.id, title));
    reload();
  };
  const remove = async () => {
    const { done, restore } = await keeper.remove(job.id);
    if (!sayDone(done)) return;
    reload();
    desk.notice.value = {
      kind: 'note',
      text: `${job.title} is deleted.`,
      action: {
        name: 'Bring it back',
        run: () => {
          restore();
          reload();
          desk.notice.value = { kind: 'note', text: `${job.title} is back.` };
        },
      },
    };
  };
  return (
    <li>
      {naming.value ? (
        <RenameForm title={job.title} rename={rename} />
      ) : (
        <button
          type="button"
          class="job"
          disabled={job.doc === null}
          onClick={() => goToJob(desk, keeper, places, job)}
        >
          {job.doc && <JointThumb doc={job.doc} />}
          <span>{job.title}</span>
          <small>
            {job.fileName} {sayWhen(job)}
          </small>
        </button>
      )}
      <JobDeeds
        job={job}
        save={() => handOver('kept-job.json', keeper.textOf(job.id) ?? '', 'application/json')}
        rename={() => {
          naming.value = !naming.value;
        }}
        copy={() => {
          sayDone(keeper.copy(job.id));
          reload();
        }}
        remove={remove}
      />
    </li>
  );
}

/** Asks for a job's new name. */
function RenameForm({ title, rename }: { title: string; rename: (name: string) => Promise<void> }): JSX.Element {
  const field = useRef<HTMLInputElement>(null);
  return (
    <form
      class="naming"
      onSubmit={(event) => {
        event.preventDefault();
        void rename(field.current?.value.trim() ?? '');
      }}
    >
      <input ref={field} type="text" aria-label={`New name of ${title}`} defaultValue={title} autofocus />
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
