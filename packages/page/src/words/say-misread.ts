import type { Misreading } from '@fielded/core';

/** What is wrong with a figure as typed, and what to write instead; of nothing typed only that. */
export function sayMisread(typed: string, { read, instead }: Misreading): string {
  return `${typed && `${typed} is ${read}. `}Write ${instead}.`;
}
