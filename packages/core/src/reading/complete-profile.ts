import { chainExtent } from '@fielded/geometry';
import type { Units } from '../measure/length.ts';
import type { NamedProfile, Profile } from '../profile/profile.ts';
import { readOutline } from '../profile/read-outline.ts';
import { type FaultDesk, orNaN } from './fault-desk.ts';
import type { FileProfile, Loose } from './job-file.ts';

/**
 * The profile that a file describes, its figures checked against each other; undefined when something is missing or
 * wrong, which is then reported.
 */
export function completeProfile(file: Loose<FileProfile>, at: string, desk: FaultDesk): Profile | undefined {
  if (file?.shape === undefined) return undefined;
  if (file.shape !== 'outline') return completeNamed(file as Loose<NamedProfile>, at, desk);
  return 'file' in file && file.file !== undefined
    ? completeDrawing(file.file, `${at}.file`, desk)
    : completeOutline((file as { path?: string }).path, desk.units, `${at}.path`, desk);
}

/** An outline in a drawing file, which is in millimetres whatever the job's unit. */
function completeDrawing(name: string, at: string, desk: FaultDesk): Profile | undefined {
  const opened = desk.openOutline(name);
  if (typeof opened === 'string') return completeOutline(opened, 'mm', at, desk);
  desk.report('fault.outline-file', at, { name, ...opened });
  return undefined;
}

function completeOutline(path: string | undefined, units: Units, at: string, desk: FaultDesk): Profile | undefined {
  if (path === undefined) return undefined;
  const outline = readOutline(path, units);
  if ('sentence' in outline) {
    desk.place(outline, at);
    return undefined;
  }
  const { reach, depth } = chainExtent(outline.chain);
  return { shape: 'outline', reach, depth, chain: outline.chain };
}

function completeNamed(file: Loose<NamedProfile>, at: string, desk: FaultDesk): Profile | undefined {
  const { shape, reach, depth, land, shoulder, balance } = file ?? {};
  const sizes = { reach: orNaN(reach), depth: orNaN(depth), land: orNaN(land), shoulder: orNaN(shoulder) };
  if (sizes.land >= sizes.reach)
    desk.report('fault.land-past-reach', `${at}.land`, { land: sizes.land, reach: sizes.reach });
  if (sizes.shoulder >= sizes.depth)
    desk.report('fault.shoulder-past-depth', `${at}.shoulder`, { shoulder: sizes.shoulder, depth: sizes.depth });
  if (!(orNaN(balance) > 0 && orNaN(balance) < 1) && balance !== undefined)
    desk.report('fault.out-of-range.balance', `${at}.balance`, { balance: `${balance}` });
  if (shape === 'rebate') checkRebate(sizes, at, desk);
  checkQuarterCircle(shape, sizes, at, desk);
  const profile = { shape, reach, depth, land, shoulder, balance };
  return Object.values(profile).includes(undefined) ? undefined : (profile as NamedProfile);
}

/** A rebate goes in flat and up square: a land or a shoulder of its own would be read and dropped. */
function checkRebate({ land, shoulder }: { land: number; shoulder: number }, at: string, desk: FaultDesk): void {
  for (const [key, size] of Object.entries({ land, shoulder })) {
    if (size > 0) desk.report('fault.key-without-use', `${at}.${key}`, { size });
  }
}

/** A hollow, a round or an ogee that rises more than it runs would turn under itself. */
function checkQuarterCircle(
  shape: string | undefined,
  { reach, depth, land, shoulder }: { reach: number; depth: number; land: number; shoulder: number },
  at: string,
  desk: FaultDesk,
): void {
  const run = reach - land;
  const rise = depth - shoulder;
  if (shape === 'rebate' || shape === 'bevel' || !(run > 0 && rise > run * (1 + 1e-12))) return;
  const wanted = { reach: land + rise, depth: shoulder + run };
  desk.report('fault.past-quarter-circle', at, { shape: `${shape}`, rise, run, ...wanted });
}
