import type { Tree } from './tree.ts';
import { readYaml } from './yaml-tree.ts';

/** So many texts are kept, none of them longer than so many characters: a job or a shop takes a few thousand. */
const MOST_KEPT = 8;
const LONGEST_KEPT = 20_000;

/** The texts read last, the latest at the end, with what they hold. */
const kept = new Map<string, Tree>();

/**
 * What `readYaml` gives for a text, parsed once while it is among the last that were read: the jobs of a folder name one shop, and
 * a job that names a drawing is read again as soon as that can be opened. What it gives must never be changed.
 */
export function readKept(text: string): Tree {
  const tree = kept.get(text) ?? readYaml(text);
  if (text.length > LONGEST_KEPT) return tree;
  kept.delete(text);
  kept.set(text, tree);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT) kept.delete(oldest!);
  return tree;
}
