import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import type { Keeper } from '../desk/keeper.ts';
import { keptJobs } from '../desk/kept-jobs.ts';
import { JointThumb } from '../stage/joint-thumb.tsx';
import type { Places } from '../stage/places.ts';
import { adoptStyles } from '../style/adopt-styles.ts';
import jobsStyles from '../style/jobs.css?inline';
import { JobRow, sayDone } from './job-row.tsx';

adoptStyles(jobsStyles);

/** Every job in this browser, each with its picture, under its own name; to open, rename, copy or delete. */
export function JobList({ keeper, places }: { keeper: Keeper; places: Places }): JSX.Element {
  const jobs = useSignal(keptJobs(keeper.shelf).earlier());
  const reload = () => {
    jobs.value = keptJobs(keeper.shelf).earlier();
  };
  // Another tab may put a job there or take one away.
  useEffect(() => {
    addEventListener('storage', reload);
    return () => removeEventListener('storage', reload);
  });
  const leave = () => {
    places.place.value = 'joint';
  };
  return (
    <section class="jobs" aria-labelledby="jobs-name">
      <h2 id="jobs-name">Jobs kept in this browser</h2>
      <ul aria-label="Jobs">
        <BoardRow keeper={keeper} reload={reload} />
        {jobs.value.map((job) => (
          <JobRow key={job.id} job={job} keeper={keeper} places={places} reload={reload} />
        ))}
      </ul>
      <button type="button" class="main" onClick={leave}>
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
            sayDone(desk, keptJobs(keeper.shelf).copy(keeper.jobId()), `${title} is copied.`);
            reload();
          }}
        >
          Copy
        </button>
      </div>
    </li>
  );
}
