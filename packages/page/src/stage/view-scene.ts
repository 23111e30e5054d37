import type { Report } from '@fielded/core';
import type { LivePlace, PlainView, Scene } from '@fielded/render';

/** A point on the paper, mm. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Where the wood lies on a drawing: the panel's edge at its front face, and the frame's sight edge at its front face. */
export interface Anchors {
  readonly panel: Spot | null;
  readonly frame: Spot | null;
}

/** A drawing with its anchors, which are null where it is only looked at. */
export type ViewScene = Scene & Anchors;

/** Paper that a drawing has, mm. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** A drawing at the largest scale that fits, and the dimensions that it has room for; all, for null. */
export interface Fitted {
  readonly scale: number;
  readonly scene: ViewScene;
  readonly only: readonly string[] | null;
  /** Framed whole, with smaller letters, though it is larger than its room. */
  readonly whole?: true;
}

/** Draws a view of a report that is at hand; `plain` for its size alone. */
export type Draw = (scale: number, only: readonly string[] | null, plain?: boolean) => ViewScene;

/** The drawings of a job: those of the wood, what may become of it, and one for each knife or limiter. */
export type ViewName = PlainView | 'spread' | 'season' | `knife ${number}` | `limiter ${number}`;

/**
 * Draws a view of a report at a scale; `only` names the dimensions to lay out, all for null; `at` places a corner of the wood.
 * What is drawn `plain`, for its size alone, may lack what does not change that.
 */
export interface Drawer {
  (report: Report, scale: number, only: readonly string[] | null, at?: LivePlace, plain?: boolean): ViewScene;
  /** Draws larger what was fitted into its room, where its letters may be smaller instead. */
  enlarge?(draw: Draw, room: Room, fitted: Fitted): Fitted;
}

/** The views that can be drawn of a report, those to work on first. */
export function viewsFor(report: Report): ViewName[] {
  const views: ViewName[] = ['joint', 'section', 'detail', 'cuts'];
  if (report.frame.cope) views.push('corner');
  (report.knives ?? []).forEach((knife, index) => {
    views.push(`knife ${index}`);
    if (knife.limiter) views.push(`limiter ${index}`);
  });
  if (report.spread) views.push('spread');
  if (report.season) views.push('season');
  if (report.doors?.length) views.push('panel', 'door');
  return views;
}

const NAMES: Readonly<Record<string, string>> = {
  joint: 'Joint',
  section: 'Section',
  detail: 'Detail',
  cuts: 'Cuts',
  corner: 'Corner',
  panel: 'Panel',
  door: 'Door',
  spread: 'Spread',
  season: 'Seasons',
};

/** What a view is called. */
export function nameOf(view: ViewName, report: Report): string {
  const steel = steelOf(view, report);
  if (steel === null) return NAMES[view] ?? view;
  return steel.part === 'knife' ? `Knife, ${steel.knife.cut}` : `Limiter, ${steel.knife.cut}`;
}

/** The knife that a view shows, and which part of it; null for a view of something else. */
export function steelOf(
  view: ViewName,
  report: Report,
): { readonly part: 'knife' | 'limiter'; readonly knife: NonNullable<Report['knives']>[number] } | null {
  const [, part, index] = /^(knife|limiter) (\d+)$/.exec(view) ?? [];
  const knife = report.knives?.[Number(index)];
  return part === undefined || knife === undefined ? null : { part: part as 'knife' | 'limiter', knife };
}

/** Whether a view shows a knife or a limiter. */
export function isSteel(view: ViewName): boolean {
  return /^(knife|limiter) /.test(view);
}

/** Whether arrises can be dragged on a view. */
export function isWorkedOn(view: ViewName): view is 'joint' | 'section' {
  return view === 'joint' || view === 'section';
}

/** Whether a view shows things one under the other: on a small screen it is as wide as the sheet, and scrolls. */
export function isLong(view: ViewName): boolean {
  return view === 'cuts' || isSteel(view);
}

/** Where a corner of the wood lies, for another drawing to be placed there; undefined on one that is only looked at. */
export function placeOf(anchors: Anchors, on: LivePlace['on']): LivePlace | undefined {
  const spot = anchors[on];
  if (spot !== null) return { on, ...spot };
  return anchors.panel === null ? undefined : { on: 'panel', ...anchors.panel };
}
