import type { Desk } from '../desk/desk.ts';
import { fetchPart } from '../desk/fetch-part.ts';
import { baseName } from './base-name.ts';
import { handOver } from './hand-over.ts';

/** Saves the shop as a file that keeps the comments of the one it came from. */
export async function saveShop(desk: Desk): Promise<void> {
  const { shop } = desk.doc.value;
  if (shop === null) return;
  const { writeShop } = await fetchPart(() => import('./write-job.ts'));
  const name = baseName(shop.name) || 'shop.yaml';
  handOver(name, writeShop(shop), 'text/yaml');
  desk.notice.value = {
    kind: 'note',
    text: `Saved as ${name}. Keep it beside the jobs that use it, and open it together with them.`,
  };
}
