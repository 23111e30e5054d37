import { readFileData } from '@fielded/core';

/** A file without cuts that speaks of knives, heads or machines; one that cannot be told is a job. */
export function isShop(text: string): boolean {
  // What speaks of none of these needs no second reading.
  if (!/knives|heads|machines|rules/.test(text)) return false;
  const { value } = readFileData(text);
  if (typeof value !== 'object' || value === null) return false;
  const has = (...keys: string[]) => keys.some((key) => Object.hasOwn(value, key));
  return has('knives', 'heads', 'machines', 'rules') && !has('cuts', 'panel', 'frame');
}
