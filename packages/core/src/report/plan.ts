import { isNarrow } from '../door/blank-rules.ts';
import { hollowOf } from '../door/shaped-head.ts';
import type { Cut } from '../machining/cut.ts';
import { makePlan, type Planned } from '../setup/make-plan.ts';
import type { PanelsToRun } from '../setup/steps.ts';
import { answerDoors, type DoorsAnswer } from './doors.ts';
import { canGrindFor } from './knives.ts';
import type { PreparedJob } from './prepared-job.ts';

/**
 * The set-up of every cut that names a head, and the order of work; undefined where the job has no shop with a machine, or no
 * cut names a head. What nothing can make in its own head is tried in the shop's others, unless told to keep to its own.
 */
export function answerPlan(
  prepared: PreparedJob,
  doors: DoorsAnswer | undefined = answerDoors(prepared),
  tried: 'own heads' | 'all heads' = 'all heads',
): Planned | undefined {
  const { job } = prepared;
  const { shop } = job;
  if (shop === undefined || Object.keys(shop.machines).length === 0) return undefined;
  const { stickingHead, backEdge } = job.frame;
  const heads = [...job.cuts.map(({ head }) => head), stickingHead, backEdge?.head];
  if (heads.every((head) => head === undefined)) return undefined;
  const { width } = job.panel;
  const panels = doors ? sortPanels(doors) : sortPanel(width, shop.rules.leastEndGrainWidth);
  // A cut of the frame is put to the same test as the panel's.
  const canBeGround = (cut: Cut) => canGrindFor(job, cut);
  return makePlan(job, shop, panels, tried === 'all heads' ? canBeGround : undefined);
}

/** What the panel is called where the job names no door. */
const THE_PANEL = 'panel';

function sortPanel(width: number | undefined, least: number): PanelsToRun {
  if (width === undefined) return { wide: [], narrow: [], carrier: [] };
  return isNarrow(width, least)
    ? { wide: [], narrow: [], carrier: [THE_PANEL] }
    : { wide: [THE_PANEL], narrow: [], carrier: [] };
}

/** Which doors' panels are run by themselves, which ride in blanks, and which no blank takes. */
function sortPanels({ doors, blanks, leftOver }: DoorsAnswer): PanelsToRun {
  const taken = new Map<string, number>();
  const take = (door: string, count: number) => taken.set(door, (taken.get(door) ?? 0) + count);
  for (const { panels, quantity } of blanks) for (const { door } of panels) take(door, quantity);
  for (const { door, quantity } of leftOver) take(door, quantity);
  const names = doors.map(({ name }) => name);
  const riding = new Set(blanks.flatMap(({ panels }) => panels.map(({ door }) => door)));
  const left = new Set(leftOver.map(({ door }) => door));
  return {
    wide: doors
      .filter(({ name, panels }) => panels.reduce((sum, { quantity }) => sum + quantity, 0) > (taken.get(name) ?? 0))
      .map(({ name }) => name),
    narrow: names.filter((name) => riding.has(name)),
    carrier: names.filter((name) => left.has(name)),
    shaped: doors.filter(({ head }) => head !== undefined).map(({ name }) => name),
    hollow: tightestHollow(doors),
    ...narrowestOpening(doors),
  };
}

function narrowestOpening(doors: DoorsAnswer['doors']): Pick<PanelsToRun, 'leastOpening'> {
  const openings = doors.flatMap(({ name, openings: all }) =>
    all.map(({ width, height }) => ({ door: name, size: Math.min(width, height) })),
  );
  if (openings.length === 0) return {};
  return { leastOpening: openings.reduce((least, each) => (each.size < least.size ? each : least)) };
}

/** The least hollow radius of all shaped heads; null where none is hollow. */
function tightestHollow(doors: DoorsAnswer['doors']): number | null {
  const hollows = doors.flatMap(({ head }) => (head === undefined ? [] : (hollowOf(head.panelEdge) ?? [])));
  return hollows.length === 0 ? null : Math.min(...hollows);
}

/** What the plan's set-ups depend on and nobody said, each once. */
export function gatherNotChecked(planned: Planned | undefined): string[] {
  return [...new Set((planned?.plan.setups ?? []).flatMap(({ notChecked }) => notChecked))];
}
