import * as v from 'valibot';
import type { Job } from '../job/job.ts';
import type { Units } from '../measure/length.ts';
import type { Fault } from '../problem/problem.ts';
import { codeOfFault, tellFault } from '../problem/say-fault.ts';
import type { Shop } from '../shop/shop.ts';
import { readAliases } from './aliases.ts';
import { completeJob } from './complete-job.ts';
import { completeShop } from './complete-shop.ts';
import { type FaultDesk, openDesk, type Refusal } from './fault-desk.ts';
import { inOrder } from './fault-words.ts';
import type { JobFile, Loose, ShopFile } from './job-file.ts';
import { jobSchema } from './job-schema.ts';
import { findPlace } from './place.ts';
import { explainIssues } from './schema-faults.ts';
import type { CheckConfig, CheckedGroups } from './schema-shapes.ts';
import { shopSchema } from './shop-schema.ts';
import type { ReadSteel } from './steel.ts';
import type { TextFault, Tree } from './tree.ts';

/** A job ready to evaluate, or everything that stands in its way in the order of the file. */
export type ReadJob =
  | { readonly job: Job; readonly faults: readonly [] }
  | { readonly job: null; readonly faults: readonly Fault[] };

/** A shop, or everything that is wrong with its file. */
export type ReadShop =
  | { readonly shop: Shop; readonly faults: readonly [] }
  | { readonly shop: null; readonly faults: readonly Fault[] };

/** The shop that a job names, read; or why there is none to be had, as a sentence without its full stop. */
export type FindShop = (path: string | undefined) => ReadShop | Refusal | undefined;

/** The outline in a drawing file named in the job, or in the shop file `from`, as path data in mm; or why there is none. */
export type FindOutline = (path: string, from: string) => string | Refusal;

/** What is said where nothing can look for a drawing. */
const NO_DRAWING_HERE: Refusal = {
  refused: 'no other file can be opened from here',
  instead: 'Write the outline as path: here',
};

/** What is said where nothing can look for the shop file that a job names. */
export const NO_SHOP_HERE: Refusal = {
  refused: 'no other file can be opened from here',
  instead: 'Open the shop file as well, or take this line out',
};

/** What was found of parts of data that are never changed in place, for a reader that meets most of them again. */
export interface ReadMemory {
  readonly steel: ReadSteel;
  readonly checked: CheckedGroups;
  /** Parts that hold no other names for keys or words. */
  readonly plain: WeakSet<object>;
}

/** The job in a tree, with the shop that `findShop` gives for the name in it: every fault at once, in the order of the file. */
export function readJobTree(
  written: Tree,
  findShop: FindShop,
  findOutline: FindOutline = noDrawing,
  memory?: ReadMemory,
): ReadJob {
  const tree = readAliases(written, memory?.plain);
  const units = unitsOf(tree);
  const checked = checkSchema<JobFile>(tree, jobSchema(units), memory?.checked);
  const faults = [...checked.faults];
  const name = checked.file?.shop;
  const shop = findShop(name);
  if (shop !== undefined && 'refused' in shop) {
    const told = tellFault('fault.shop-unreadable', { ...shop, name: `${name}` });
    faults.push({ at: 'shop', ...findPlace(tree, 'shop', 'shop-unreadable'), ...told });
  }
  const found = shop !== undefined && 'shop' in shop ? (shop.shop ?? undefined) : undefined;
  const desk = openDeskOn(tree, units, faults, (path) => findOutline(path, ''), memory?.steel);
  // A shop that could not be read would make every name in it unknown: one fault is enough.
  const broken = shop !== undefined && found === undefined;
  const job = completeJob(checked.file, found, broken ? silence(desk, ['unknown-knife', 'unknown-head']) : desk);
  const all = [...inOrder(faults, '', units), ...(shop !== undefined && 'faults' in shop ? shop.faults : [])];
  if (all.length > 0 || job === undefined) return { job: null, faults: all };
  return { job, faults: [] };
}

/** The shop in a tree; `name` is what its faults call the file. */
export function readShopTree(written: Tree, name: string, findOutline: FindOutline = noDrawing): ReadShop {
  const tree = readAliases(written);
  const units = unitsOf(tree);
  const checked = checkSchema<ShopFile>(tree, shopSchema(units));
  const faults = [...checked.faults];
  const shop = completeShop(
    checked.file,
    tree.value,
    openDeskOn(tree, units, faults, (path) => findOutline(path, name)),
  );
  if (faults.length > 0 || shop === undefined) return { shop: null, faults: inOrder(faults, name, units) };
  return { shop, faults: [] };
}

/** Millimetres unless the file says inches; a faulty `units` is reported by the schema. */
function unitsOf(tree: Tree): Units {
  const units = (tree.value as { units?: unknown } | null)?.units;
  return units === 'in' ? 'in' : 'mm';
}

/** The file by its schema, with its faulty values struck out; nothing of it when it is not even YAML. */
function checkSchema<F>(
  tree: Tree,
  schema: v.GenericSchema<unknown, F>,
  known?: CheckedGroups,
): { file: Loose<F>; faults: readonly TextFault[] } {
  if ((tree.value === null || tree.value === undefined) && tree.faults.length > 0)
    return { file: undefined as Loose<F>, faults: tree.faults };
  const config: CheckConfig = { ...v.getGlobalConfig(), ...(known && { checked: known }) };
  const { value, issues = [] } = schema['~run']({ value: tree.value }, config);
  // A value that could not be read as YAML is not reported as missing too.
  const unread = new Set(
    tree.faults.filter(({ at, sentence }) => at !== '' && sentence !== 'fault.duplicate-key').map(({ at }) => at),
  );
  const faults = [...tree.faults, ...explainIssues(issues, tree).filter(({ at }) => !unread.has(at))];
  return { file: strikeOut(value, issues) as Loose<F>, faults };
}

/** Sets every faulty value to undefined, so that later checks ignore it. */
function strikeOut(output: unknown, issues: readonly v.BaseIssue<unknown>[]): unknown {
  for (const issue of issues) {
    const keys = (issue.path ?? []).map((item) => item.key as string | number);
    const last = keys.pop();
    if (last === undefined) return undefined;
    let holder = output as Record<string | number, unknown> | undefined;
    for (const key of keys) holder = holder?.[key] as typeof holder;
    if (typeof holder === 'object' && holder !== null && Object.hasOwn(holder, last)) holder[last] = undefined;
  }
  return output;
}

function openDeskOn(
  tree: Tree,
  units: Units,
  faults: TextFault[],
  openOutline: FaultDesk['openOutline'],
  readSteel?: ReadSteel,
): FaultDesk {
  const place: FaultDesk['place'] = (told, at) => {
    faults.push({ at, ...findPlace(tree, at, codeOfFault(told.sentence)), ...told });
  };
  return openDesk(units, place, openOutline, readSteel);
}

function noDrawing(): Refusal {
  return NO_DRAWING_HERE;
}

function silence(desk: FaultDesk, codes: readonly string[]): FaultDesk {
  const place: FaultDesk['place'] = (told, at) => {
    if (!codes.includes(codeOfFault(told.sentence))) desk.place(told, at);
  };
  return openDesk(desk.units, place, desk.openOutline, desk.readSteel);
}
