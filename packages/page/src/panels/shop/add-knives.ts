import type { Desk } from '../../desk/desk.ts';
import { type Data, getAtKeys, isGroup } from '../../job/data.ts';

/** Keeps the profiles drawn in the job as knives of the shop, under the names of their cuts. */
export function addKnives(desk: Desk): void {
  const cuts = getAtKeys(desk.doc.value.data, ['cuts']);
  if (!Array.isArray(cuts)) return;
  const profiles = (cuts as readonly Data[]).flatMap((cut, i) =>
    isGroup(cut) && isGroup(cut.profile)
      ? [
          {
            name: String(cut.name ?? `cut ${i + 1}`),
            knife: { ...inShopUnit(desk, cut.profile), ...(cut.head !== undefined && { head: cut.head }) },
          },
        ]
      : [],
  );
  const faults = profiles.flatMap(({ name, knife }) => desk.changeShop(['knives', name], knife as Data));
  const count = profiles.length === 1 ? 'One knife is' : `${profiles.length} knives are`;
  desk.notice.value =
    faults.length > 0
      ? { kind: 'fault', text: `That knife could not be kept: ${faults[0]!.message}` }
      : { kind: 'note', text: `${count} in the shop.` };
}

/** A profile for a shop of another unit: a bare figure gets the job's unit. */
function inShopUnit(desk: Desk, profile: { readonly [key: string]: Data }): object {
  const jobUnits = desk.job.value.units;
  const shopUnits = getAtKeys(desk.doc.value.shop?.data, ['units']) ?? jobUnits;
  if (jobUnits === shopUnits) return profile;
  return Object.fromEntries(
    Object.entries(profile).map(([key, value]) => [
      key,
      typeof value === 'number' && key !== 'balance' ? `${value} ${jobUnits}` : value,
    ]),
  );
}
