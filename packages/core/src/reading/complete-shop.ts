import { findHeadFaults } from '../shop/head-faults.ts';
import { findMachineFaults } from '../shop/machine-faults.ts';
import type { Maker } from '../shop/rates.ts';
import type { Head, Machine, Shop, ShopKnife } from '../shop/shop.ts';
import { completeProfile } from './complete-profile.ts';
import { type Desk, figureOf } from './desk.ts';
import type { Loose, ShopFile } from './job-file.ts';

/** The shop that a file describes: the profiles of its knives completed, its heads, machines and rules checked. */
export function completeShop(file: Loose<ShopFile>, desk: Desk): Shop | undefined {
  const knives: Record<string, ShopKnife> = {};
  for (const [name, knife] of Object.entries(file?.knives ?? {})) {
    const profile = completeProfile(knife, `knives.${name}`, desk);
    if (profile === undefined || knife === undefined) continue;
    checkFromFace(knife as ShopKnife, name, file?.heads, desk);
    knives[name] = { profile, ...steelOf(knife as ShopKnife) };
  }
  for (const [name, head] of Object.entries(file?.heads ?? {})) {
    report(findHeadFaults((head ?? {}) as Head, desk.show), `heads.${name}`, desk);
    checkOrder(head?.minSpeed, head?.maxSpeed, `heads.${name}.minSpeed`, String, desk);
  }
  for (const [name, machine] of Object.entries(file?.machines ?? {})) {
    report(findMachineFaults((machine ?? {}) as Machine, desk.show), `machines.${name}`, desk);
    checkOrder(machine?.seat?.[0], machine?.seat?.[1], `machines.${name}.seat`, desk.show, desk);
    checkOrder(machine?.tilt?.[0], machine?.tilt?.[1], `machines.${name}.tilt`, showDegrees, desk);
  }
  checkRules(file?.rules, desk);
  if (file === undefined) return undefined;
  const { units, heads, rules, rates, woods } = file as ShopFile;
  const maker = completeMaker(file, desk);
  const machines = completeMachines(file as ShopFile);
  return {
    units,
    knives,
    heads,
    machines,
    rules,
    ...(woods && { woods: nameWoods(woods) }),
    ...(rates && { rates }),
    ...(maker && { maker }),
  };
}

/** Woods know their own names. */
function nameWoods(woods: NonNullable<ShopFile['woods']>): NonNullable<Shop['woods']> {
  return Object.fromEntries(Object.entries(woods).map(([name, figures]) => [name, { ...figures, name }]));
}

/** What is known of a knife's steel: every key but its profile's. */
function steelOf({
  measured,
  head,
  groundFor,
  presented,
  fromFace,
  sideRelief,
  kept,
}: ShopKnife): Omit<ShopKnife, 'profile'> {
  return {
    measured,
    ...(head !== undefined && { head }),
    ...(groundFor && { groundFor }),
    ...(presented !== undefined && { presented }),
    ...(fromFace !== undefined && { fromFace }),
    ...(sideRelief !== undefined && { sideRelief }),
    ...(kept !== undefined && { kept }),
  };
}

/** A table without rings has its bare opening. */
function completeMachines({ machines }: ShopFile): Record<string, Machine> {
  return Object.fromEntries(
    Object.entries(machines ?? {}).map(([name, machine]) => [
      name,
      { ...machine, rings: machine?.rings ?? [machine?.opening] },
    ]),
  );
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

/** A knife cannot cut deepest beyond the other end of its head. */
function checkFromFace(knife: ShopKnife, name: string, heads: Loose<ShopFile['heads']>, desk: Desk): void {
  const { head, fromFace } = knife;
  const height = head !== undefined && Object.hasOwn(heads ?? {}, head) ? heads?.[head]?.height : undefined;
  if (!(figureOf(fromFace) > figureOf(height))) return;
  const at = `knives.${name}.fromFace`;
  const what = `${at}: ${desk.show(figureOf(fromFace))} in from the face is past the other end of the head ${head}, ${desk.show(figureOf(height))} high`;
  desk.report('from-face-past-head', at, what, "Measure from the head's face on the side where the knife cuts deepest");
}

function checkRules(rules: Loose<ShopFile['rules']>, desk: Desk): void {
  checkOrder(rules?.rimSpeed?.[0], rules?.rimSpeed?.[1], 'rules.rimSpeed', String, desk);
  const least = figureOf(rules?.leastEndGrainWidth);
  const greatest = figureOf(rules?.greatestBlankWidth);
  if (!(greatest < least)) return;
  const what = `rules: greatestBlankWidth, ${desk.show(greatest)}, is less than leastEndGrainWidth, ${desk.show(least)}`;
  desk.report('out-of-order', 'rules', what, 'Write a greatest width that blanks of the least width fit in');
}

/** One figure of a head or a machine that cannot be. */
interface FigureFault {
  readonly code: Parameters<Desk['report']>[0];
  readonly key: string;
  readonly what: string;
  readonly instead: string;
}

function report(faults: readonly FigureFault[], at: string, desk: Desk): void {
  for (const { code, key, what, instead } of faults)
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

function showDegrees(angle: number): string {
  return `${Math.round((angle * 18000) / Math.PI) / 100}°`;
}
