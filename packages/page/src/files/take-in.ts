import type { Desk } from '../desk/desk.ts';
import type { Doc } from '../desk/doc.ts';
import { attempt, fetchPart } from '../desk/fetch-part.ts';
import type { Keeper } from '../desk/keeper.ts';
import type { GivenFile } from './given-file.ts';
import { areDrawings, areShop, openFiles, readFiles } from './open-text.ts';

/** Lays an opened job on the desk and says `said`. Where it cannot be read, a notice says why and the job there stays. */
export async function takeIn(desk: Desk, keeper: Keeper, doc: Doc, said: string, undoable: boolean): Promise<boolean> {
  const { job, faults } = desk.readDoc(doc);
  if (job === null) {
    desk.notice.value = {
      kind: 'fault',
      text: 'That is not a job that can be read; yours is as it was.',
      lines: faults.slice(0, 12).map(({ message }) => message),
    };
    return false;
  }
  const laid = await keeper.layFile(desk, doc, undoable);
  desk.notice.value =
    laid === 'changed'
      ? {
          kind: 'note',
          text: `${doc.fileName} is open, with what you changed in it here.`,
          action: { name: 'Take the file as it is', run: () => startFromFile(desk, doc) },
        }
      : { kind: 'note', text: said };
  return true;
}

/** Opens chosen or dropped files: a job, a shop, or the drawing of an outline. */
export async function takeInFiles(desk: Desk, keeper: Keeper, files: readonly File[]): Promise<void> {
  if (files.length === 0) return;
  desk.notice.value = { kind: 'note', text: 'Opening…' };
  const open = async () => {
    const given = await readFiles(files);
    if (!('message' in given) && areDrawings(given)) return takeInOutline(desk, given[0]!);
    if (!('message' in given) && areShop(given)) {
      const { takeShop } = await fetchPart(() => import('./open-shop.ts'));
      return takeShop(desk, files);
    }
    const opened = 'message' in given ? { message: given.message, lines: [] } : await openFiles(given, desk.readDoc);
    if (!('doc' in opened)) desk.notice.value = { kind: 'fault', text: opened.message, lines: opened.lines };
    else
      await takeIn(
        desk,
        keeper,
        opened.doc,
        [`${opened.doc.fileName} is open. The job before is under Job.`, opened.remark].join(' ').trim(),
        true,
      );
  };
  await attempt(desk, open, { fault: () => 'The file could not be read; your job is as it was.' });
}

/** A drawing without a job becomes the outline of the first cut on the front. */
async function takeInOutline(desk: Desk, file: GivenFile): Promise<void> {
  const { useOutlineFile } = await fetchPart(() => import('./outline-files.ts'));
  const index = Math.max(
    0,
    desk.job.value.cuts.findIndex(({ side }) => side === 'front'),
  );
  useOutlineFile(desk, index, file);
}

function startFromFile(desk: Desk, doc: Doc): void {
  desk.replace(doc);
  desk.notice.value = { kind: 'note', text: 'This is the file as it is. Undo brings your changes back.' };
}
