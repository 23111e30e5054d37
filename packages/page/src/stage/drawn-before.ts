import type { Report } from '@fielded/core';

/** So many drawings are kept: those tried for a sheet, for one that gives way to a keyboard, and with one figure in hand. Then it begins anew. */
const MOST = 40;

/** Gives a drawing of a report: the one that was made of it before from the same options, or else what `make` makes. */
export type DrawnBefore<S> = (report: Report, options: unknown, make: () => S) => S;

/**
 * Keeps the last drawings of the report at hand. A drawing is fitted into its room by trying scales, several times over where its
 * sheet changes its size or a figure is taken in hand and let go.
 */
export function keepDrawn<S>(): DrawnBefore<S> {
  const drawn = new Map<string, S>();
  let of: Report | null = null;
  return (report, options, make) => {
    const key = JSON.stringify(options);
    if (report !== of || (drawn.size === MOST && !drawn.has(key))) drawn.clear();
    of = report;
    if (!drawn.has(key)) drawn.set(key, make());
    return drawn.get(key)!;
  };
}
