import type { Desk } from '../desk/desk.ts';
import { attempt, fetchPart } from '../desk/fetch-part.ts';
import { fileName, handOver } from './hand-over.ts';

/** Saves the job as a file that keeps the comments of the one it came from. */
export async function saveJob(desk: Desk): Promise<void> {
  const { doc } = desk;
  const save = async () => {
    const { writeJob } = await fetchPart(() => import('./write-job.ts'));
    const given = doc.value.fileName.replace(/\.(json|ya?ml)$/i, '');
    const name = doc.value.source === null ? fileName(desk.job.value.title, 'yaml') : `${given}.yaml`;
    handOver(name, writeJob(doc.value), 'text/yaml');
    desk.notice.value = { kind: 'note', text: `Saved as ${name}.` };
  };
  await attempt(desk, save, { fault: () => 'The job could not be written. It is still kept in this browser.' });
}
