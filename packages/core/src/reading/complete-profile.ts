import { chainExtent } from '@fielded/geometry';
import type { Units } from '../measure/length.ts';
import { readOutline } from '../profile/outline-path.ts';
import type { NamedProfile, Profile } from '../profile/profile.ts';
import { type Desk, figureOf } from './desk.ts';
import type { FileProfile, Loose } from './job-file.ts';

/**
 * The profile that a file describes, its figures checked against each other; undefined when something is missing or
 * wrong, which is then reported.
 */
export function completeProfile(file: Loose<FileProfile>, at: string, desk: Desk): Profile | undefined {
  if (file?.shape === undefined) return undefined;
  if (file.shape !== 'outline') return completeNamed(file as Loose<NamedProfile>, at, desk);
  return 'file' in file && file.file !== undefined
    ? completeDrawing(file.file, `${at}.file`, desk)
    : completeOutline((file as { path?: string }).path, desk.units, `${at}.path`, desk);
}

/** An outline in a drawing file, which is in millimetres whatever the job's unit. */
function completeDrawing(name: string, at: string, desk: Desk): Profile | undefined {
  const opened = desk.openOutline(name);
  if (typeof opened === 'string') return completeOutline(opened, 'mm', at, desk);
  desk.report('outline-file', at, `${at}: ${name}: ${opened.refused}`, opened.instead);
  return undefined;
}

function completeOutline(path: string | undefined, units: Units, at: string, desk: Desk): Profile | undefined {
  if (path === undefined) return undefined;
  const outline = readOutline(path, units);
  if ('code' in outline) {
    desk.report(outline.code, at, `${at}: ${outline.what}`, outline.instead);
    return undefined;
  }
  const { reach, depth } = chainExtent(outline.chain);
  return { shape: 'outline', reach, depth, chain: outline.chain };
}

function completeNamed(file: Loose<NamedProfile>, at: string, desk: Desk): Profile | undefined {
  const { shape, reach, depth, land, shoulder, balance } = file ?? {};
  const sizes = { reach: figureOf(reach), depth: figureOf(depth), land: figureOf(land), shoulder: figureOf(shoulder) };
  if (sizes.land >= sizes.reach)
    desk.report(
      'land-past-reach',
      `${at}.land`,
      `${at}.land, ${desk.show(sizes.land)}, leaves nothing of the reach of ${desk.show(sizes.reach)}`,
      'Write a land less than the reach',
    );
  if (sizes.shoulder >= sizes.depth)
    desk.report(
      'shoulder-past-depth',
      `${at}.shoulder`,
      `${at}.shoulder, ${desk.show(sizes.shoulder)}, leaves nothing of the depth of ${desk.show(sizes.depth)}`,
      'Write a shoulder less than the depth, or use shape: rebate for an upright step alone',
    );
  if (!(figureOf(balance) > 0 && figureOf(balance) < 1) && balance !== undefined)
    desk.report(
      'out-of-range',
      `${at}.balance`,
      `${at}.balance: ${balance} leaves out one of the two arcs of the ogee`,
      'Write a share between 0 and 1, such as 0.5; for one arc alone use shape: cove or ovolo',
    );
  if (shape === 'rebate') checkRebate(sizes, at, desk);
  checkQuarterCircle(shape, sizes, at, desk);
  const profile = { shape, reach, depth, land, shoulder, balance };
  return Object.values(profile).includes(undefined) ? undefined : (profile as NamedProfile);
}

/** A rebate goes in flat and up square: a land or a shoulder of its own would be read and dropped. */
function checkRebate({ land, shoulder }: { land: number; shoulder: number }, at: string, desk: Desk): void {
  for (const [key, size] of Object.entries({ land, shoulder })) {
    if (!(size > 0)) continue;
    const what = `${at}.${key}, ${desk.show(size)}, has no use: a rebate is all land, and upright at its end`;
    desk.report('key-without-use', `${at}.${key}`, what, 'Take it out, or use shape: bevel');
  }
}

/** A hollow, a round or an ogee that rises more than it runs would turn under itself. */
function checkQuarterCircle(
  shape: string | undefined,
  { reach, depth, land, shoulder }: { reach: number; depth: number; land: number; shoulder: number },
  at: string,
  desk: Desk,
): void {
  const run = reach - land;
  const rise = depth - shoulder;
  if (shape === 'rebate' || shape === 'bevel' || !(run > 0 && rise > run * (1 + 1e-12))) return;
  desk.report(
    'past-quarter-circle',
    at,
    `${at}: the ${shape} rises ${desk.show(rise)} (depth less shoulder) over a run of ${desk.show(run)} (reach less land), ` +
      'and past a quarter circle the arc turns under',
    `Give it ${desk.show(land + rise)} of reach, or take the depth down to ${desk.show(shoulder + run)}`,
  );
}
