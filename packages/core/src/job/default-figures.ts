import type { FitLimits } from '../joint/frame.ts';
import { parseLength } from '../measure/length.ts';
import { DEFAULTS } from './defaults.ts';

/** The defaults of `fit`, mm. */
export const DEFAULT_FIT: FitLimits = {
  target: millimetres(DEFAULTS.fit.target),
  snug: millimetres(DEFAULTS.fit.snug),
  loose: millimetres(DEFAULTS.fit.loose),
};

/** The default of the shop's `leastEngagement`, mm. */
export const LEAST_ENGAGEMENT: number = millimetres(DEFAULTS.rules.leastEngagement);

/** The default of the shop's `leastTongue`, mm. */
export const LEAST_TONGUE: number = millimetres(DEFAULTS.rules.leastTongue);

/** A default length, read as a file's length is read. */
function millimetres(text: string): number {
  const reading = parseLength(text, 'mm');
  if ('mm' in reading) return reading.mm;
  throw new RangeError(`the default ${text} is not a length`);
}
