import type { Desk } from '../desk/desk.ts';
import type { Keeper } from '../desk/keeper.ts';
import type { GivenFile } from './given-file.ts';
import { openFiles, unpackOne } from './open-text.ts';
import { readLink } from './share-link.ts';
import { takeIn } from './take-in.ts';

/**
 * Lays the job on the desk that came with the address: behind the #, or from the command that serves this page. Returns true if a job
 * was loaded; a notice says what is wrong with one that could not be read.
 */
export async function takeInAddress(desk: Desk, keeper: Keeper): Promise<boolean> {
  const { hash } = location;
  history.replaceState(null, '', location.pathname + location.search);
  const link = await readLink(hash);
  if (link !== null && 'message' in link) {
    desk.notice.value = { kind: 'fault', text: link.message };
    return false;
  }
  if (link !== null)
    return takeIn(
      desk,
      keeper,
      link.doc,
      'The job in the link is open; yours is under Job, kept in this browser.',
      false,
    );
  const answer = await fetch('job.json').catch(() => null);
  if (!answer?.ok) return false;
  const opened = await openFiles(((await answer.json()) as GivenFile[]).map(unpackOne), desk.readDoc);
  if (!('doc' in opened)) {
    desk.notice.value = { kind: 'fault', text: opened.message, lines: opened.lines };
    return false;
  }
  return takeIn(desk, keeper, opened.doc, `${opened.doc.fileName} is open.`, false);
}
