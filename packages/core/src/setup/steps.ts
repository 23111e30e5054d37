import type { LeastOpening } from './against.ts';
import type { Step, StepKind } from './plan.ts';
import type { SetUp } from './set-up-report.ts';

/** The panels of a job as the order of work needs them: names of doors. */
export interface PanelsToRun {
  /** Wide enough for the end grain. */
  readonly wide: readonly string[];
  /** Riding in blanks, since they are narrower than the shop runs on the end grain. */
  readonly narrow: readonly string[];
  /** Narrow, and in no blank: only a carrier takes them past the cutter. */
  readonly carrier: readonly string[];
  /** With a shaped head, which is run against a bearing or a ring fence. */
  readonly shaped?: readonly string[];
  /** The narrowest opening, for a head that works inside glued-up frames. */
  readonly leastOpening?: LeastOpening;
  /** Tightest hollow of their panels' edges, mm; null where none is hollow. */
  readonly hollow?: number | null;
}

/** Set-ups that stand together on one spindle: one, or both heads at once. Places among the plan's set-ups. */
export type Group = readonly number[];

/**
 * The order of work with the fewest set-ups (formula U10): end grain before long grain, so that the long cut takes the chipping
 * away; narrow panels in blanks whose ends get every cut before they are ripped, their long edges in a second round that
 * runs backwards, so that what still stands is used first. `second`: the set-ups that run the other half of shaped heads.
 * Where a cut can be made in no way (`complete` false) it ends before blanks are ripped: their ends lack that cut.
 */
export function orderSteps(
  setups: readonly SetUp[],
  groups: readonly Group[],
  frame: readonly number[],
  afterGlueUp: readonly number[],
  second: readonly number[],
  panels: PanelsToRun,
  complete: boolean,
): Step[] {
  const order = new StepList(setups, panels);
  const { wide, narrow, carrier } = panels;
  const twice = narrow.length > 0;
  const once = [...wide, ...carrier];
  // The frame's parts first, then the panels set-up by set-up: ends before edges.
  for (const place of frame) order.frameCut([place]);
  for (const group of groups) {
    order.setUp(group);
    order.add('run-ends', group, twice && once.length === 0 ? 'narrow' : 'all', [...once, ...narrow]);
    if (!twice || once.length > 0) order.edgesAndHeads(group, twice ? 'wide' : 'all', once, once);
  }
  if (!complete) return order.steps;
  // Rip the blanks, then run their long edges backwards through the set-ups.
  if (twice) {
    order.add('rip', [], 'narrow', narrow);
    for (const group of [...groups].reverse()) {
      order.setUpAgain(group);
      const heads = narrow.filter((door) => !once.includes(door));
      order.edgesAndHeads(group, 'narrow', narrow, heads);
    }
  }
  // The other half of shaped heads, finishing, and last what is cut on glued-up frames.
  const all = [...once, ...narrow];
  for (const place of second) order.secondHalf(place, [...new Set(all)]);
  for (const kind of ['sand', 'finish', 'glue-up'] as const) order.add(kind, [], 'all', [...new Set(all)]);
  for (const place of afterGlueUp) order.frameCut([place]);
  return order.steps;
}

/** Steps in the making, and what stands on each machine meanwhile. */
class StepList {
  readonly steps: Step[] = [];
  private readonly standing = new Map<string, string>();

  private readonly setups: readonly SetUp[];
  private readonly panels: PanelsToRun;

  constructor(setups: readonly SetUp[], panels: PanelsToRun) {
    this.setups = setups;
    this.panels = panels;
  }

  add(
    kind: StepKind,
    group: Group,
    panels: Step['panels'],
    doors: readonly string[],
    shoulder: Step['shoulder'] = null,
  ): void {
    const first = group[0];
    this.steps.push({
      kind,
      cuts: group.map((place) => this.setups[place]!.cut),
      setUp: first ?? null,
      machine: first === undefined ? null : this.setups[first]!.machine,
      panels,
      doors: [...new Set(doors)],
      blanks: panels !== 'frame' && (kind === 'run-ends' || kind === 'rip') ? this.panels.narrow : [],
      carrier: panels !== 'frame' && kind === 'run-ends' ? this.panels.carrier : [],
      shoulder,
      shaped: kind === 'run-ends' ? this.shapedOf(doors) : [],
    });
  }

  /**
   * Long edges and shaped heads at one height: the fence comes off, the bearing or ring goes on. A head run all round comes out
   * of the wood at a side, and the long edges after it take the breakout away; halves that end at the apex come last.
   */
  edgesAndHeads(group: Group, panels: Step['panels'], doors: readonly string[], headed: readonly string[]): void {
    const whole = this.shoulderOf(group) === 'both';
    if (whole) this.heads(group, headed);
    this.add('run-edges', group, panels, doors);
    if (!whole) this.heads(group, headed);
  }

  private heads(group: Group, doors: readonly string[]): void {
    const shaped = this.shapedOf(doors);
    const shoulder = this.shoulderOf(group);
    if (shaped.length > 0 && shoulder !== null) this.add('run-heads', group, 'all', shaped, shoulder);
  }

  private shoulderOf(group: Group): Step['shoulder'] {
    return this.setups[group[0]!]!.curve?.shoulder ?? null;
  }

  /** The other half of the heads, with the other rotation. */
  secondHalf(place: number, doors: readonly string[]): void {
    this.setUp([place]);
    this.heads([place], doors);
  }

  private shapedOf(doors: readonly string[]): string[] {
    return [...new Set(doors.filter((door) => this.panels.shaped?.includes(door)))];
  }

  /** Sets up, runs a test piece, measures it and corrects the setting. */
  setUp(group: Group): void {
    this.standing.set(this.setups[group[0]!]!.machine, group.join());
    for (const kind of ['set-up', 'test-piece', 'measure'] as const) this.add(kind, group, 'none', []);
  }

  /** Sets up what does not stand any more. */
  setUpAgain(group: Group): void {
    if (this.standing.get(this.setups[group[0]!]!.machine) !== group.join()) this.setUp(group);
  }

  /** A cut on the frame, with its own set-up: the cope on ends, the others along edges. */
  frameCut(group: Group): void {
    this.setUp(group);
    const cope = this.setups[group[0]!]!.frame?.kind === 'cope';
    this.add(cope ? 'run-ends' : 'run-edges', group, 'frame', []);
  }
}

/** Set-ups that an order of work asks for. */
export function countSetUps(steps: readonly Step[]): number {
  return steps.filter(({ kind }) => kind === 'set-up').length;
}
