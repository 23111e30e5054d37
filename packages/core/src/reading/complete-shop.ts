import { DEFAULTS } from '../job/defaults.ts';
import { formatLength } from '../measure/format.ts';
import type { ToldFault } from '../problem/say-fault.ts';
import { findHeadFaults } from '../shop/head-faults.ts';
import { findMachineFaults } from '../shop/machine-faults.ts';
import type { Maker } from '../shop/rates.ts';
import type { Head, Machine, Rules, Shop, ShopKnife } from '../shop/shop.ts';
import { completeProfile } from './complete-profile.ts';
import { type FaultDesk, orNaN } from './fault-desk.ts';
import type { Loose, ShopFile } from './job-file.ts';

/**
 * The shop that a file describes: the profiles of its knives completed, its heads, machines and rules checked. `written` is
 * what the file itself says, without any default.
 */
export function completeShop(file: Loose<ShopFile>, written: unknown, desk: FaultDesk): Shop | undefined {
  const knives: Record<string, ShopKnife> = {};
  for (const [name, knife] of Object.entries(file?.knives ?? {})) {
    const profile = completeProfile(knife, `knives.${name}`, desk);
    if (profile === undefined || knife === undefined) continue;
    checkFromFace(knife as ShopKnife, name, file?.heads, desk);
    knives[name] = { profile, ...steelOf(knife as ShopKnife) };
  }
  for (const [name, head] of Object.entries(file?.heads ?? {})) {
    report(findHeadFaults((head ?? {}) as Head), `heads.${name}`, desk);
    checkOrder(head?.minSpeed, head?.maxSpeed, `heads.${name}.minSpeed`, String, desk);
  }
  for (const [name, machine] of Object.entries(file?.machines ?? {})) {
    report(findMachineFaults((machine ?? {}) as Machine), `machines.${name}`, desk);
    checkOrder(
      machine?.seat?.[0],
      machine?.seat?.[1],
      `machines.${name}.seat`,
      (mm) => formatLength(mm, desk.units),
      desk,
    );
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
    ...listAssumedRules(written),
    ...(woods && { woods: nameWoods(woods) }),
    ...(rates && { rates }),
    ...(maker && { maker }),
  };
}

/** The rules that a file leaves to their defaults. */
function listAssumedRules(written: unknown): Pick<Shop, 'assumedRules'> {
  const given = (written as { rules?: object } | null)?.rules ?? {};
  const assumedRules = (Object.keys(DEFAULTS.rules) as (keyof Rules)[]).filter((rule) => !Object.hasOwn(given, rule));
  return assumedRules.length === 0 ? {} : { assumedRules };
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
function completeMaker({ name, address, logo }: Loose<ShopFile> & object, desk: FaultDesk): Maker | undefined {
  if (name !== undefined)
    return { name, address: (address ?? []).filter((line) => line !== undefined), ...(logo !== undefined && { logo }) };
  const key = (address?.length ?? 0) > 0 ? 'address' : 'logo';
  if (key === 'address' || logo !== undefined) desk.report('fault.missing-key.maker', key, {});
  return undefined;
}

/** A knife cannot cut deepest beyond the other end of its head. */
function checkFromFace(knife: ShopKnife, name: string, heads: Loose<ShopFile['heads']>, desk: FaultDesk): void {
  const { head, fromFace } = knife;
  const height = head !== undefined && Object.hasOwn(heads ?? {}, head) ? heads?.[head]?.height : undefined;
  const figures = { fromFace: orNaN(fromFace), height: orNaN(height), head: `${head}` };
  if (figures.fromFace > figures.height) desk.report('fault.from-face-past-head', `knives.${name}.fromFace`, figures);
}

function checkRules(rules: Loose<ShopFile['rules']>, desk: FaultDesk): void {
  checkOrder(rules?.rimSpeed?.[0], rules?.rimSpeed?.[1], 'rules.rimSpeed', String, desk);
  const least = orNaN(rules?.leastEndGrainWidth);
  const greatest = orNaN(rules?.greatestBlankWidth);
  if (greatest < least) desk.report('fault.out-of-order.blanks', 'rules', { greatest, least });
}

function report(faults: readonly (ToldFault & { readonly key: string })[], at: string, desk: FaultDesk): void {
  for (const { key, ...told } of faults) desk.place(told, `${at}.${key}`);
}

function checkOrder(
  low: number | undefined,
  high: number | undefined,
  at: string,
  show: (value: number) => string,
  desk: FaultDesk,
): void {
  const [from, to] = [orNaN(low), orNaN(high)];
  if (from > to) desk.report('fault.out-of-order.range', at, { low: show(from), high: show(to) });
}

function showDegrees(angle: number): string {
  return `${Math.round((angle * 18000) / Math.PI) / 100}°`;
}
