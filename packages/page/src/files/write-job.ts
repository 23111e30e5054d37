import { type Document, isMap, isSeq, parseDocument, stringify } from 'yaml';
import type { Doc } from '../desk/doc.ts';
import { type Data, isGroup, type Keys } from '../job/data.ts';

/**
 * The job as the text of its file: comments, order and notation of the file it came from are kept, and only what was
 * changed is written anew. A job begun here is written plainly.
 */
export function writeJob({ data, source }: Doc): string {
  if (source === null) return stringify(data, { lineWidth: 110, flowCollectionPadding: true });
  const document = parseDocument(source, { version: '1.2' });
  change(document, [], JSON.parse(JSON.stringify(document.toJS())) as Data, data);
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

function change(document: Document, keys: Keys, before: Data | undefined, after: Data): void {
  if (JSON.stringify(before) === JSON.stringify(after)) return;
  const node = keys.length === 0 ? document.contents : document.getIn(keys as unknown[], true);
  if (isGroup(before) && isGroup(after) && isMap(node)) {
    for (const key of Object.keys(before)) if (!Object.hasOwn(after, key)) document.deleteIn([...keys, key]);
    for (const [key, value] of Object.entries(after)) change(document, [...keys, key], before[key], value);
    return;
  }
  if (Array.isArray(before) && Array.isArray(after) && isSeq(node)) {
    changeList(document, keys, before as Data[], after as Data[]);
    return;
  }
  document.setIn(keys as unknown[], document.createNode(after));
}

/** Entries that are still there keep their comments, wherever in the list they stand now. */
function changeList(document: Document, keys: Keys, before: readonly Data[], after: readonly Data[]): void {
  const list = document.getIn(keys as unknown[], true);
  if (!isSeq(list)) return;
  const nodes = [...list.items];
  const used = new Set<number>();
  const same = after.map((entry) => {
    const found = before.findIndex((old, i) => !used.has(i) && JSON.stringify(old) === JSON.stringify(entry));
    if (found >= 0) used.add(found);
    return found;
  });
  const origins = same.map((found, i) => {
    if (found >= 0) return found;
    const free = i < before.length && !used.has(i) ? i : -1;
    if (free >= 0) used.add(free);
    return free;
  });
  list.items = origins.map((from, i) => (from >= 0 ? nodes[from] : document.createNode(after[i])));
  origins.forEach((from, i) => {
    if (from >= 0) change(document, [...keys, i], before[from], after[i]!);
  });
}
