import type { Data } from '../job/data.ts';

/**
 * A digest of a job's data: the same data have the same digest, and data that differ share one by chance only (53 bits,
 * two mixed 32-bit multiplicative hashes). It tells whether a job is still as its file was; it is no secret.
 */
export function digestOf(data: Data): string {
  const text = JSON.stringify(data);
  let one = 0xdeadbeef;
  let other = 0x41c6ce57;
  for (let i = 0; i < text.length; i++) {
    const letter = text.charCodeAt(i);
    one = Math.imul(one ^ letter, 2654435761);
    other = Math.imul(other ^ letter, 1597334677);
  }
  one = Math.imul(one ^ (one >>> 16), 2246822507) ^ Math.imul(other ^ (other >>> 13), 3266489909);
  other = Math.imul(other ^ (other >>> 16), 2246822507) ^ Math.imul(one ^ (one >>> 13), 3266489909);
  return (4294967296 * (2097151 & other) + (one >>> 0)).toString(36);
}
