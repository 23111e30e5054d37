import { USUAL_ROTATION } from '../knife/hand.ts';
import type { Cut } from '../machining/cut.ts';
import type { Profile } from '../profile/profile.ts';
import { headNamed, type Shop, type ShopKnife } from '../shop/shop.ts';
import { completeProfile } from './complete-profile.ts';
import { type FaultDesk, orNaN } from './fault-desk.ts';
import type { FileCut, JobFile, Loose } from './job-file.ts';
import { findNearest } from './nearest.ts';
import { joinPath } from './tree.ts';

/** The stock that the cuts are checked against, mm. */
export interface Stock {
  readonly thickness: number;
  readonly measured: number;
}

/** The cuts with their profiles, names and settings filled in, checked against the stock and the shop. */
export function completeCuts(
  files: Loose<JobFile['cuts']>,
  stock: Stock,
  shop: Shop | undefined,
  desk: FaultDesk,
): (Cut | undefined)[] {
  const names = new Map<string, number>();
  return (files ?? []).map((file, index) => {
    const at = joinPath('cuts', index);
    const name = file?.name ?? `cut ${index + 1}`;
    const first = names.get(name);
    if (first !== undefined)
      desk.report('fault.duplicate-cut-name', `${at}.name`, { name, other: joinPath('cuts', first) });
    else names.set(name, index);
    return completeCut(file, name, at, stock, shop, desk);
  });
}

function completeCut(
  file: Loose<FileCut>,
  name: string,
  at: string,
  stock: Stock,
  shop: Shop | undefined,
  desk: FaultDesk,
): Cut | undefined {
  if (file === undefined) return undefined;
  const found = findProfile(file, at, shop, desk);
  if (file.head !== undefined) checkName('head', file.head, shop?.heads, at, desk);
  if (file.run === 'over' && file.presented === Math.PI / 2) desk.report('fault.over-on-edge', `${at}.run`, {});
  if (found === undefined) return undefined;
  const depth = file.depth ?? found.profile.depth;
  checkDepth(depth, file, at, stock, desk);
  const { side, run, presented } = file;
  // The head a knife is kept in counts where the shop describes it; a cut's own head has to be described.
  const kept = headNamed(shop, found.head) === undefined ? undefined : found.head;
  const head = file.head ?? kept;
  if (side === undefined || run === undefined || presented === undefined) return undefined;
  const cut = {
    name,
    side,
    profile: found.profile,
    depth,
    reach: file.reach ?? found.profile.reach,
    run,
    tilt: presented,
  };
  return { ...cut, ...(head !== undefined && { head }), ...(file.knife !== undefined && { knife: file.knife }) };
}

/** A cut's own profile, or its knife's with the head it is kept in. */
function findProfile(
  file: NonNullable<Loose<FileCut>>,
  at: string,
  shop: Shop | undefined,
  desk: FaultDesk,
): { readonly profile: Profile; readonly head?: string } | undefined {
  const has = (key: 'profile' | 'knife') => Object.hasOwn(file, key);
  if (has('profile') === has('knife'))
    desk.report(has('knife') ? 'fault.profile-or-knife.both' : 'fault.profile-or-knife.neither', at, {});
  const profile = completeProfile(file.profile, `${at}.profile`, desk);
  if (file.knife === undefined) return profile && { profile };
  checkName('knife', file.knife, shop?.knives, at, desk);
  if (shop === undefined || !Object.hasOwn(shop.knives, file.knife)) return undefined;
  const knife = shop.knives[file.knife]!;
  return knife.measured === 'wood' ? knife : offSteel(file, knife, at, shop, desk);
}

/** A knife whose outline was taken off the steel cuts what its head makes of it, presented as it is. */
function offSteel(
  file: NonNullable<Loose<FileCut>>,
  knife: ShopKnife,
  at: string,
  shop: Shop,
  desk: FaultDesk,
): { readonly profile: Profile; readonly head: string } | undefined {
  const name = file.head ?? knife.head;
  const kept = headNamed(shop, name);
  const { groundFor = { run: file.run ?? 'under', rotation: USUAL_ROTATION } } = knife;
  if (kept !== undefined && name !== undefined && file.presented !== undefined) {
    const { length, most, profile } = desk.readSteel(knife, kept, groundFor, file.presented);
    if (profile !== null) return { profile, head: name };
    desk.report('fault.steel-past-foot', `${at}.knife`, { knife: `${file.knife}`, length, most, head: name });
  }
  if (kept === undefined && (file.head === undefined || Object.hasOwn(shop.heads, file.head)))
    desk.report('fault.steel-without-head', `${at}.knife`, { knife: `${file.knife}` });
  return undefined;
}

export function checkName(
  what: 'head' | 'knife',
  name: string,
  known: Readonly<Record<string, unknown>> | undefined,
  at: string,
  desk: FaultDesk,
): void {
  if (known !== undefined && Object.hasOwn(known, name)) return;
  const path = `${at}.${what}`;
  const code = `fault.unknown-${what}` as const;
  if (known === undefined) {
    desk.report(`${code}.no-shop`, path, { name });
    return;
  }
  const names = Object.keys(known);
  const near = findNearest(name, names);
  const figures = { name, known: names.join(', ') };
  if (names.length === 0) desk.report(code, path, figures, `${code}.none.do`);
  else if (near === undefined) desk.report(code, path, figures);
  else desk.report(code, path, { ...figures, near }, `${code}.near.do`);
}

/** A cut as deep as the stock leaves no edge: for a cutter set from the worked face that is the measured stock too. */
function checkDepth(depth: number, file: NonNullable<Loose<FileCut>>, at: string, stock: Stock, desk: FaultDesk): void {
  const thick = file.run === 'over' ? stock.thickness : Math.min(stock.thickness, orNaN(stock.measured));
  const least = Number.isNaN(thick) ? stock.thickness : thick;
  if (!(depth >= least)) return;
  desk.report('fault.takes-whole-edge', `${at}.${depthKey(file)}`, { depth, stock: least });
}

/** Which key of a cut says how deep it goes. */
function depthKey(file: NonNullable<Loose<FileCut>>): string {
  if (file.depth !== undefined) return 'depth';
  if (file.knife !== undefined) return 'knife';
  return file.profile?.shape === 'outline' ? 'profile.path' : 'profile.depth';
}
