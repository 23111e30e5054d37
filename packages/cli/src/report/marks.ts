import { type Report, type Stated, stateRun, verdictWord } from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint, PaintTone } from '../terminal/paint.ts';

/** A mark of its own shape for each verdict, so that colour is not needed to tell them apart. */
const MARKS: Readonly<Record<string, readonly [mark: string, tone: PaintTone]>> = {
  'will-not-enter': ['✗', 'error'],
  'stops-short': ['⊣', 'error'],
  tight: ['»', 'warning'],
  sliding: ['✓', 'good'],
  loose: ['○', 'warning'],
};

/** The mark and the word of a verdict, such as `✓ sliding`. */
export function markVerdict(
  { fit: { verdict }, ...voice }: Pick<Report, 'fit' | 'units' | 'language'>,
  paint: Paint,
): string {
  const [mark, tone] = MARKS[verdict ?? ''] ?? (['⊗', 'error'] as const);
  return paint(`${mark} ${safe(verdictWord(verdict, voice))}`, tone);
}

/** A mark of its own shape for each answer to a statement. */
const STATED: Readonly<Record<Stated['mark'], readonly [mark: string, tone: PaintTone]>> = {
  yes: ['✓', 'good'],
  no: ['✗', 'error'],
  open: ['–', 'faint'],
};

/** Whether a job can be run, with its mark, such as `– running not checked`. It always stands beside the verdict. */
export function markRun(report: Report, paint: Paint): string {
  const { mark, words } = stateRun(report);
  const [sign, tone] = STATED[mark];
  return paint(`${sign} ${safe(words)}`, tone);
}
