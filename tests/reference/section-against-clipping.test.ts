// Checks the section engine against a general-purpose polygon clipping library (clipper2-ts, a port of Clipper2) on finely
// flattened copies of the same jobs, worked out from the shapes' definitions without any code of the engine.
import { evaluateJoint } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { extrapolated, flattenedCutArea, flattenedSection, heightSpan } from '../support/flattened-section.ts';
import { type Alignment, randomJob } from '../support/random-job.ts';
import { trials } from '../support/trials.ts';

/**
 * Chords to an arc; at twice this as well, for the extrapolated area. Surfaces to 1e-5 mm want a finer copy: no arc here, of r mm
 * through θ, has an r·θ²/8 above 6.2 mm, so that n chords leave two surfaces at most 12.4/n² mm off, 8e-6.
 */
const STEPS = 150;
const FINE_STEPS = 1250;

const CASES: { alignment: Alignment; count: number; first: number }[] = [
  { alignment: 'free', count: trials(100, 300), first: 1 },
  { alignment: 'exact', count: trials(60, 120), first: 10_001 },
  { alignment: 'near', count: trials(60, 120), first: 20_001 },
];

describe.each(CASES)('$count jobs with $alignment alignment', ({ alignment, count, first }) => {
  const jobs = Array.from({ length: count }, (_, i) => {
    const job = randomJob(first + i, alignment);
    return { job, ...evaluateJoint(job) };
  });

  it('agree on the area removed, the whole and each cut, to 2e-5 mm²', () => {
    for (const { job, section } of jobs) {
      const stock = section.width * section.thickness;
      const removed = stock - extrapolated((n) => flattenedSection(job, n).area, STEPS);
      expect(Math.abs(section.removedArea - removed), `${job.title} removed`).toBeLessThan(2e-5);
      job.cuts.forEach((cut, k) => {
        const alone = extrapolated((n) => flattenedCutArea(job, cut, n), STEPS);
        expect(Math.abs(section.cuts[k]!.removedArea - alone), `${job.title} ${cut.name}`).toBeLessThan(2e-5);
      });
    }
  });

  it('agree on the groove that the tongue needs to 1e-5 mm', () => {
    let compared = 0;
    for (const { job, tongue } of jobs) {
      if (tongue.grooveNeeded === null) continue;
      const { wood } = flattenedSection(job, FINE_STEPS);
      const { least, most } = heightSpan(wood, 0, tongue.insertion);
      expect(Math.abs(tongue.grooveNeeded - (most - least)), job.title).toBeLessThan(1e-5);
      compared++;
    }
    expect(compared).toBeGreaterThan(count / 2);
  });
});
