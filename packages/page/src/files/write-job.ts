import { type Document, isMap, isNode, isSeq, parseDocument, stringify } from 'yaml';
import type { Doc, ShopDoc } from '../desk/doc.ts';
import { type Data, isGroup, type Keys } from '../job/data.ts';

/**
 * The job as the text of its file: comments, order and notation of the file it came from are kept, and only what was
 * changed is written anew. A job begun here is written plainly.
 */
export function writeJob({ data, source }: Doc): string {
  return writeText(data, source);
}

/** The shop as the text of its file, in the same way. */
export function writeShop({ data, text }: ShopDoc): string {
  return writeText(data, text === '' ? null : text);
}

function writeText(data: Data, source: string | null): string {
  if (source === null) return stringify(data, { lineWidth: 110, flowCollectionPadding: true });
  const document = parseDocument(source.replace(/\r(?!\n)/g, '\n'), { version: '1.2' });
  change(document, [], JSON.parse(JSON.stringify(document.toJS())) as Data, data);
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

/** Writes what differs between two states of a value into the document, by its keys. */
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

/** Entries that are still there keep their comments and notation, wherever in the list they stand now. */
function changeList(document: Document, keys: Keys, before: readonly Data[], after: readonly Data[]): void {
  const list = document.getIn(keys as unknown[], true);
  if (!isSeq(list)) return;
  const nodes = [...list.items];
  const origins = findOrigins(before, after);
  const [first] = nodes;
  if (origins[0] !== 0 && isNode(first) && list.commentBefore) {
    // What stands above the first entry belongs to it, and goes with it.
    first.commentBefore = list.commentBefore;
    list.commentBefore = null;
  }
  list.items = origins.map((from, i) => (from >= 0 ? nodes[from] : document.createNode(after[i])));
  origins.forEach((from, i) => {
    if (from >= 0) change(document, [...keys, i], before[from], after[i]!);
  });
}

/** For each entry of a list the index it had before, -1 for a new one: the entry that is the same, else of the same name, else at the same index. */
function findOrigins(before: readonly Data[], after: readonly Data[]): number[] {
  const used = new Set<number>();
  const origins = after.map(() => -1);
  const nameOf = (entry: Data | undefined) => (isGroup(entry) ? entry.name : undefined);
  const ways: ((entry: Data, old: Data, i: number, k: number) => boolean)[] = [
    (entry, old) => JSON.stringify(entry) === JSON.stringify(old),
    (entry, old) => nameOf(entry) !== undefined && nameOf(entry) === nameOf(old),
    (_, __, i, k) => i === k,
  ];
  for (const isSame of ways) {
    after.forEach((entry, i) => {
      if (origins[i]! >= 0) return;
      const found = before.findIndex((old, k) => !used.has(k) && isSame(entry, old, i, k));
      if (found < 0) return;
      origins[i] = found;
      used.add(found);
    });
  }
  return origins;
}
