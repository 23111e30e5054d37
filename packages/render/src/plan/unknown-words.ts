import { PLAN_WORDS, sayPlan } from '../words/english/plan.ts';
import type { InVoice } from '../words/lengths.ts';

/** What a set-up's sheet can name in a few words; the order of work says how to have it checked. */
type Lacking = keyof typeof PLAN_WORDS extends infer K ? (K extends `lacks.${infer N}` ? N : never) : never;

/**
 * The few words for a place in a file.
 *
 * @example nameUnknown('machines.main.power', { units: 'mm' }) // 'power of the motor'
 */
export function nameUnknown(path: string, voice: InVoice): string {
  const key = path.slice(path.lastIndexOf('.') + 1);
  return Object.hasOwn(PLAN_WORDS, `lacks.${key}`) ? sayPlan(`lacks.${key as Lacking}`, {}, voice) : path;
}
