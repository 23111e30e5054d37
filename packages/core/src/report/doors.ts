import { SAME_LENGTH } from '@fielded/geometry';
import { hundredths } from '../door/blank-rules.ts';
import { type BlankItem, type BlankList, makeBlanks } from '../door/blanks.ts';
import { type Door, doorInsertion, layOpenings, panelSize } from '../door/door.ts';
import type { DoorReport, Timber } from '../door/door-report.ts';
import { alongGrain, listPanels, type PanelSection } from '../door/panels.ts';
import { listParts } from '../door/parts.ts';
import { type CutRoundHead, reportShapedHead, shapedPanel } from '../door/shaped-head-report.ts';
import { type FinishedPiece, listTimber } from '../door/timber.ts';
import { rulesOf } from '../job/defaults.ts';
import type { Job } from '../job/job.ts';
import { designInsertion } from '../joint/fit.ts';
import { endGapOf, jointOf } from '../joint/frame.ts';
import type { Problem } from '../problem/problem.ts';
import { say, sayProblem } from '../problem/say.ts';
import { headNamed } from '../shop/shop.ts';
import { panelSection } from './panel-section.ts';
import type { PreparedJob } from './prepared-job.ts';
import { speciesNamed } from './seasons.ts';
import { findShapedHeadProblems } from './shaped-head-problems.ts';

/** Doors with their parts and panels, the blanks that narrow panels ride in, the timber to order. */
export interface DoorsAnswer extends BlankList {
  readonly doors: readonly DoorReport[];
  readonly timber: readonly Timber[];
  readonly problems: readonly Problem[];
}

/** All that follows from a job's doors; undefined where it gives none. */
export function answerDoors(prepared: PreparedJob): DoorsAnswer | undefined {
  const { job } = prepared;
  if (job.doors.length === 0) return undefined;
  const section = panelSection(prepared);
  const doors = job.doors.map((door) => reportDoor(job, door, section));
  const items: BlankItem[] = [];
  for (const { name, panels } of doors) {
    for (const panel of panels) {
      const { across, length } = alongGrain(panel);
      const item = { door: name, width: across, length };
      for (let i = 0; i < panel.quantity; i++) items.push(item);
    }
  }
  const rules = rulesOf(job);
  const { blanks, leftOver } = makeBlanks(items, rules, job.spares ?? false);
  const timber = listTimber(finishedPieces(job, doors, blanks), rules);
  return { doors, blanks, leftOver, timber, problems: doorProblems(prepared, doors, leftOver) };
}

function reportDoor(job: Job, door: Door, section: PanelSection): DoorReport {
  const insertion = doorInsertion(job, door);
  const openings = layOpenings(door);
  const opening = { width: openings[0]!.width, height: openings[0]!.height };
  const { head, ...own } = door;
  const gaps = { across: job.frame.swellGap, along: endGapOf(job.frame) };
  return {
    ...own,
    ...(head && {
      head: reportShapedHead(
        { ...door, head },
        shapedPanel(head, openings[0]!, insertion),
        cutsRoundHead(job),
        section.field,
        gaps,
        grooveJoint(job),
        job.shop?.machines ?? {},
      ),
    }),
    opening,
    panel: panelSize(opening, insertion),
    openings,
    parts: listParts(door, jointOf(job.frame), job.frame.thickness, frameWoodName(job)),
    panels: listPanels(door, insertion, section),
  };
}

/** How far a rail's ends lie in the grooves of the stiles: mitred rails meet the stiles outside them. */
function grooveJoint({ frame }: Job): number {
  const { kind, length } = jointOf(frame);
  return kind === 'mitre' ? 0 : length;
}

/** The cuts as they go round a shaped head: with the cutting radius of the cutter head each names. */
function cutsRoundHead({ cuts, shop }: Job): CutRoundHead[] {
  return cuts.map(({ name, side, run, reach, head, tilt }) => {
    // Only a cutter whose axis stands square to the panel goes round it on a bearing.
    const found = tilt === 0 ? headNamed(shop, head) : undefined;
    return { name, side, run, reach, cuttingRadius: found ? found.cuttingDiameter / 2 : null };
  });
}

