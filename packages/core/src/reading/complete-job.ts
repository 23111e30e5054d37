import type { Job, Season } from '../job/job.ts';
import type { Cut } from '../machining/cut.ts';
import { findHeadFaults } from '../shop/head-faults.ts';
import type { Maker } from '../shop/rates.ts';
import type { Head, Shop, ShopKnife } from '../shop/shop.ts';
import { completeCuts } from './complete-cuts.ts';
import { completeDoors } from './complete-doors.ts';
import { completeFrame } from './complete-frame.ts';
import { completeProfile } from './complete-profile.ts';
import { type Desk, figureOf } from './desk.ts';
import type { JobFile, Loose, ShopFile } from './job-file.ts';
import { MOST_PIECES } from './limits.ts';

/**
 * The job that a file describes: its parts checked against each other, against the stock and against the shop, names
 * and settings filled in. Everything that is wrong is reported; undefined then, or when a part was struck out before.
 */
export function completeJob(file: Loose<JobFile>, shop: Shop | undefined, desk: Desk): Job | undefined {
  const thickness = figureOf(file?.panel?.thickness);
  const measured = file?.panel?.measured ?? thickness;
  const frame = completeFrame(file?.frame, desk);
  const cuts = completeCuts(file?.cuts, { thickness, measured }, shop, desk);
  const doors = completeDoors(file?.doors, figureOf(file?.frame?.groove?.depth), desk);
  checkPieces(cuts, desk);
  checkFit(file?.fit, desk);
  checkSeason(file?.season, desk);
  if (frame === undefined || file?.panel === undefined || cuts.includes(undefined)) return undefined;
  const { title, units, terms, panel, fit, spread, season } = file as JobFile;
  const job = { title, units, panel: { ...panel, measured }, frame, cuts: cuts as Cut[], fit, doors };
  return {
    ...job,
    ...(terms && { terms }),
    ...(spread && { spread }),
    ...(season && { season }),
    ...(shop && { shop }),
  };
}

/** The shop that a file describes, the profiles of its knives checked. */
export function completeShop(file: Loose<ShopFile>, desk: Desk): Shop | undefined {
  const knives: Record<string, ShopKnife> = {};
  for (const [name, knife] of Object.entries(file?.knives ?? {})) {
    const profile = completeProfile(knife, `knives.${name}`, desk);
    if (profile === undefined || knife === undefined) continue;
    const { head, groundFor, measured } = knife as ShopKnife;
    const steel = { profile, measured, ...(head !== undefined && { head }), ...(groundFor && { groundFor }) };
    knives[name] = steel;
  }
  for (const [name, head] of Object.entries(file?.heads ?? {})) checkHead(head, `heads.${name}`, desk);
  for (const [name, machine] of Object.entries(file?.machines ?? {}))
    checkOrder(machine?.seat?.[0], machine?.seat?.[1], `machines.${name}.seat`, desk.show, desk);
  checkOrder(file?.rules?.rimSpeed?.[0], file?.rules?.rimSpeed?.[1], 'rules.rimSpeed', String, desk);
  if (file === undefined) return undefined;
  const { units, heads, machines, rules, rates } = file as ShopFile;
  const maker = completeMaker(file, desk);
  return { units, knives, heads, machines, rules, ...(rates && { rates }), ...(maker && { maker }) };
}

/** Name, address and logo belong together: the last two mean nothing without the first. */
function completeMaker({ name, address, logo }: Loose<ShopFile> & object, desk: Desk): Maker | undefined {
  if (name !== undefined)
    return { name, address: (address ?? []).filter((line) => line !== undefined), ...(logo !== undefined && { logo }) };
  const key = (address?.length ?? 0) > 0 ? 'address' : 'logo';
  if (key === 'address' || logo !== undefined)
    desk.report('missing-key', key, `${key} is given, and no name for the shop`, 'Add name: and the name of the shop');
  return undefined;
}

function checkHead(head: Loose<Head>, at: string, desk: Desk): void {
  for (const { code, key, what, instead } of findHeadFaults((head ?? {}) as Head, desk.show))
    desk.report(code, `${at}.${key}`, `${at}.${key}: ${what}`, instead);
}

function checkOrder(
  low: number | undefined,
  high: number | undefined,
  at: string,
  show: (value: number) => string,
  desk: Desk,
): void {
  if (!(figureOf(low) > figureOf(high))) return;
  const what = `${at} runs from ${show(figureOf(low))} down to ${show(figureOf(high))}`;
  desk.report('out-of-order', at, what, 'Write the least first, then the greatest');
}

/** A shop's knife can be named by many cuts: what counts is what is run. */
function checkPieces(cuts: readonly (Cut | undefined)[], desk: Desk): void {
  const pieces = cuts.reduce((sum, cut) => sum + (cut?.profile.shape === 'outline' ? cut.profile.chain.length : 0), 0);
  if (pieces <= MOST_PIECES) return;
  const what = `cuts: their outlines have ${pieces} lines and arcs, and up to ${MOST_PIECES} are computed`;
  desk.report('too-many', 'cuts', what, 'Draw them with fewer');
}

function checkFit(fit: Loose<JobFile['fit']>, desk: Desk): void {
  if (!(figureOf(fit?.snug) > figureOf(fit?.loose))) return;
  desk.report(
    'out-of-order',
    'fit',
    `fit: snug, ${desk.show(figureOf(fit?.snug))}, is more than loose, ${desk.show(figureOf(fit?.loose))}`,
    'Write a snug that is no more than loose: below snug is tight, above loose is loose',
  );
}

function checkSeason(season: Loose<Season>, desk: Desk): void {
  const { driest, dampest } = (season ?? {}) as Partial<Season>;
  if (typeof driest !== 'number' || typeof dampest !== 'number' || driest <= dampest) return;
  desk.report(
    'out-of-order',
    'season',
    `season: driest, ${driest} %, is damper than dampest, ${dampest} %`,
    'Write the lower moisture content as driest',
  );
}
