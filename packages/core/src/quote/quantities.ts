import type { Job } from '../job/job.ts';
import type { Report } from '../report/report.ts';
import type { Plan } from '../setup/plan.ts';
import type { QuoteQuantities } from './quote-report.ts';

/**
 * What a quote counts, from a job's report and its plan: timber to order, set-ups, metres of edge that the cuts run, doors,
 * faces, and knives to be ground (those of cuts that name no knife of the shop). `setUps` is null without a plan.
 */
export function countQuantities(job: Job, report: Report, plan: Plan | undefined): QuoteQuantities {
  const doors = report.doors ?? [];
  const edges = doors
    .flatMap(({ panels }) => panels)
    .reduce((sum, { width, height, quantity }) => sum + 2 * (width + height) * quantity, 0);
  const face = doors.reduce(
    (sum, { width, height, quantity, leaves }) => sum + 2 * width * height * quantity * leaves,
    0,
  );
  return {
    timber: (report.timber ?? []).map(({ wood, thickness, order }) => ({ wood, thickness, order })),
    setUps: plan?.setUpCount ?? null,
    metres: (edges * job.cuts.length) / 1000,
    doors: doors.reduce((sum, { quantity, leaves }) => sum + quantity * leaves, 0),
    face: face / 1e6,
    knives: job.cuts.filter(({ knife }) => knife === undefined).map(({ name }) => name),
  };
}
