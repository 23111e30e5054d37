import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useDesk } from '../desk/context.ts';
import type { Desk } from '../desk/desk.ts';
import type { Keeper } from '../desk/keeper.ts';
import { saveJob } from '../files/save-job.ts';
import { shareLink } from '../files/share-link.ts';
import { startJob } from '../job/start.ts';

/** New, open, save, share, and the jobs that this browser keeps. */
export function JobMenu({ keeper, open }: { keeper: Keeper; open: () => void }): JSX.Element {
  const desk = useDesk();
  const earlier = useSignal(keeper.earlier());
  const begin = async () => {
    const data = startJob(desk.units.value);
    await keeper.putAside();
    desk.replace({ data, source: null, fileName: 'job.yaml', shop: null }, false);
    desk.trace.value = null;
    desk.notice.value = { kind: 'note', text: 'A new job. The one before is under Job, kept in this browser.' };
    earlier.value = keeper.earlier();
  };
  const goBack = async (id: string) => {
    await keeper.bringBack(desk, id);
    earlier.value = keeper.earlier();
  };
  return (
    <>
      <button type="button" onClick={begin}>
        New
      </button>
      <button type="button" onClick={open}>
        Open a file…
      </button>
      <button type="button" onClick={() => saveJob(desk)}>
        Save as a file
      </button>
      <button type="button" onClick={() => share(desk)}>
        Copy a link to it
      </button>
      {earlier.value.length > 0 && (
        <>
          <p class="menu-head">Kept in this browser</p>
          {earlier.value.slice(0, 8).map(({ id, title, when }) => (
            <button key={id} type="button" class="earlier" onClick={() => goBack(id)}>
              <span>{title}</span>
              <small>{when}</small>
            </button>
          ))}
        </>
      )}
    </>
  );
}

async function share(desk: Desk): Promise<void> {
  const link = await shareLink(desk.doc.value, location.href);
  try {
    await navigator.clipboard.writeText(link);
    desk.notice.value = {
      kind: 'note',
      text: 'The link is copied. It holds the whole job; nothing was sent anywhere.',
    };
  } catch {
    history.replaceState(null, '', link);
    desk.notice.value = { kind: 'note', text: 'The address of this page now holds the whole job: copy it from there.' };
  }
}
