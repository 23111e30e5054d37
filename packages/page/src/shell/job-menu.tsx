import type { JSX } from 'preact';
import { useDesk } from '../desk/context.ts';
import type { Desk } from '../desk/desk.ts';
import { attempt } from '../desk/fetch-part.ts';
import type { Keeper } from '../desk/keeper.ts';
import { type EarlierJob, keptJobs } from '../desk/kept-jobs.ts';
import { saveJob } from '../files/save-job.ts';
import { savePack } from '../files/save-pack.ts';
import { MOST_LINK, shareLink } from '../files/share-link.ts';
import { JointThumb } from '../stage/joint-thumb.tsx';
import type { Places } from '../stage/places.ts';
import { adoptStyles } from '../style/adopt-styles.ts';
import menuStyles from '../style/menu-lists.css?inline';

adoptStyles(menuStyles);

/** How many kept jobs the menu shows; all are in the list of jobs. */
const AT_HAND = 4;

/** New, open, save, share, and the jobs last worked on. */
export function JobMenu({ keeper, places, open }: { keeper: Keeper; places: Places; open: () => void }): JSX.Element {
  const desk = useDesk();
  const earlier = keptJobs(keeper.shelf).earlier();
  const go = (place: 'new' | 'jobs' | 'keys') => () => {
    places.place.value = place;
  };
  return (
    <>
      <button type="button" onClick={go('new')}>
        New…
      </button>
      <button type="button" onClick={open}>
        Open files…
      </button>
      <button type="button" onClick={() => saveJob(desk)}>
        Save as a file
      </button>
      {desk.doc.value.shop !== null && (
        <button type="button" onClick={() => savePack(desk)}>
          Save with its shop, in one file
        </button>
      )}
      <button type="button" onClick={() => share(desk)}>
        Copy a link to it
      </button>
      {earlier.length > 0 && (
        <>
          <p class="menu-head">Kept in this browser</p>
          {earlier.slice(0, AT_HAND).map((job) => (
            <button key={job.id} type="button" class="earlier" onClick={() => goToJob(desk, keeper, places, job)}>
              {job.doc && <JointThumb doc={job.doc} />}
              <span>{job.title}</span>
              <small>{sayWhen(job)}</small>
            </button>
          ))}
        </>
      )}
      <button type="button" onClick={go('jobs')}>
        All jobs kept here…
      </button>
      <button type="button" onClick={go('keys')}>
        Keys
      </button>
    </>
  );
}

/** Goes to an earlier job; a notice says whether it is a copy, or cannot be read. */
export async function goToJob(desk: Desk, keeper: Keeper, places: Places, { id, title }: EarlierJob): Promise<void> {
  await attempt(desk, async () => {
    const came = await keeper.bringBack(desk, id);
    if (came !== 'unreadable') places.place.value = 'joint';
    desk.notice.value = {
      there: { kind: 'note', text: `${title} is on the board.` },
      copy: { kind: 'note', text: 'Another tab has that job open; here you work on a copy of it.' },
      unreadable: {
        kind: 'fault',
        text: 'That job cannot be read by this version of the page. Save it as a file from the list of jobs.',
      },
    }[came] as Desk['notice']['value'];
  });
}

/** When a job was last kept, in the reader's own way of writing dates. */
export function sayWhen({ savedAt }: EarlierJob): string {
  return savedAt === 0 ? '' : new Date(savedAt).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

async function share(desk: Desk): Promise<void> {
  const link = await shareLink(desk.doc.value, location.href);
  const asFile = {
    name: 'Save it as a file',
    run: () => (desk.doc.value.shop === null ? void saveJob(desk) : savePack(desk)),
  };
  if (link.length > MOST_LINK) {
    desk.notice.value = {
      kind: 'fault',
      text: 'The job is too large for a link. Hand it on as a file.',
      action: asFile,
    };
    return;
  }
  const copied = await navigator.clipboard.writeText(link).then(
    () => true,
    () => false,
  );
  if (!copied) history.replaceState(null, '', link);
  desk.notice.value = {
    kind: 'note',
    text: `${copied ? 'The link is copied' : 'The address of this page now holds the whole job'}. ${shareWords(location)}`,
    ...(isOwnMachine(location) && { action: asFile }),
  };
}

/** Whether an address works only on this machine. */
function isOwnMachine({ protocol, hostname }: Location): boolean {
  return protocol === 'file:' || hostname === 'localhost' || /^127\.|^\[?::1/.test(hostname);
}

/** What a link can do, by the address it starts with. */
function shareWords(address: Location): string {
  if (isOwnMachine(address)) return 'It opens on this machine only: to hand the job on, save it as a file.';
  return 'It holds the whole job as it is now; nothing was sent anywhere.';
}
