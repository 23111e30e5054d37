import type { Desk } from '../desk/desk.ts';
import { keptLogo } from '../desk/kept-logos.ts';
import { getAtKeys } from '../job/data.ts';
import { baseName } from './base-name.ts';
import { fileName, handOver } from './hand-over.ts';
import { writeJob, writeShop } from './write-job.ts';

/** Saves the job and its shop as one file, which the page opens again; outlines lie within the job. */
export function savePack(desk: Desk): void {
  const { doc, job } = desk;
  const { shop } = doc.value;
  const shopName = baseName(shop?.name ?? '') || 'shop.yaml';
  // A shop taken up here is named in the job, so that the two belong together wherever they go.
  const named = shop === null ? doc.value : { ...doc.value, data: { ...(doc.value.data as object), shop: shopName } };
  const logoName = getAtKeys(shop?.data, ['logo']);
  const logo = logoName === undefined ? null : keptLogo(shop?.logo);
  const fieldedFiles = [
    { name: 'job.yaml', text: writeJob(named) },
    ...(shop === null ? [] : [{ name: shopName, text: writeShop(shop) }]),
    ...(logo === null ? [] : [{ name: baseName(String(logoName)), text: logo.png }]),
  ];
  const name = fileName(job.value.title, 'fielded.json');
  handOver(name, JSON.stringify({ fieldedFiles }, null, 1), 'application/json');
  desk.notice.value = { kind: 'note', text: `Saved as ${name}: open it on any page like this one.` };
}
