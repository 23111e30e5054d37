import type { Voice } from '../problem/language.ts';
import { say, told } from '../problem/say.ts';
import type { SetUp } from '../setup/set-up-report.ts';

/**
 * How the shaped heads are run in a set-up, in sentences: which half, on which bearing or template, and what a ring fence falls
 * short beside its mark. Nothing where no shaped head is run.
 */
export function sayCurve({ curve }: SetUp, voice: Voice): string[] {
  if (curve === undefined) return [];
  const { shoulder, tears, guide } = curve;
  const { bearing, ring } = guide;
  const half =
    shoulder === 'both'
      ? say('curve.whole', { shoulder: told(`half.${tears}`, {}) }, voice)
      : say('curve.half', { shoulder: told(`half.${shoulder}`, {}) }, voice);
  const lines = [half, sayBearing(bearing, voice)];
  if (ring === null) return lines;
  const [at5, at10, at20] = ring.short.map(({ short }) => short);
  const shortfall = { ring: ring.diameter, setOff: ring.setOff, at5: at5!, at10: at10!, at20: at20! };
  lines.push(
    ring.within === null
      ? say('curve.ring-exact', { ring: ring.diameter }, voice)
      : say('curve.ring', { ...shortfall, along: ring.within.along, short: ring.within.short }, voice),
  );
  return lines;
}

function sayBearing(
  { needed, available, outside }: NonNullable<SetUp['curve']>['guide']['bearing'],
  voice: Voice,
): string {
  if (available === null || outside === null) return say('curve.bearing-wanted', { needed }, voice);
  if (outside === 0) return say('curve.bearing', { needed }, voice);
  const figures = { needed, available, outside: Math.abs(outside) };
  return say(outside > 0 ? 'curve.template-outside' : 'curve.template-inside', figures, voice);
}
