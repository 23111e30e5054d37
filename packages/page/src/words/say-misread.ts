import type { Misreading } from '@fielded/core';

/** What is wrong with a figure as typed, and what to write instead. */
export function sayMisread(typed: string, { read, instead }: Misreading): string {
  return `${typed || 'Nothing'} is ${read}. Write ${instead}.`;
}
