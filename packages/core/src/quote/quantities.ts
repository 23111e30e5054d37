import type { Job } from '../job/job.ts';
import { copeProfile } from '../joint/cope.ts';
import type { Report } from '../report/report.ts';
import type { Plan } from '../setup/plan.ts';
import type { FrameCut } from '../setup/set-up-report.ts';
import type { NotCounted, QuoteQuantities } from './quote-report.ts';

/**
 * What a quote counts, from a job's report and its plan: timber to order, set-ups, metres of edge that the cuts run, doors,
 * faces, and knives to be ground (formula Q4). `setUps` is null without a plan.
 *
 * Knives are those that the report lists and the shop does not have, on panel and frame alike, and those of cuts that name
 * neither knife nor head. What the frame takes beyond that is named in `notCounted`.
 */
export function countQuantities(job: Job, report: Report, plan: Plan | undefined): QuoteQuantities {
  const doors = report.doors ?? [];
  const face = doors.reduce(
    (sum, { width, height, quantity, leaves }) => sum + 2 * width * height * quantity * leaves,
    0,
  );
  return {
    timber: (report.timber ?? []).map(({ wood, thickness, order }) => ({ wood, thickness, order })),
    setUps: plan?.setUpCount ?? null,
    metres: (panelEdges(doors) * job.cuts.length + frameEdges(doors, plan)) / 1000,
    doors: doors.reduce((sum, { quantity, leaves }) => sum + quantity * leaves, 0),
    face: face / 1e6,
    knives: knivesToGrind(job, report),
    notCounted: listNotCounted(job),
  };
}

type Doors = NonNullable<Report['doors']>;

/** Round all panels once, mm. */
function panelEdges(doors: Doors): number {
  return doors
    .flatMap(({ panels }) => panels)
    .reduce((sum, { width, height, quantity }) => sum + 2 * (width + height) * quantity, 0);
}

/** Edges of the frames that their own cuts run, as far as the plan sets them up, mm. */
function frameEdges(doors: Doors, plan: Plan | undefined): number {
  const kinds = new Set((plan?.setups ?? []).flatMap(({ frame }) => frame?.kind ?? []));
  return [...kinds].reduce((sum, kind) => sum + doors.reduce((of, door) => of + edgesOf(kind, door), 0), 0);
}

/**
 * Edges of all doors of a kind that a cut on the frame runs, mm: the cope both ends of every part but the stiles, the sticking the
 * inside of every part along its whole length, the back edge every opening after glue-up.
 */
function edgesOf(kind: FrameCut['kind'], { parts, openings, quantity, leaves }: Doors[number]): number {
  const sum = (of: (part: Doors[number]['parts'][number]) => number) =>
    parts.reduce((all, part) => all + of(part) * part.quantity, 0);
  switch (kind) {
    case 'cope':
      return sum(({ part, width }) => (part === 'stile' ? 0 : 2 * width));
    case 'sticking':
      return sum(({ part, length }) => (part === 'mid rail' || part === 'muntin' ? 2 * length : length));
    case 'back edge':
      return openings.reduce((all, { width, height }) => all + 2 * (width + height), 0) * quantity * leaves;
  }
}

/** Knives that the shop does not have, by the names of their cuts: first the panel's, then the frame's. */
function knivesToGrind({ cuts }: Job, { knives = [] }: Report): string[] {
  const ofFrame = knives.filter(({ cut, knife }) => knife === null && !cuts.some(({ name }) => name === cut));
  return [...cuts.filter(({ knife }) => knife === undefined), ...ofFrame.map(({ cut }) => ({ name: cut }))].map(
    ({ name }) => name,
  );
}

/** The frame's own work that names no head, and what the job has no words for: its groove, tenons and mitres. */
function listNotCounted({ frame, doors }: Job): NotCounted[] {
  if (doors.length === 0) return [];
  const { sticking, stickingHead, backEdge } = frame;
  const coped = copeProfile(frame) !== undefined;
  const found: NotCounted[] = [];
  if (sticking !== undefined && stickingHead === undefined) {
    found.push({ what: 'sticking', missing: 'frame.sticking.head' });
    if (coped) found.push({ what: 'cope', missing: 'frame.sticking.head' });
  }
  if (backEdge !== undefined && backEdge.head === undefined)
    found.push({ what: 'back edge', missing: 'frame.backEdge.head' });
  found.push({ what: 'groove', missing: null });
  if (!coped) found.push({ what: 'joint', missing: null });
  return found;
}
