import { type Refusal, readFileData } from '@fielded/core';

/** What is said where a job stands in the place of a shop file. */
export const JOB_FOR_SHOP: Refusal = {
  refused: 'this is a job, not a shop file',
  instead: 'Name the file with heads, knives and machines here: the one that the job has under shop:',
};

/** A file with cuts, a panel or a frame. */
export function isJob(text: string): boolean {
  // Cheap test first: a text without these words need not be parsed.
  if (!/cuts|panel|frame/.test(text)) return false;
  const { value } = readFileData(text);
  if (typeof value !== 'object' || value === null) return false;
  return ['cuts', 'panel', 'frame'].some((key) => Object.hasOwn(value, key));
}

/** A file with knives, heads, machines or rules and without cuts; where this cannot be decided, the file counts as a job. */
export function isShop(text: string): boolean {
  // Cheap test first: a text without these words need not be parsed.
  if (!/knives|heads|machines|rules/.test(text)) return false;
  const { value } = readFileData(text);
  if (typeof value !== 'object' || value === null) return false;
  const has = (...keys: string[]) => keys.some((key) => Object.hasOwn(value, key));
  return has('knives', 'heads', 'machines', 'rules') && !has('cuts', 'panel', 'frame');
}
