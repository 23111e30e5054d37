import { keepTogether } from './keep-together.ts';

/** What the fields of the page call the places of a job file. */
const NAMES: readonly (readonly [RegExp, string])[] = [
  [/\bpanel\.thickness\b/g, 'the stock'],
  [/\bpanel\.measured\b/g, 'the stock as measured'],
  [/\bpanel\.species\b/g, 'the wood'],
  [/\bpanel\.width\b/g, 'the width of the panel'],
  [/\bframe\.thickness\b/g, 'the frame'],
  [/\bframe\.groove\.(width|depth|setback)\b/g, "the groove's $1"],
  [/\bframe\.swellGap\b/g, 'the gap for swelling'],
  [/\bcuts\[\d+\](?:\.profile)?\.(depth|reach|land|shoulder|balance|run|name)\b/g, 'the $1'],
];

/** A message of the core in the page's own words: places of the job file under the names of their fields, lengths whole. */
export function plainMessage(message: string): string {
  return keepTogether(NAMES.reduce((words, [path, name]) => words.replace(path, name), message));
}
