import type { Desk } from '../../desk/desk.ts';
import { type Data, getAtKeys, isGroup } from '../../job/data.ts';
import { freeName } from '../../job/free-name.ts';

type Knife = { readonly [key: string]: Data };

/**
 * Keeps the profiles drawn in the job as knives of the shop, under the names of their cuts. Another knife of that name stays as it
 * is, and the job's is kept beside it.
 */
export function addKnives(desk: Desk): void {
  const cuts = getAtKeys(desk.doc.value.data, ['cuts']);
  if (!Array.isArray(cuts)) return;
  const profiles = (cuts as readonly Data[]).flatMap((cut, i) =>
    isGroup(cut) && isGroup(cut.profile)
      ? [{ name: String(cut.name ?? `cut ${i + 1}`), knife: knifeOf(desk, cut.profile, cut.head) }]
      : [],
  );
  const renamed: (readonly [name: string, free: string])[] = [];
  // All of them are one step of undo; what was changed before, or is changed next, another one.
  const step = 'profiles kept as knives';
  desk.settle();
  for (const { name, knife } of profiles) {
    const free = freeName(name, (taken) => isOther(desk.doc.value.shop?.data, taken, knife));
    const [fault] = isKept(desk, free) ? [] : desk.changeShop(['knives', free], knife, step);
    if (fault !== undefined) {
      desk.notice.value = { kind: 'fault', text: `That knife could not be kept: ${fault.message}` };
      return;
    }
    if (free !== name) renamed.push([name, free]);
  }
  desk.settle();
  desk.notice.value = { kind: 'note', text: sayKept(profiles.length, renamed) };
}

function sayKept(count: number, renamed: readonly (readonly [name: string, free: string])[]): string {
  if (count === 0) return 'No cut of this job has a profile of its own to keep.';
  const kept = count === 1 ? 'One knife is in the shop' : `${count} knives are in the shop`;
  if (renamed.length === 0) return `${kept}.`;
  const names = renamed.map(([name, free]) => `${name} as ${free}`).join(', ');
  const why = renamed.length === 1 ? 'another knife has that name' : 'other knives have those names';
  return `${kept}: ${names}, because ${why} already.`;
}

function isKept(desk: Desk, name: string): boolean {
  return getAtKeys(desk.doc.value.shop?.data, ['knives', name]) !== undefined;
}

/** Whether a shop's knife of this name is another one; it is the same with more known of it, such as where its sample is kept. */
function isOther(shop: Data | undefined, name: string, knife: Knife): boolean {
  const kept = getAtKeys(shop, ['knives', name]);
  if (kept === undefined) return false;
  return Object.entries(knife).some(([key, value]) => !isGroup(kept) || !isAlike(kept[key], value));
}

function isAlike(one: Data | undefined, other: Data): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

/** A profile, and the head that its cut is made with, as a knife in a shop's unit: where that is another, a bare figure gets the job's unit. */
function knifeOf(desk: Desk, profile: Knife, head: Data | undefined): Knife {
  const jobUnits = desk.job.value.units;
  const shopUnits = getAtKeys(desk.doc.value.shop?.data, ['units']) ?? jobUnits;
  const inUnit = (key: string, value: Data) =>
    typeof value === 'number' && key !== 'balance' && jobUnits !== shopUnits ? `${value} ${jobUnits}` : value;
  const sizes = Object.fromEntries(Object.entries(profile).map(([key, value]) => [key, inUnit(key, value)]));
  return { ...sizes, ...(head !== undefined && { head }) };
}