/** Frame parts, panels that are glued up by themselves, and blanks. */
function finishedPieces(job: Job, doors: readonly DoorReport[], blanks: BlankList['blanks']): FinishedPiece[] {
  const wood = woodName(job.panel);
  const parts = doors.flatMap(({ name, parts }) =>
    parts.map(({ part, ...piece }) => ({
      what: say('timber.part', { part: say(`part.${part}`, {}, job), door: name }, job),
      ...piece,
    })),
  );
  const thickness = job.panel.thickness;
  const riding = new Map<string, number>();
  for (const blank of blanks) {
    for (const { door, width } of blank.panels) {
      const key = ridingKey(door, width, blank.length);
      riding.set(key, (riding.get(key) ?? 0) + blank.quantity);
    }
  }
  const panels = doors.flatMap(({ name, panels }) =>
    panels.flatMap((panel) => {
      const { across, length } = alongGrain(panel);
      // No blanks: nothing to look up.
      const rides = riding.size === 0 ? 0 : riding.get(ridingKey(name, across, length));
      const quantity = panel.quantity - (rides ?? 0);
      return quantity > 0
        ? [{ what: say('timber.panel', { door: name }, job), wood, quantity, length, width: across, thickness }]
        : [];
    }),
  );
  const glued = blanks.map(({ length, width, quantity, panels }) => ({
    what: say('timber.blank', { doors: [...new Set(panels.map(({ door }) => door))].join(', ') }, job),
    wood,
    quantity,
    length,
    width,
    thickness,
  }));
  return [...parts, ...panels, ...glued];
}

/** The frames' wood: the panel's unless the job names theirs. */
function frameWoodName({ frame, panel }: Job): string {
  return woodName(frame.species === undefined ? panel : frame);
}

/** A wood as the table calls it, or as the job does; '' where it names none. */
function woodName(part: Pick<Job['panel'], 'species' | 'wood'>): string {
  return speciesNamed(part)?.name ?? part.species ?? '';
}

/** Panels of one door, width and length. */
function ridingKey(door: string, width: number, length: number): string {
  return `${door} ${width.toFixed(6)} ${hundredths(length)}`;
}

function doorProblems(prepared: PreparedJob, doors: readonly DoorReport[], leftOver: BlankList['leftOver']): Problem[] {
  const { job, fit } = prepared;
  const least = rulesOf(job).leastEndGrainWidth;
  const narrow = leftOver.map(({ door, width, quantity, missing }) => {
    const k = job.doors.findIndex(({ name }) => name === door);
    const narrow = { door, width, quantity, least };
    const more = { about: { door } };
    return missing > 0
      ? sayProblem('too-narrow-for-end-grain', `doors[${k}]`, { ...narrow, missing }, job, more)
      : sayProblem('too-narrow-for-end-grain.any', `doors[${k}]`, narrow, job, more);
  });
  return [...narrow, ...endProblems(job, fit.deepestInsertion), ...findShapedHeadProblems(prepared, doors)];
}

/** The ends must hold as the edges do: go in as far as their gap says, with enough wood in the groove. */
function endProblems(job: Job, deepest: number | null): Problem[] {
  const { frame } = job;
  if (endGapOf(frame) === frame.swellGap) return [];
  const least = rulesOf(job).leastEngagement;
  const insertion = frame.groove.depth - endGapOf(frame);
  if (deepest !== null && deepest >= designInsertion(frame) - SAME_LENGTH && insertion > deepest + 1e-6)
    return [sayProblem('ends-stop-short', 'frame.endGap', { insertion, deepest }, job)];
  if (insertion >= least - SAME_LENGTH) return [];
  return [sayProblem('little-engagement.ends', 'frame.endGap', { insertion, least }, job)];
}
