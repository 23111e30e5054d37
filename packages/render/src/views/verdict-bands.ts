import type { Item } from '../scene.ts';
import { group, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';
import { sayChart } from '../words/english/chart.ts';
import type { InVoice } from '../words/lengths.ts';
import { type Axis, bar, chartStroke, FIGURE_HEIGHT, inUnit } from './chart.ts';

/** A word may stand out of its band by this in all, mm: the bands beside it are as wide or go without. */
const OVER = 2;

/** Clearances that part the verdicts, mm. */
interface Limits {
  readonly snug: number;
  readonly loose: number;
}

/**
 * The verdicts behind a chart: the clearances that slide as the palest tint, a thin dashed line at each limit, and the words.
 *
 * `across` are the chart's ends along the other axis; `upright` where clearance runs along the paper's width.
 */
export function drawVerdictBands(
  { scale }: Axis,
  { snug, loose }: Limits,
  voice: InVoice,
  across: readonly [number, number],
  upright: boolean,
): Item {
  const { units } = voice;
  const [low, high] = (scale.domain() as [number, number]).map((end) => end) as [number, number];
  const place = (value: number) => scale(Math.min(high, Math.max(low, value)));
  const [snugAt, looseAt] = [inUnit(snug, units), inUnit(loose, units)];
  const [near, far] = across;
  const tint = upright
    ? bar('slides', 'removed', place(snugAt), near, place(looseAt), far)
    : bar('slides', 'removed', near, place(snugAt), far, place(looseAt));
  const limits = [...new Set([0, snugAt, looseAt])].filter((limit) => limit > low && limit < high);
  const lines = limits.map((limit) =>
    upright
      ? chartStroke(`limit ${limit}`, 'old', scale(limit), near, scale(limit), far)
      : chartStroke(`limit ${limit}`, 'old', near, scale(limit), far, scale(limit)),
  );
  const words = [
    ['binds', low, 0],
    ['tight', 0, snugAt],
    ['slides', snugAt, looseAt],
    ['rattles', looseAt, high],
  ] as const;
  const labels = words.flatMap(([word, from, to]): Item[] => {
    const a = place(Math.max(from, low));
    const b = place(Math.min(to, high));
    const said = sayChart(`band.${word}`, {}, voice);
    // A band too narrow for its word goes without.
    const room = Math.abs(b - a);
    if (to <= from || room < (upright ? Math.max(9, textWidth(said, FIGURE_HEIGHT) - OVER) : FIGURE_HEIGHT * 1.15))
      return [];
    const middle = (a + b) / 2;
    const role = word === 'binds' ? 'trouble-text' : word === 'slides' ? 'judged-text' : 'quiet';
    return upright
      ? [text(word, role, middle, Math.min(near, far) - 1.5, said, FIGURE_HEIGHT, 'middle')]
      : [text(word, role, far + 2, middle + FIGURE_HEIGHT / 2, said, FIGURE_HEIGHT)];
  });
  return group('bands', [tint, ...lines, ...labels]);
}
